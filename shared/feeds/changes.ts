import * as z from 'zod';
import { hydrantId } from '../inventory/hydrant.ts';
import type { PublicEdition } from '../public/edition.ts';
import {
  publicNotYetShown,
  publicOutage,
  publicPosition,
  publicUtility,
  type PublicOutage,
  type PublicOutOfService,
} from '../public/snapshot.ts';

/** How an outage left the list. */
const ending = z.strictObject({
  /** When it was over; null when all that is known is that the list has it no more (withdrawn, joined with another). */
  endedAt: z.iso.datetime().nullable(),
  /** At that check the hydrant was still out, for another outage. */
  stillOut: z.boolean(),
});

/** One outage as feeds tell of it: what the public list said of it last, and when that changed. */
export const outageChange = z.strictObject({
  outage: publicOutage,
  hydrantId: hydrantId.nullable(),
  inInventory: z.boolean(),
  place: z.string().nullable(),
  position: publicPosition.nullable(),
  /** Null while it lasts. */
  ended: ending.nullable(),
  /** The check that first listed it. */
  listedAt: z.iso.datetime(),
  /** The check at which what is said of it last changed. */
  changedAt: z.iso.datetime(),
  /** 1 at first, one more with each change. */
  version: z.int().min(1),
});
export type OutageChange = z.infer<typeof outageChange>;

/** What feeds must remember between two publications. Everything in it has stood on the public list. */
export const feedChanges = z.strictObject({
  version: z.literal(1),
  checkedAt: z.iso.datetime(),
  relyUntil: z.iso.datetime(),
  license: publicUtility.shape.license,
  /** What is in nothing below yet. Left out: there is none. */
  notYetShown: publicNotYetShown.optional(),
  outages: z.array(outageChange),
});
export type FeedChanges = z.infer<typeof feedChanges>;

/** For this long an outage that is over is told of, days. */
export const TOLD_DAYS = 14;
/** After a storm there may be many that end at once; the newest are told. */
const MOST_ENDED = 2000;
const DAY_MS = 86_400_000;

type Said = Omit<OutageChange, 'listedAt' | 'changedAt' | 'version'>;

/**
 * What feeds tell after one more check: every open outage, and those that left the list within `TOLD_DAYS`. A program
 * that reads a feed must see an entry as new only when something in it is, and the state of the utility does not say
 * when the public list last changed; so each publication compares with the one before. With no memory of one before
 * (`previous` null: the first publication, or a damaged file) everything counts as listed at this check.
 */
export function nextChanges(previous: FeedChanges | null, edition: PublicEdition): FeedChanges {
  const { checkedAt, relyUntil, outOfService, utility, notYetShown } = edition.snapshot;
  const known = new Map(previous?.outages.map((told) => [told.outage.outageId, told]));
  const open = outOfService.flatMap((entry) => entry.outages.map((outage) => saidOf(entry, outage)));
  const stillOpen = new Set(open.map(({ outage }) => outage.outageId));
  const out = new Set(outOfService.flatMap((entry) => entry.hydrantId ?? []));
  const endedAt = new Map(
    edition.hydrants.flatMap(({ past }) => past.map((outage) => [outage.outageId, outage.endedAt])),
  );
  const ended = [...known.values()]
    .filter(({ outage }) => !stillOpen.has(outage.outageId))
    .map(({ listedAt: _listedAt, changedAt: _changedAt, version: _version, ...said }): Said => ({
      ...said,
      // What was true when it left stays said: a second outage that ends later is told of by itself.
      ended: said.ended ?? {
        endedAt: endedAt.get(said.outage.outageId) ?? null,
        stillOut: said.hydrantId !== null && out.has(said.hydrantId),
      },
    }));
  const told = (said: Said): OutageChange => {
    const before = known.get(said.outage.outageId);
    if (!before) return { ...said, listedAt: checkedAt, changedAt: checkedAt, version: 1 };
    const { listedAt, changedAt, version } = before;
    return isSame(before, said)
      ? { ...said, listedAt, changedAt, version }
      : { ...said, listedAt, changedAt: checkedAt, version: version + 1 };
  };
  const oldest = Date.parse(checkedAt) - TOLD_DAYS * DAY_MS;
  const lately = ended
    .map(told)
    .filter(({ changedAt }) => Date.parse(changedAt) > oldest)
    .toSorted(newestFirst)
    .slice(0, MOST_ENDED);
  return feedChanges.parse({
    version: 1,
    checkedAt,
    relyUntil,
    license: utility.license,
    ...(notYetShown ? { notYetShown } : {}),
    outages: [...open.map(told), ...lately].toSorted(newestFirst),
  });
}

const saidOf = (
  { hydrantId: id, inInventory, place, position }: PublicOutOfService,
  outage: PublicOutage,
): Said => ({
  outage,
  hydrantId: id,
  inInventory,
  place,
  position,
  ended: null,
});

/** Last changed first; of one check, the outage that began last first. */
export const newestFirst = (a: OutageChange, b: OutageChange): number =>
  Date.parse(b.changedAt) - Date.parse(a.changedAt) ||
  Date.parse(b.outage.since) - Date.parse(a.outage.since) ||
  (a.outage.outageId < b.outage.outageId ? -1 : 1);

/** By value and not by spelling: the one before was read from a file, whose fields may stand in another order. */
function isSame(before: OutageChange, said: Said): boolean {
  const key = ({ outage, hydrantId: id, inInventory, place, position, ended }: Said): string =>
    JSON.stringify([
      outage.cause,
      outage.since,
      outage.expectedAt,
      outage.waitingFor,
      outage.stage,
      outage.heldBy ?? [],
      id,
      inInventory,
      place,
      position?.latitudeDeg,
      position?.longitudeDeg,
      ended?.endedAt,
      ended?.stillOut,
    ]);
  return key(before) === key(said);
}
