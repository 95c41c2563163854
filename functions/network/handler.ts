import { lambdaHandler } from '../http/lambda.ts';
import { currentState } from '../records/currentState.ts';
import { environment, httpDeps, inventoryStore, networkModels, tables } from '../wiring.ts';
import { createNetworkApp } from './app.ts';
import { solveNetwork } from './solve.ts';
import { inTurns } from './turns.ts';

/** A thread takes a core and up to half a gigabyte: on one machine two at a time, and no endless queue behind them. */
const turn = inTurns(2, 20);

export const handler = lambdaHandler(async () =>
  createNetworkApp({
    ...httpDeps(),
    settings: environment().utility,
    ledger: tables().ledger,
    current: currentState(tables()),
    inventory: await inventoryStore(),
    models: await networkModels(),
    solve: (inp, question) => turn(() => solveNetwork(inp, question)),
  }),
);
