import type { DynamoDBRecord } from 'aws-lambda';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { correctionEntry, factEntry } from '../../../shared/deployment/tables.ts';
import { correctionKind } from '../../../shared/submissions/kinds.ts';
import { streamOfSubmission, type Submission } from '../../../shared/submissions/submission.ts';

const folder = join(import.meta.dirname, '..', '..', 'fixtures', 'events');
/** An event as AWS documents it; where each comes from stands in the folder's README. */
export const recorded = <T>(name: string): T =>
  JSON.parse(readFileSync(join(folder, `${name}.json`), 'utf8')) as T;

const [example] = recorded<{ Records: [DynamoDBRecord] }>('dynamodb-stream').Records;

/** The record that the stream of the submissions table brings of one fact. */
export const recordOf = (submission: Submission, sequence: number): DynamoDBRecord => ({
  ...example,
  eventID: `event-${sequence}`,
  dynamodb: {
    ...example.dynamodb,
    Keys: {
      stream: { S: streamOfSubmission(submission) },
      entry: {
        S:
          submission.kind === correctionKind
            ? correctionEntry(submission.body.targetId)
            : factEntry(submission.submissionId),
      },
    },
    SequenceNumber: sequenceNumber(sequence),
  },
});

/** As long as real ones are, and in the order of their text too. */
export const sequenceNumber = (sequence: number): string =>
  `${100_000_000_000_000_000_000n + BigInt(sequence)}`;
