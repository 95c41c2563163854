import type { DynamoDBBatchResponse, DynamoDBStreamEvent } from 'aws-lambda';
import { logLine } from '../log/log.ts';
import { inventoryStore, keptHere, tables } from '../wiring.ts';
import { createProjector } from './projector.ts';
import { createStreamHandler, type StreamHandler } from './streamHandler.ts';
import { wordless } from '../log/wordless.ts';

let handle: StreamHandler | undefined;

async function hydrantType(hydrantId: string) {
  const hydrant = await (await inventoryStore()).hydrant(hydrantId);
  return hydrant?.type ?? 'unknown';
}

/** Triggered by the submissions table's stream; keys alone are enough of a view. */
export const handler = wordless(async (event: DynamoDBStreamEvent): Promise<DynamoDBBatchResponse> => {
  // On the first event and not on import, like every handler.
  handle ??= createStreamHandler({
    ...createProjector({ ...tables(), hydrantType, kept: keptHere }),
    log: logLine,
  });
  return handle(event);
});
