import type { DynamoDBBatchResponse, DynamoDBRecord } from 'aws-lambda';
import { tables } from '../../shared/deployment/tables.ts';
import { hydrantSubject, placeSubject, type NoticeSubject } from '../../shared/dispatch/notice.ts';
import { partitions } from '../../shared/projections/items.ts';
import { describeError } from '../log/log.ts';
import type { NoticeDeps } from './deps.ts';
import { bringUpToDate } from './make.ts';
import { sendDue, type SendDeps, type SendReport } from './send.ts';

export type DispatchDeps = NoticeDeps & SendDeps;

export interface DispatchRun extends DynamoDBBatchResponse {
  readonly report: SendReport;
}

/**
 * What one waking does: for every hydrant and strike among the records, what dispatch was told is brought up to what is;
 * then what waits is sent. A waking without records only sends. A record that fails is answered by its number, so that
 * the service delivers again from there; the others are done, and doing them twice is harmless.
 */
export async function runDispatch(
  deps: DispatchDeps,
  records: readonly DynamoDBRecord[],
): Promise<DispatchRun> {
  const failed: string[] = [];
  for (const [subject, [first]] of Map.groupBy(records, subjectOf)) {
    if (subject === null || first === undefined) continue;
    try {
      await bringUpToDate(deps, subject);
    } catch (error) {
      // The subject holds an id and nothing personal.
      deps.log({ level: 'error', event: 'dispatch-message-not-made', subject, ...describeError(error) });
      failed.push(first.dynamodb?.SequenceNumber ?? '');
    }
  }
  const report = await sendDue(deps);
  return { batchItemFailures: failed.map((itemIdentifier) => ({ itemIdentifier })), report };
}

/** What a changed row of the projections table may mean for dispatch. */
function subjectOf({ dynamodb }: DynamoDBRecord): NoticeSubject | null {
  const { partitionKey, sortKey } = tables.projections;
  const key = dynamodb?.Keys?.[sortKey]?.S;
  if (key === undefined) return null;
  switch (dynamodb?.Keys?.[partitionKey]?.S) {
    case partitions.hydrant:
      return hydrantSubject(key);
    case partitions.strike:
    case partitions.joined:
      return placeSubject(key);
    default:
      return null;
  }
}
