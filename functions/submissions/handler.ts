import { lambdaHandler } from '../http/lambda.ts';
import { appendDeps, httpDeps } from '../wiring.ts';
import { createSubmissionsApp } from './app.ts';

export const handler = lambdaHandler(() => createSubmissionsApp({ ...httpDeps(), ...appendDeps() }));
