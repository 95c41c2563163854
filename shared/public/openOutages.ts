import type { HydrantStatus } from '../outages/hydrantStatus.ts';
import type { StrikeState } from '../strikes/state.ts';
import type { Hold } from '../outages/returnEffect.ts';
import { publicHolds, type PublicOutage, type PublicPosition } from './snapshot.ts';

/** As it was reported, with the radius that the device states for it. */
type ReportedPosition = PublicPosition & { readonly accuracyM?: number | null };

/** A place with every outage of it that is open: a hydrant by its id, or a report that names none. */
export interface OpenPlace {
  readonly hydrantId: string | null;
  readonly reportedPosition: ReportedPosition | null;
  readonly outages: readonly PublicOutage[];
}

type Outage = HydrantStatus['open'][number];

/** Fields that the schema checks again: an unknown cause or stage stops the publication, it is never left out. */
function publicOutageOf(outage: Outage, strike: StrikeState | undefined): PublicOutage {
  const { outageId, cause, since, expectedAt, waitingFor, heldReturns } = outage;
  // The two were read one after the other, and a return may have come between: until both say so, it is out.
  const known = strike?.stage === 'back' ? 'repaired' : strike?.stage;
  const stage = known ?? (waitingFor === null ? 'other' : 'waiting');
  const holds = new Set(heldReturns.at(-1)?.holds.map(({ code }) => publicHold(code)));
  return {
    outageId,
    cause,
    since,
    expectedAt,
    waitingFor,
    stage,
    ...(holds.size > 0 ? { heldBy: publicHolds.filter((hold) => holds.has(hold)) } : {}),
  } as PublicOutage;
}

/** What a hold comes to for somebody who needs the water: which valve and which proof are the utility's own business. */
function publicHold(code: Hold['code']): (typeof publicHolds)[number] {
  if (code === 'valve-still-closed') return 'valve';
  if (code === 'repair-still-open') return 'open';
  return code.startsWith('proof-') || code === 'failed-since' ? 'test' : 'record';
}

const bySince = (a: PublicOutage, b: PublicOutage): number =>
  Date.parse(a.since) - Date.parse(b.since) || (a.outageId < b.outageId ? -1 : 1);

/**
 * Every open outage, gathered by hydrant. Strikes that no hydrant's status speaks of (no hydrant named, or a status
 * that is missing) stand by themselves: an outage that anything knows of is listed. Newest first.
 */
export function openPlaces(
  statuses: readonly HydrantStatus[],
  strikes: readonly StrikeState[],
): readonly OpenPlace[] {
  const strikeById = new Map(strikes.map((strike) => [strike.strikeId, strike]));
  const byHydrant = new Map<string, PublicOutage[]>();
  const nameless: OpenPlace[] = [];
  const seen = new Set<string>();
  const add = (hydrantId: string, outage: PublicOutage): void => {
    byHydrant.set(hydrantId, [...(byHydrant.get(hydrantId) ?? []), outage]);
  };

  for (const { hydrantId, open } of statuses)
    for (const outage of open) {
      seen.add(outage.outageId);
      add(hydrantId, publicOutageOf(outage, strikeById.get(outage.outageId)));
    }
  for (const strike of strikes) {
    if (strike.returnedAt !== null || seen.has(strike.strikeId)) continue;
    const { since, expectedAt, waitingFor } = strike;
    const outage = publicOutageOf(
      {
        outageId: strike.strikeId,
        cause: 'strike',
        since,
        expectedAt,
        waitingFor,
        endedAt: null,
        heldReturns: strike.returns.filter(({ takesEffect }) => !takesEffect),
        deferred: [],
        dispatchToldAt: null,
      },
      strike,
    );
    if (strike.hydrantId === null)
      nameless.push({ hydrantId: null, reportedPosition: strike.position, outages: [outage] });
    else add(strike.hydrantId, outage);
  }

  const positionOf = (outages: readonly PublicOutage[]): ReportedPosition | null =>
    outages
      .map(({ outageId }) => strikeById.get(outageId)?.position ?? null)
      .find((position) => position !== null) ?? null;
  const named = [...byHydrant].map(([hydrantId, outages]): OpenPlace => ({
    hydrantId,
    reportedPosition: positionOf(outages),
    outages: outages.toSorted(bySince),
  }));
  const since = ({ outages }: OpenPlace): number =>
    Math.max(...outages.map((outage) => Date.parse(outage.since)));
  const key = ({ hydrantId, outages }: OpenPlace): string => hydrantId ?? outages[0]?.outageId ?? '';
  return [...named, ...nameless].toSorted((a, b) => since(b) - since(a) || (key(a) < key(b) ? -1 : 1));
}
