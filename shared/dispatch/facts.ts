import type { Hydrant } from '../inventory/hydrant.ts';
import type { Position } from '../nearest/sphere.ts';
import type { HydrantStatus, Outage } from '../outages/hydrantStatus.ts';
import type { StrikeState } from '../strikes/state.ts';
import type { NextNotice } from './next.ts';
import type { NoticeFacts } from './notice.ts';

/** What is known where a message is made. */
export interface NoticeFactsQuestion extends Pick<NoticeFacts, 'nearest' | 'maybe' | 'instead'> {
  readonly next: NextNotice;
  readonly hydrantId: string | null;
  readonly hydrant: Hydrant | null;
  readonly status: HydrantStatus | null;
  /** The strike that is spoken of, where there is one. */
  readonly reported: StrikeState | null;
}

/** Where the inventory says the hydrant stands; else where the report says. */
export const noticePosition = (hydrant: Hydrant | null, reported: StrikeState | null): Position | null => {
  const from = hydrant ?? reported?.position ?? null;
  return from && { latitudeDeg: from.latitudeDeg, longitudeDeg: from.longitudeDeg };
};

/**
 * The inventory's words for the place. The crew's own only when nothing else says where it is: they are free words, and
 * a message to others carries as few of those as it can.
 */
const placeOf = (
  hydrant: Hydrant | null,
  position: Position | null,
  reported: StrikeState | null,
): string | null => hydrant?.place ?? (position === null ? (reported?.placeDescription ?? null) : null);

/** What a message says: since when and why while it is out, when it came back and what was not shown, never of a person. */
export function noticeFacts({
  next,
  hydrantId,
  hydrant,
  status,
  reported,
  ...found
}: NoticeFactsQuestion): NoticeFacts {
  const { what, outageIds, at } = next;
  const position = noticePosition(hydrant, reported);
  const open: readonly Pick<Outage, 'outageId' | 'cause' | 'expectedAt'>[] =
    hydrantId !== null
      ? (status?.open ?? [])
      : reported
        ? [{ outageId: reported.strikeId, cause: 'strike', expectedAt: reported.expectedAt }]
        : [];
  const first = open.find(({ outageId }) => outageId === outageIds[0]) ?? open[0];
  const ended = (status?.past ?? []).filter(({ endedAt }) => endedAt === at);
  return {
    hydrantId,
    place: placeOf(hydrant, position, reported),
    position,
    cause: what === 'out' ? (first?.cause ?? null) : null,
    since: what === 'out' ? at : null,
    expectedAt: what === 'out' ? (first?.expectedAt ?? null) : null,
    returnedAt: what === 'back' ? at : null,
    notShown:
      what === 'back'
        ? [...new Set(ended.flatMap(({ deferred }) => deferred.map(({ proof }) => proof)))]
        : [],
    ...found,
  };
}
