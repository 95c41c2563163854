import { lambdaHandler } from '../http/lambda.ts';
import { httpDeps, tables } from '../wiring.ts';
import { createHealthApp } from './app.ts';

export const handler = lambdaHandler(() => createHealthApp({ ...httpDeps(), ...tables() }));
