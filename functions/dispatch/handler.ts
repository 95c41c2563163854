import { lambdaHandler } from '../http/lambda.ts';
import { currentState } from '../records/currentState.ts';
import { environment, httpDeps, tables } from '../wiring.ts';
import { createDispatchApp } from './app.ts';

export const handler = lambdaHandler(() =>
  createDispatchApp({
    ...httpDeps(),
    ...tables(),
    settings: environment().utility,
    current: currentState(tables()),
  }),
);
