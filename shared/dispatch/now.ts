import type { HydrantStatus } from '../outages/hydrantStatus.ts';
import type { StrikeState } from '../strikes/state.ts';
import type { SubjectNow } from './next.ts';

/** Nothing is out there, and nothing was. */
export const nothingNow: SubjectNow = { open: [], ended: [] };

/** A hydrant, by its outages. */
export const nowOfHydrant = ({ open, past }: HydrantStatus): SubjectNow => ({
  open: open.map(({ outageId, since }) => ({ outageId, since })),
  ended: past.flatMap(({ outageId, endedAt }) => (endedAt === null ? [] : [{ outageId, endedAt }])),
});

/** A strike that names no hydrant and says where: the place is spoken of until a hydrant is known. */
export function nowOfPlace({
  strikeId,
  hydrantIds,
  since,
  returnedAt,
  position,
  placeDescription,
}: StrikeState): SubjectNow {
  if (hydrantIds.length > 0 || (position === null && placeDescription === null)) return nothingNow;
  return returnedAt === null
    ? { open: [{ outageId: strikeId, since }], ended: [] }
    : { open: [], ended: [{ outageId: strikeId, endedAt: returnedAt }] };
}
