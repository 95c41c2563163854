import {
  exhibitItems,
  hasRepairs,
  inventoryKey,
  mentionItems,
  mergeDocuments,
  partitions,
  projectionItems,
  utilityItems,
  utilityKeys,
  type Item,
} from '../../shared/projections/items.ts';
import { mentionedStreams } from '../../shared/projections/mentions.ts';
import { firstDifference } from '../../shared/submissions/canonical.ts';
import type { ListedDocument } from '../../shared/evidence/declared.ts';
import { splitStream, type Stream } from '../../shared/submissions/envelope.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import { streamOfSubmission } from '../../shared/submissions/submission.ts';
import { inTurns, ProjectionContended, type ProjectorDeps } from './deps.ts';
import { readNeighborhood } from './neighborhood.ts';
import { settle, type Reading, type Target } from './settle.ts';

/**
 * Computes anew everything that the facts of one stream affect, and keeps it for reading. Called after a fact of the
 * stream was accepted; calling it twice, late or in any order is harmless. Throws `StoreUnavailable`,
 * `ProjectionContended` or `NeighborhoodTooLarge`; then it must be called again.
 */
export async function projectStream(deps: ProjectorDeps, stream: Stream): Promise<void> {
  // Read before the ledger is: whatever these marks stand for is then in what is projected.
  const marks = await deps.unprojected.list(stream);
  await projectFacts(deps, stream);
  await deps.unprojected.remove(marks);
}

async function projectFacts(deps: ProjectorDeps, stream: Stream): Promise<void> {
  const { type, id } = splitStream(stream);
  const own = await deps.ledger.readStream(stream, { personal: false });
  for (const item of exhibitItems(own)) await addExhibit(deps, item);
  switch (type) {
    case 'strike':
    case 'hydrant':
      // Before anything is read to compute with: whoever writes the hydrant after us then finds this strike.
      for (const item of mentionItems(own)) await addMention(deps, item);
      return settle(deps, () => readStrikesAndHydrants(deps, stream));
    case 'claim':
      return settle(deps, () => readClaim(deps, stream, id));
    case 'utility':
      return projectUtility(deps);
  }
}

/** Marks that one stream names another. Only ever added, so it needs no version; found there, it costs one read. */
async function addMention({ projections }: ProjectorDeps, { partition, key, value }: Item): Promise<void> {
  if ((await projections.get(partition, key)) !== null) return;
  // False: it was marked in the meantime, or a rebuild took away what was there; then it counts on.
  if (await projections.put(partition, key, value, 0)) return;
  await projections.put(partition, key, value, await projections.versionOf(partition, key));
}

/** Lists a document. The first declaration decides, so a lost race is run again with what the winner wrote. */
async function addExhibit({ projections }: ProjectorDeps, { partition, key, value }: Item): Promise<void> {
  for (let tries = 0; tries < 10; tries += 1) {
    const stored = await projections.get<ListedDocument>(partition, key);
    const merged = mergeDocuments(stored?.value, value as ListedDocument);
    if (stored !== null && firstDifference(stored.value, merged) === null) return;
    const version = stored?.version ?? (await projections.versionOf(partition, key));
    if (await projections.put(partition, key, merged, version)) return;
  }
  throw new ProjectionContended('a document stayed contended');
}

async function readStrikesAndHydrants(deps: ProjectorDeps, stream: Stream): Promise<Reading> {
  const { streams, recorded } = await readNeighborhood(deps, stream);
  const nodes = [...streams].map(splitStream);
  const hydrantIds = nodes.flatMap(({ type, id }) => (type === 'hydrant' ? [id] : []));
  const types = new Map(await inTurns(hydrantIds, async (id) => [id, await deps.hydrantType(id)] as const));
  const linked = linkedStrikes(recorded);
  const repaired = repairedStrikes(recorded);
  const targets: Target[] = nodes.flatMap(({ type, id }): Target[] =>
    type === 'hydrant'
      ? [{ partition: partitions.hydrant, key: id }]
      : [
          { partition: partitions.strike, key: id },
          ...(linked.has(id) ? [{ partition: partitions.joined, key: id }] : []),
          ...(repaired.has(id) ? [{ partition: partitions.stockUses, key: id }] : []),
        ],
  );
  return { targets, items: projectionItems(recorded, (id) => types.get(id) ?? 'unknown') };
}

/** Strikes that a link has ever named or stood in: only these can have been joined into another. */
function linkedStrikes(recorded: readonly Recorded[]): ReadonlySet<string> {
  const byStream = Map.groupBy(recorded, ({ submission }) => streamOfSubmission(submission));
  const linked = new Set<string>();
  for (const [stream, own] of byStream) {
    const from = splitStream(stream);
    if (from.type !== 'strike') continue;
    for (const { type, id } of mentionedStreams(own).map(splitStream))
      if (type === 'strike') linked.add(from.id).add(id);
  }
  return linked;
}

/** Strikes in whose own stream a repair stands, or stood: only these can have taken anything from stock. */
function repairedStrikes(recorded: readonly Recorded[]): ReadonlySet<string> {
  const byStream = Map.groupBy(recorded, ({ submission }) => streamOfSubmission(submission));
  return new Set(
    [...byStream].flatMap(([stream, own]) => {
      const { type, id } = splitStream(stream);
      return type === 'strike' && hasRepairs(own) ? [id] : [];
    }),
  );
}

async function readClaim({ ledger }: ProjectorDeps, stream: Stream, claimId: string): Promise<Reading> {
  const recorded = await ledger.readStream(stream, { personal: false });
  return {
    targets: [{ partition: partitions.claim, key: claimId }],
    items: projectionItems(recorded, () => 'unknown'),
  };
}

/**
 * Rates, models and the inventory in force. When another inventory has come into force, hydrants may be of another
 * type and returns may hold or not: every hydrant of which anything is known is computed anew first, so that a run
 * that stops in the middle is run again.
 */
async function projectUtility(deps: ProjectorDeps): Promise<void> {
  const read = async (): Promise<Reading> => {
    const recorded = await deps.ledger.readStream('utility', { personal: false });
    const kept = await deps.projections.list(partitions.utility);
    const keys = new Set([...utilityKeys(recorded), ...kept.map(({ key }) => key)]);
    return {
      targets: [...keys].map((key) => ({ partition: partitions.utility, key })),
      items: utilityItems(recorded),
    };
  };
  const { items } = await read();
  const now = items.find(({ key }) => key === inventoryKey)?.value ?? null;
  const before = (await deps.projections.get(partitions.utility, inventoryKey))?.value ?? null;
  if (firstDifference(before, now) !== null)
    for (const { key } of await deps.projections.list(partitions.hydrant))
      await projectStream(deps, `hydrant:${key}`);
  await settle(deps, read);
}
