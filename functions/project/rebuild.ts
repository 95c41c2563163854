import {
  mentioningStream,
  partitions,
  projectionItems,
  type Item,
  type Partition,
} from '../../shared/projections/items.ts';
import { mentionedStreams } from '../../shared/projections/mentions.ts';
import { firstDifference } from '../../shared/submissions/canonical.ts';
import { streamOf, type Stream } from '../../shared/submissions/envelope.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import { inTurns, type ProjectorDeps } from './deps.ts';
import { projectStream } from './project.ts';

/** One kept item that is not what the ledger says. */
export interface Difference {
  readonly partition: Partition;
  readonly key: string;
  /** `missing`: should be kept and is not. `extra`: is kept and should not be. */
  readonly kind: 'missing' | 'extra' | 'differs';
  /** First path that differs; '' for the whole. */
  readonly path: string;
}

export interface Rebuilt {
  readonly facts: number;
  readonly items: number;
  readonly differences: readonly Difference[];
  /** What is still different after the repair; with `write` false, the same as `differences`. */
  readonly left: readonly Difference[];
}

/**
 * Computes every projection from nothing and compares it with what is kept. With `write`, repairs what differs by
 * projecting the streams it comes from, so that a repair beside running traffic is as safe as any projection, and
 * looks again. Reads the whole ledger into memory: cost grows with its facts (docs/decisions/0012 has numbers).
 */
export async function rebuild(deps: ProjectorDeps, { write }: { readonly write: boolean }): Promise<Rebuilt> {
  const marks = await deps.unprojected.list();
  const first = await compare(deps);
  if (!write) return { ...first, left: first.differences };
  if (first.differences.length > 0) await repair(deps, first);
  const left = first.differences.length > 0 ? (await compare(deps)).differences : [];
  // All that these marks stand for is in what was compared; some stand for no fact at all.
  if (left.length === 0) await deps.unprojected.remove(marks);
  return { ...first, left };
}

/**
 * Makes good what a process that ended between accepting and projecting left undone. The simplest that cannot miss
 * anything: a whole rebuild with repair, whose cost is one reading of the ledger and of what is kept.
 */
export async function replayUnprojected(deps: ProjectorDeps): Promise<Rebuilt> {
  return rebuild(deps, { write: true });
}

interface Compared {
  readonly facts: number;
  readonly items: number;
  readonly differences: readonly Difference[];
  readonly expected: ReadonlyMap<string, Item>;
}

const hydrantPrefix = streamOf({ type: 'hydrant', hydrantId: '' });
const nameOf = ({ partition, key }: { partition: string; key: string }): string => `${partition}\n${key}`;

async function compare({ ledger, projections, hydrantType }: ProjectorDeps): Promise<Compared> {
  // What is kept is read first: whatever it was made from is then in the ledger when that is read.
  const kept = new Map<string, Item>();
  for (const partition of Object.values(partitions))
    for (const { key, value } of await projections.list(partition))
      kept.set(nameOf({ partition, key }), { partition, key, value });

  const recorded: Recorded[] = [];
  for await (const page of ledger.readAll({ personal: false })) recorded.push(...page);
  const types = new Map(
    await inTurns(hydrantIdsOf(recorded), async (id) => [id, await hydrantType(id)] as const),
  );
  const items = projectionItems(recorded, (id) => types.get(id) ?? 'unknown');
  const expected = new Map(items.map((item) => [nameOf(item), item]));

  const differences: Difference[] = [];
  for (const [name, { partition, key, value }] of expected) {
    const found = kept.get(name);
    if (found === undefined) differences.push({ partition, key, kind: 'missing', path: '' });
    else {
      const path = firstDifference(found.value, value);
      if (path !== null) differences.push({ partition, key, kind: 'differs', path });
    }
  }
  for (const [name, { partition, key }] of kept)
    if (!expected.has(name)) differences.push({ partition, key, kind: 'extra', path: '' });
  return { facts: recorded.length, items: items.length, differences, expected };
}

function hydrantIdsOf(recorded: readonly Recorded[]): string[] {
  const ids = new Set<string>();
  for (const { submission } of recorded)
    if (submission.subject.type === 'hydrant') ids.add(submission.subject.hydrantId);
  for (const stream of mentionedStreams(recorded))
    if (stream.startsWith(hydrantPrefix)) ids.add(stream.slice(hydrantPrefix.length));
  return [...ids];
}

async function repair(deps: ProjectorDeps, { differences, expected }: Compared): Promise<void> {
  const { projections } = deps;
  const streams = new Set<Stream>();
  for (const difference of await fill(deps, { differences, expected })) {
    const { partition, key, kind } = difference;
    // Marks and documents first, and directly: the rest is found through them.
    if (partition === partitions.mention || partition === partitions.exhibits) {
      const version = await projections.versionOf(partition, key);
      const value = expected.get(nameOf(difference))?.value;
      if (kind === 'extra') await projections.remove(partition, key, version);
      else await projections.put(partition, key, value, version);
    }
    if (partition !== partitions.exhibits) streams.add(streamFor(partition, key));
  }
  for (const stream of streams) await projectStream(deps, stream);
}

/**
 * Writes what was never written, and answers what is left to repair. After a restore that is everything, and one write
 * each is far less than to project every stream. As safe beside running traffic: whoever has read the first version before
 * this writes finds another one and begins again; whoever was quicker keeps what they wrote, and it is repaired. Marks
 * come first, because a projection that does not find them all yet must not be able to write after the rest.
 */
async function fill(
  { projections, kept }: ProjectorDeps,
  { differences, expected }: Pick<Compared, 'differences' | 'expected'>,
): Promise<readonly Difference[]> {
  const missing = differences.filter(({ kind }) => kind === 'missing');
  const [marks = [], rest = []] = [true, false].map((mark) =>
    missing.filter(({ partition }) => (partition === partitions.mention) === mark),
  );
  const write = async (item: Difference): Promise<readonly Difference[]> =>
    (await projections.put(item.partition, item.key, expected.get(nameOf(item))?.value, 0)) ? [item] : [];
  const filled = new Set([...(await inTurns(marks, write)), ...(await inTurns(rest, write))].flat());
  if (filled.size > 0) kept?.([...filled]);
  return differences.filter((difference) => !filled.has(difference));
}

/** The stream whose projection writes this item. */
function streamFor(partition: Exclude<Partition, 'exhibits'>, key: string): Stream {
  switch (partition) {
    case partitions.strike:
    case partitions.joined:
    case partitions.stockUses:
      return streamOf({ type: 'strike', strikeId: key });
    case partitions.hydrant:
      return streamOf({ type: 'hydrant', hydrantId: key });
    case partitions.claim:
      return streamOf({ type: 'claim', claimId: key });
    case partitions.utility:
      return 'utility';
    case partitions.mention:
      return mentioningStream(key);
  }
}
