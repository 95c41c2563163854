/**
 * The tables, their keys and how a key is made: the one place where infra and the stores read them. Changing a name
 * or a key here would orphan data; `tests/shared/deployment` pins them.
 */
export const tables = {
  /** Facts. `entry` is a submission's id, or `corrects:<target id>` for a correction, so a second one cannot exist. */
  submissions: {
    logicalId: 'SubmissionsTable',
    environment: 'SUBMISSIONS_TABLE',
    partitionKey: 'stream',
    sortKey: 'entry',
  },
  /** Erasable personal fields of facts. `entry` is the submission's id and the salted hash that the fact keeps. */
  personal: {
    logicalId: 'PersonalTable',
    environment: 'PERSONAL_TABLE',
    partitionKey: 'stream',
    sortKey: 'entry',
  },
  /** What is computed and kept for reading. */
  projections: {
    logicalId: 'ProjectionsTable',
    environment: 'PROJECTIONS_TABLE',
    partitionKey: 'partition',
    sortKey: 'key',
  },
  /** Numbers that must be unique, and what each person was let upload on a day: what one conditional put has to hold. */
  unique: { logicalId: 'UniqueTable', environment: 'UNIQUE_TABLE', partitionKey: 'space', sortKey: 'name' },
  /** What goes out to people: letters that wait to be sent or were, and the private addresses of calendars. */
  outbox: { logicalId: 'OutboxTable', environment: 'OUTBOX_TABLE', partitionKey: 'box', sortKey: 'entry' },
  /** Facts that may not be among the projections yet. */
  unprojected: {
    logicalId: 'UnprojectedTable',
    environment: 'UNPROJECTED_TABLE',
    partitionKey: 'space',
    sortKey: 'mark',
  },
} as const;
export type TableName = keyof typeof tables;

/** Sort key of a fact in its stream. */
export const factEntry = (submissionId: string): string => submissionId;
/** Sort key of a correction: its target's, so that one conditional put also refuses a second correction. */
export const correctionEntry = (targetId: string): string => `corrects:${targetId}`;
/** Where the table of unique numbers keeps what each person was let upload on a day. A right may be limited to it. */
export const uploadsSpace = 'uploads-of-day';
