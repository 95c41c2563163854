import type { SpentUnits } from '../../../infra/aws/costs/measured.ts';
import type { Exchange } from '../../infra/aws/recordingProxy.ts';
import type { ObjectRequest } from '../../infra/aws/recordingS3.ts';

export type Spent = SpentUnits;

export const nothing = (): Spent => ({
  calls: 0,
  cpuMs: 0,
  readUnits: 0,
  writeUnits: 0,
  tableRequests: 0,
  puts: 0,
  gets: 0,
  lists: 0,
  putBytes: 0,
  gotBytes: 0,
  logBytes: 0,
});

export function add(to: Spent, more: Spent): void {
  for (const key of Object.keys(to) as (keyof Spent)[]) to[key] += more[key];
}

export const together = (all: Iterable<Spent>): Spent => {
  const sum = nothing();
  for (const one of all) add(sum, one);
  return sum;
};

const reads = new Set(['GetItem', 'BatchGetItem', 'Query', 'Scan']);

/**
 * Adds one exchange with a table. The units are the store's own (`ConsumedCapacity`), but for two cases that Amazon bills
 * and the embedded store counts as nothing: a query that finds nothing costs the smallest read, and a write whose
 * condition failed costs what it would have written (Amazon DynamoDB developer guide, "DynamoDB read and write
 * operations"). The latter is counted by the item's JSON, which is a little more than its size.
 */
export function hearTable(spent: Spent, { operation, request, answer }: Exchange): void {
  spent.tableRequests += 1;
  const consumed = [answer['ConsumedCapacity'] ?? []].flat() as { CapacityUnits: number }[];
  const units = consumed.reduce((sum, { CapacityUnits }) => sum + CapacityUnits, 0);
  if (reads.has(operation)) spent.readUnits += units || (request['ConsistentRead'] === true ? 1 : 0.5);
  else spent.writeUnits += units || Math.ceil(JSON.stringify(request['Item'] ?? '').length / 1024);
}

export function hearObject(spent: Spent, { kind, bytes }: ObjectRequest): void {
  if (kind === 'list') spent.lists += 1;
  else if (kind === 'put') {
    spent.puts += 1;
    spent.putBytes += bytes;
  } else {
    spent.gets += 1;
    spent.gotBytes += bytes;
  }
}
