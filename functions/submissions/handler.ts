import { lambdaHandler } from '../http/lambda.ts';
import { appendDeps, environment, httpDeps } from '../wiring.ts';
import { createSubmissionsApp } from './app.ts';

export const handler = lambdaHandler(() =>
  createSubmissionsApp({ ...httpDeps(), ...appendDeps(), settings: environment().utility }),
);
