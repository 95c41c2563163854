import { randomBytes } from 'node:crypto';
import { lambdaHandler } from '../http/lambda.ts';
import { currentState } from '../records/currentState.ts';
import { environment, httpDeps, tables } from '../wiring.ts';
import { createCalendarApp } from './app.ts';

export const handler = lambdaHandler(() =>
  createCalendarApp({
    ...httpDeps(),
    ...tables(),
    settings: environment().utility,
    current: currentState(tables()),
    newToken: () => randomBytes(32).toString('base64url'),
  }),
);
