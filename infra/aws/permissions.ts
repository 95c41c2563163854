import type { Family } from '../../shared/deployment/routes.ts';
import { uploadsSpace, type TableName } from '../../shared/deployment/tables.ts';
import { COPY_PREFIX } from '../../shared/evidence/displayCopy.ts';

/** Every Lambda function: one a family of routes, and those that no route starts. */
export const unrouted = [
  'packetJobs',
  'display',
  'project',
  'publish',
  'digest',
  'dispatchSend',
  'outgoing',
] as const;
export type FunctionName = Family | (typeof unrouted)[number];
export type BucketName = 'evidence' | 'published' | 'inventory' | 'network';

export interface Permission {
  readonly actions: readonly string[];
  readonly on:
    /** All of a table, or the rows of one partition key. */
    | { readonly table: TableName; readonly partition?: string }
    /** Objects whose key starts with `prefix` ('' for all); `s3:ListBucket` here is limited to the same prefix. */
    | { readonly bucket: BucketName; readonly prefix: string }
    /** The key that signs packets. */
    | { readonly key: 'packets' }
    | { readonly function: 'packetJobs' }
    /** The address that the utility's letters come from, or that of its messages to dispatch. */
    | { readonly identity: 'sender' | 'dispatch' }
    /** The topic whose subscriptions are the telephones that texts go to. */
    | { readonly topic: 'texts' }
    /** The account as a whole, for questions that know no resource. Never with an action that changes anything. */
    | { readonly account: 'itself' };
}

const read = ['dynamodb:GetItem', 'dynamodb:Query'] as const;
const readStream = ['dynamodb:Query'] as const;
const append = ['dynamodb:PutItem'] as const;
/** Personal fields are fetched by the keys that the facts of a stream name. */
const readPersonal = ['dynamodb:BatchGetItem'] as const;
/** Handing in a fact writes its erasable row first, and takes away what earlier attempts left (decision 0011). */
const handInPersonal = [
  'dynamodb:BatchGetItem',
  'dynamodb:Query',
  'dynamodb:PutItem',
  'dynamodb:DeleteItem',
] as const;
/** Whoever hands a fact in marks it as not yet projected, and takes the mark away when there was no new fact. */
const markFacts: Permission = {
  actions: ['dynamodb:PutItem', 'dynamodb:DeleteItem'],
  on: { table: 'unprojected' },
};
/** Without the right to list, a missing object answers "forbidden", and absence could not be told from a fault. */
const readObjects = ['s3:GetObject', 's3:ListBucket'] as const;

/** Building a packet, asked for by a request or handed over by one. A job says how far it is among the projections. */
const packetRights: readonly Permission[] = [
  { actions: [...read, ...append], on: { table: 'submissions' } },
  { actions: readPersonal, on: { table: 'personal' } },
  { actions: [...read, ...append], on: { table: 'projections' } },
  { actions: [...read, ...append], on: { table: 'unique' } },
  markFacts,
  { actions: readObjects, on: { bucket: 'inventory', prefix: '' } },
  { actions: [...readObjects, 's3:PutObject'], on: { bucket: 'evidence', prefix: '' } },
  // It is handed a digest; the key itself stays where it is.
  { actions: ['kms:Sign', 'kms:GetPublicKey'], on: { key: 'packets' } },
];

/**
 * Everything that a function may do, read top to bottom: function × action × resource. The stack grants exactly this
 * and a test compares it with the template. No function may delete or change a fact, and none may pass by the lock on
 * evidence.
 */
