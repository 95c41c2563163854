import { PutItemCommand, type DynamoDBClient } from '@aws-sdk/client-dynamodb';
import { marshall } from '@aws-sdk/util-dynamodb';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { projectStream } from '../../functions/project/project.ts';
import { rebuild } from '../../functions/project/rebuild.ts';
import { dynamodbClient } from '../../functions/stores/dynamodb/client.ts';
import { dynamodbStores, memoryStores } from '../../functions/stores/dynamodb/stores.ts';
import { localTableNames, setCredentials } from '../../infra/local/dynamodb.ts';
import { project } from '../../shared/projections/project.ts';
import { streamOfSubmission, type Submission } from '../../shared/submissions/submission.ts';
import { killable } from '../support/killable.ts';
import { onHydrant, recorded } from '../support/submissions.ts';
import type { BenchRow } from './row.ts';
import { years } from './support/years.ts';

const FOLDED = 100_000;
const ACCEPTED = 1000;
const PROJECTED = 200;
/** Requests under way at once: a crew room's worth of phones that empty their outboxes. */
const AT_ONCE = 16;
const counted = new Intl.NumberFormat('en-US');
const dryBarrel = () => 'dry-barrel' as const;

/** `npm run bench -- ledger`: the fold beside a plain parse-and-group, and the ledger beside bare puts. */
export async function bench(): Promise<readonly BenchRow[]> {
  return [...folding(), await rebuilding(), ...(await accepting())];
}

function seconds(work: () => unknown): number {
  const began = performance.now();
  work();
  return (performance.now() - began) / 1000;
}

function folding(): BenchRow[] {
  const all = years(FOLDED).map((submission) => recorded(submission));
  const texts = all.map((one) => JSON.stringify(one));
  let strikes = 0;
  // Once to warm up, so that neither is measured while it is compiled.
  project(all.slice(0, 5000), dryBarrel);
  const folded = seconds(() => (strikes = project(all, dryBarrel).strikes.length));
  if (strikes < FOLDED / 11) throw new Error('the fold lost strikes');
  const plain = seconds(() =>
    Map.groupBy(
      texts.map((text) => JSON.parse(text) as (typeof all)[number]),
      ({ submission }) => streamOfSubmission(submission),
    ),
  );
  return [
    {
      name: `fold of ${counted.format(FOLDED)} submissions`,
      value: folded,
      unit: 's',
      beside: { name: 'JSON.parse and group', value: plain },
    },
  ];
}

/** A rebuild that finds everything missing, on stores in memory: what a start after a kill costs besides the disk. */
async function rebuilding(): Promise<BenchRow> {
  const stores = memoryStores();
  const count = FOLDED / 10;
  for (const submission of years(count))
    await stores.ledger.accept(submission, { recordedAt: submission.sentAt, deliveredBy: null });
  const deps = { ...stores, hydrantType: async () => dryBarrel() };
  const began = performance.now();
  const { facts } = await rebuild(deps, { write: false });
  if (facts !== count) throw new Error('the rebuild lost facts');
  return {
    name: `rebuild's comparison, ${counted.format(count)} submissions in memory`,
    value: (performance.now() - began) / 1000,
    unit: 's',
  };
}

async function accepting(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-ledger-'));
  const server = killable(join(import.meta.dirname, '../support/dynaliteChild.ts'), [folder, '0']);
  setCredentials();
  const client = dynamodbClient(await server.start());
  try {
    const stores = dynamodbStores(client, localTableNames);
    const plain = years(ACCEPTED).map((one) => ({ ...one, subject: onHydrant(`bare ${one.submissionId}`) }));
    const bare = await perSecond(plain, (one) => putBare(client, one));
    const submissions = years(ACCEPTED);
    const accept = (one: Submission) =>
      stores.ledger.accept(one, { recordedAt: one.sentAt, deliveredBy: null });
    const accepted = await perSecond(submissions, accept);
    const repeated = await perSecond(submissions, accept);
    const deps = { ...stores, hydrantType: async () => dryBarrel() };
    const began = performance.now();
    for (const one of submissions.slice(0, PROJECTED)) await projectStream(deps, streamOfSubmission(one));
    const projected = (performance.now() - began) / PROJECTED;
    const beside = { name: 'bare PutItem', value: bare };
    return [
      {
        name: `submissions accepted through the ledger over HTTP, ${AT_ONCE} at once`,
        value: accepted,
        unit: '/s',
        beside,
      },
      { name: 'the same again, answered as repeats', value: repeated, unit: '/s', beside },
      { name: 'projection of one fact, one at a time', value: projected, unit: 'ms' },
    ];
  } finally {
    client.destroy();
    await server.kill();
    await rm(folder, { recursive: true, force: true });
  }
}

function putBare(client: DynamoDBClient, submission: Submission): Promise<unknown> {
  const Item = marshall({
    stream: streamOfSubmission(submission),
    entry: submission.submissionId,
    submission: JSON.stringify(submission),
  });
  return client.send(new PutItemCommand({ TableName: localTableNames.submissions, Item }));
}

async function perSecond(
  items: readonly Submission[],
  work: (item: Submission) => Promise<unknown>,
): Promise<number> {
  const left = [...items];
  const began = performance.now();
  const worker = async (): Promise<void> => {
    for (let item = left.shift(); item !== undefined; item = left.shift()) await work(item);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
  return items.length / ((performance.now() - began) / 1000);
}
