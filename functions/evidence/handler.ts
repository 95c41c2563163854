import { lambdaHandler } from '../http/lambda.ts';
import { createExhibitIndex } from '../stores/evidence/exhibitIndex.ts';
import { environment, evidenceStore, httpDeps, tables } from '../wiring.ts';
import { createEvidenceApp } from './app.ts';

export const handler = lambdaHandler(async () =>
  createEvidenceApp({
    ...httpDeps(),
    ledger: tables().ledger,
    evidence: await evidenceStore(),
    exhibits: createExhibitIndex(tables().projections),
    uploads: tables().uploads,
    settings: environment().utility,
  }),
);