export const permissions: Readonly<Record<FunctionName, readonly Permission[]>> = {
  submissions: [
    { actions: [...read, ...append], on: { table: 'submissions' } },
    { actions: handInPersonal, on: { table: 'personal' } },
    { actions: ['dynamodb:GetItem', ...append], on: { table: 'unique' } },
    markFacts,
  ],
  records: [
    { actions: readStream, on: { table: 'submissions' } },
    // A plate is looked for among what is kept; an index of plates would outlive their erasure (decision 0163).
    { actions: [...readPersonal, 'dynamodb:Scan'], on: { table: 'personal' } },
    { actions: read, on: { table: 'projections' } },
    { actions: readObjects, on: { bucket: 'inventory', prefix: '' } },
    // Whether a photo has arrived; its bytes go by a signed address of the evidence function.
    { actions: readObjects, on: { bucket: 'evidence', prefix: '' } },
  ],
  // Asks the model what would be: reads, writes nothing, and sees nobody's name.
  network: [
    { actions: readStream, on: { table: 'submissions' } },
    { actions: ['dynamodb:GetItem'], on: { table: 'projections' } },
    { actions: readObjects, on: { bucket: 'inventory', prefix: '' } },
    // The model is private: no other function may read it, the publisher least of all.
    { actions: readObjects, on: { bucket: 'network', prefix: '' } },
  ],
  evidence: [
    { actions: readStream, on: { table: 'submissions' } },
    { actions: ['dynamodb:GetItem'], on: { table: 'projections' } },
    // How much each person was let upload today, and none of the numbers beside it.
    { actions: ['dynamodb:GetItem', ...append], on: { table: 'unique', partition: uploadsSpace } },
    { actions: [...readObjects, 's3:PutObject'], on: { bucket: 'evidence', prefix: '' } },
  ],
  // Reads what has arrived, and writes nothing but copies beside it.
  display: [
    { actions: readObjects, on: { bucket: 'evidence', prefix: '' } },
    { actions: ['s3:PutObject'], on: { bucket: 'evidence', prefix: COPY_PREFIX } },
  ],
  packets: [
    ...packetRights,
    // A letter that was sent names whom it went to.
    {
      actions: ['dynamodb:Query', 'dynamodb:PutItem', 'dynamodb:DeleteItem'],
      on: { table: 'personal' },
    },
    // Asks for a packet to be built, and nothing else of any function.
    { actions: ['lambda:InvokeFunction'], on: { function: 'packetJobs' } },
  ],
  packetJobs: packetRights,
  // Dates are counted from facts alone; nobody's name is read for them.
  calendar: [
    { actions: readStream, on: { table: 'submissions' } },
    { actions: read, on: { table: 'projections' } },
    { actions: [...read, ...append], on: { table: 'outbox' } },
  ],
  // Shows what was sent and writes that a person asks for it again; it sends nothing, and sees no one's name.
  dispatch: [
    { actions: readStream, on: { table: 'submissions' } },
    { actions: ['dynamodb:GetItem'], on: { table: 'projections' } },
    { actions: ['dynamodb:Query', ...append], on: { table: 'outbox' } },
  ],
  health: [
    { actions: ['dynamodb:GetItem'], on: { table: 'projections' } },
    // How many messages to dispatch did not go out.
    { actions: ['dynamodb:Query'], on: { table: 'outbox' } },
    // When the public page that stands was checked.
    { actions: readObjects, on: { bucket: 'published', prefix: 'pages/' } },
  ],
  project: [
    { actions: readStream, on: { table: 'submissions' } },
    { actions: [...read, ...append], on: { table: 'projections' } },
    { actions: ['dynamodb:Query', 'dynamodb:DeleteItem'], on: { table: 'unprojected' } },
    { actions: readObjects, on: { bucket: 'inventory', prefix: '' } },
  ],
  digest: [
    { actions: readStream, on: { table: 'submissions' } },
    { actions: ['dynamodb:Query'], on: { table: 'projections' } },
    { actions: ['dynamodb:Query', ...append], on: { table: 'outbox' } },
    { actions: ['ses:SendEmail'], on: { identity: 'sender' } },
  ],
  // Makes and sends messages to dispatch: what is out, what stands near by, what it was told before.
  dispatchSend: [
    { actions: readStream, on: { table: 'submissions' } },
    { actions: read, on: { table: 'projections' } },
    { actions: readObjects, on: { bucket: 'inventory', prefix: '' } },
    { actions: ['dynamodb:Query', ...append], on: { table: 'outbox' } },
    { actions: ['ses:SendEmail'], on: { identity: 'dispatch' } },
    { actions: ['sns:Publish'], on: { topic: 'texts' } },
  ],
  // Looks whether what should go out does; sends nothing.
  outgoing: [
    { actions: ['dynamodb:Query'], on: { table: 'outbox' } },
    { actions: ['ses:GetAccount', 'sns:GetSMSSandboxAccountStatus'], on: { account: 'itself' } },
    { actions: ['ses:GetEmailIdentity'], on: { identity: 'sender' } },
    { actions: ['ses:GetEmailIdentity'], on: { identity: 'dispatch' } },
  ],
  publish: [
    { actions: readStream, on: { table: 'submissions' } },
    { actions: ['dynamodb:Query'], on: { table: 'projections' } },
    { actions: ['dynamodb:Query'], on: { table: 'unprojected' } },
    { actions: readObjects, on: { bucket: 'inventory', prefix: '' } },
    // Reading too: a page is replaced only if it is still the one that was seen.
    { actions: [...readObjects, 's3:PutObject'], on: { bucket: 'published', prefix: 'pages/' } },
  ],
};
