import type { ClaimState } from '../../shared/claims/state.ts';
import type { Hydrant } from '../../shared/inventory/hydrant.ts';
import { nearestIndex, type NearestIndex } from '../../shared/nearest/nearest.ts';
import type { HydrantStatus } from '../../shared/outages/hydrantStatus.ts';
import { partitions } from '../../shared/projections/items.ts';
import type { PublicSources } from '../../shared/public/build.ts';
import type { Vanished } from '../../shared/public/guard.ts';
import type { FlowTestFact } from '../../shared/public/ratings.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { effectiveFacts, ofKind, type Effective } from '../../shared/submissions/effective.ts';
import { streamOf, type Stream } from '../../shared/submissions/envelope.ts';
import { withoutTrials } from '../../shared/submissions/trials.ts';
import type { CurrentInventory, InventoryStore } from '../stores/inventory/inventory.ts';
import type { LayerStore } from '../stores/layers/layers.ts';
import type { Ledger } from '../stores/ledger/ledger.ts';
import type { ProjectionStore } from '../stores/projections/projections.ts';
import type { Unprojected } from '../stores/unprojected/unprojected.ts';
import { readLayers } from './layers.ts';
import { unprojectedAt } from './unprojectedAt.ts';

export interface SourceDeps {
  readonly ledger: Ledger;
  readonly projections: ProjectionStore;
  readonly unprojected: Pick<Unprojected, 'list'>;
  readonly inventory: Pick<InventoryStore, 'current'>;
  /** Streets, places to be covered, station areas, where the utility has loaded them. */
  readonly layers?: Pick<LayerStore, 'current'>;
  /** Waits for the projector; an argument so that tests hold the time. */
  readonly pause?: (milliseconds: number) => Promise<void>;
}

/** Streams read at once. */
const AT_ONCE = 16;

/**
 * The whole current state, for a publication whose check is at `checkedAt`. Every read is strongly consistent; a fault
 * throws.
 */
export async function readSources(deps: SourceDeps, checkedAt: string): Promise<PublicSources> {
  const { ledger, projections, inventory: store, layers } = deps;
  // First, and by itself: what is missing from the projections is asked before they are read.
  const unprojected = await unprojectedAt(deps, checkedAt);
  const [inventory, loaded, hydrantRows, strikeRows, claimRows] = await Promise.all([
    readInventory(store),
    layers ? readLayers(layers) : {},
    projections.list<HydrantStatus>(partitions.hydrant),
    projections.list<StrikeState>(partitions.strike),
    projections.list<ClaimState>(partitions.claim),
  ]);
  const statuses = hydrantRows.map(({ value }) => value);
  const strikes = strikeRows.map(({ value }) => value);
  return {
    unprojected,
    inventory,
    ...loaded,
    statuses,
    strikes,
    claims: claimRows.map(({ value }) => value),
    flowTests: await readFlowTests(ledger, statuses, strikes),
  };
}

const indexes = new WeakMap<CurrentInventory, NearestIndex<Hydrant>>();

/** The inventory in force. Its index is made once an edition; the store hands out the same object until then. */
async function readInventory(store: SourceDeps['inventory']): Promise<PublicSources['inventory']> {
  const current = await store.current();
  if (!current) return null;
  const index = indexes.get(current) ?? nearestIndex(current.hydrants);
  indexes.set(current, index);
  return {
    hydrants: current.hydrants,
    loadedAt: current.meta.loadedAt,
    sha256: current.manifestSha256,
    index,
  };
}

/** The standing flow tests, read from the streams that the projections name and from no others. */
async function readFlowTests(
  ledger: Ledger,
  statuses: readonly HydrantStatus[],
  strikes: readonly StrikeState[],
): Promise<ReadonlyMap<string, readonly FlowTestFact[]>> {
  const wanted = new Set(statuses.flatMap(({ flowTestIds }) => flowTestIds));
  const inStrikes = strikes.filter(({ flowTestIds }) => flowTestIds.some((id) => wanted.has(id)));
  const found = new Set(inStrikes.flatMap(({ flowTestIds }) => flowTestIds));
  const streams: Stream[] = [
    ...inStrikes.flatMap(({ memberIds }) =>
      memberIds.map((strikeId) => streamOf({ type: 'strike', strikeId })),
    ),
    ...statuses
      .filter(({ flowTestIds }) => flowTestIds.some((id) => !found.has(id)))
      .map(({ hydrantId }) => streamOf({ type: 'hydrant', hydrantId })),
  ];
  const byHydrant = new Map<string, FlowTestFact[]>();
  for (let start = 0; start < streams.length; start += AT_ONCE) {
    const read = await Promise.all(
      streams.slice(start, start + AT_ONCE).map((stream) => standing(ledger, stream)),
    );
    for (const { fact } of read.flatMap((facts) => ofKind(facts, 'flow-test')))
      if (wanted.has(fact.submissionId))
        byHydrant.set(fact.body.residualHydrantId, [
          ...(byHydrant.get(fact.body.residualHydrantId) ?? []),
          fact,
        ]);
  }
  return byHydrant;
}

const standing = async (ledger: Ledger, stream: Stream): Promise<readonly Effective[]> =>
  effectiveFacts(withoutTrials(await ledger.readStream(stream, { personal: false }))).facts;

/** Whether the ledger holds an outage that the projections do not know: then they are wrong, and no correction made it so. */
export async function stillRecorded(
  ledger: Ledger,
  { outageId, hydrantId, cause }: Vanished,
): Promise<boolean> {
  if (cause === 'strike')
    return (await standing(ledger, streamOf({ type: 'strike', strikeId: outageId }))).length > 0;
  if (hydrantId === null) return standsSomewhere(ledger, outageId);
  const facts = await standing(ledger, streamOf({ type: 'hydrant', hydrantId }));
  return facts.some(({ fact }) => fact.submissionId === outageId);
}

/** For an outage whose hydrant the page does not name: the stream is looked for, and then read with strong consistency. */
async function standsSomewhere(ledger: Ledger, outageId: string): Promise<boolean> {
  for await (const page of ledger.readAll({ personal: false })) {
    const found = page.find(({ submission }) => submission.submissionId === outageId);
    if (!found) continue;
    const facts = await standing(ledger, streamOf(found.submission.subject));
    return facts.some(({ fact }) => fact.submissionId === outageId);
  }
  // It was on the page, so it must be somewhere: not finding it is a fault.
  return true;
}
