import { v7 } from 'uuid';
import { lambdaHandler } from '../http/lambda.ts';
import { appendDeps, environment, evidenceStore, httpDeps, inventoryStore, tables } from '../wiring.ts';
import { createPacketsApp } from './app.ts';

export const handler = lambdaHandler(async () =>
  createPacketsApp({
    ...httpDeps(),
    ...appendDeps(),
    settings: environment().utility,
    projections: tables().projections,
    inventory: await inventoryStore(),
    evidence: await evidenceStore(),
    newId: () => v7(),
  }),
);
