import { lambdaHandler } from '../http/lambda.ts';
import { createExhibitIndex } from '../stores/evidence/exhibitIndex.ts';
import { environment, evidenceStore, httpDeps, inventoryStore, tables } from '../wiring.ts';
import { createRecordsApp } from './app.ts';
import { currentState } from './currentState.ts';

export const handler = lambdaHandler(async () => {
  const { utility: settings, signInPage: page, tokenAudience: clientId } = environment();
  return createRecordsApp({
    ...httpDeps(),
    settings,
    ...(page === null ? {} : { signIn: { page, clientId } }),
    ledger: tables().ledger,
    current: currentState(tables()),
    projections: tables().projections,
    inventory: await inventoryStore(),
    evidence: await evidenceStore(),
    exhibits: createExhibitIndex(tables().projections),
  });
});
