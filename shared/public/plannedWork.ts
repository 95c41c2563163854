import * as z from 'zod';
import type { Hydrant } from '../inventory/hydrant.ts';
import { hydrantId } from '../inventory/hydrant.ts';
import type { HydrantStatus } from '../outages/hydrantStatus.ts';
import { plannedWork } from '../submissions/forms/plannedWork.ts';

/** Work to come at a hydrant, as the public may know it: what, when and where; no note, and nobody's name. */
export const publicPlannedWork = z.strictObject({
  /** Stable: the id it was recorded under. */
  workId: z.string(),
  hydrantId,
  place: z.string().nullable(),
  work: plannedWork.body.shape.work,
  from: z.iso.datetime(),
  to: z.iso.datetime(),
  takesOutOfService: z.boolean(),
});
export type PublicPlannedWork = z.infer<typeof publicPlannedWork>;

const DAY_MS = 86_400_000;
/** Over for longer than this, it is told no more, days. */
const PAST_DAYS = 7;
/** Further away than this is a slip of the year, days. */
const AHEAD_DAYS = 400;

/**
 * Work at hydrants of the inventory, earliest first: what is under way or to come, and what was to be over within the
 * last week. At a hydrant that the inventory does not have there is nobody to warn of it.
 */
export function publicWork(
  statuses: readonly HydrantStatus[],
  hydrantOf: (hydrantId: string) => Hydrant | null,
  checkedAt: string,
): readonly PublicPlannedWork[] {
  const now = Date.parse(checkedAt);
  return statuses
    .flatMap(({ hydrantId: id, planned }) => {
      const hydrant = planned.length > 0 ? hydrantOf(id) : null;
      if (!hydrant) return [];
      return planned.map(({ submissionId, ...what }) => ({
        workId: submissionId,
        hydrantId: id,
        place: hydrant.place,
        ...what,
        // The schema checks it again: an unknown kind stops the publication, it is never left out.
        work: what.work as PublicPlannedWork['work'],
      }));
    })
    .filter(
      ({ from, to }) =>
        Date.parse(to) > now - PAST_DAYS * DAY_MS && Date.parse(from) < now + AHEAD_DAYS * DAY_MS,
    )
    .toSorted((a, b) => Date.parse(a.from) - Date.parse(b.from) || (a.workId < b.workId ? -1 : 1));
}

/** What of it is not over at the check. */
export const stillToCome = (work: readonly PublicPlannedWork[], checkedAt: string): PublicPlannedWork[] =>
  work.filter(({ to }) => Date.parse(to) > Date.parse(checkedAt));
