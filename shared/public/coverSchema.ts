import * as z from 'zod';
import { distancesBy } from '../fireCover/cover.ts';
import { hydrantId } from '../inventory/hydrant.ts';
import { publicPosition } from './position.ts';

const count = z.number().int().min(0);
const gpm = z.number().int().min(0);

/** How a distance was measured: along streets, or as the crow flies. */
export const distanceBy = z.enum(distancesBy);

/** Hydrants within 300, 600 and 1,000 ft and the credit they give, against what was there with all of them in service. */
export const publicCover = z.strictObject({
  by: distanceBy,
  /** Nested: within 600 ft counts those within 300 ft, too. */
  rings: z.array(z.strictObject({ toFt: z.number().int().min(1), before: count, left: count })).min(1),
  beforeGpm: gpm,
  leftGpm: gpm,
  /** False: both credits are "at most". */
  certain: z.boolean(),
  /** Why, of the hydrants that are left: how many lack what. */
  doubts: z.strictObject({
    /** No flow on record. */
    noFlow: count,
    /** Outlets not on record where they could matter. */
    noOutlets: count,
    /** Back in service with a test put off. */
    notRetested: count,
    /** May be the very one that somebody reported without its number. */
    maybeStruck: count,
    /** The utility keeps flows to itself, so each is taken at the upper end of its class. */
    classOnly: z.boolean(),
  }),
});

export const lostKinds = ['none', 'short'] as const;

/** Places next to each other that lost their cover to what is out. */
export const publicLostArea = z.strictObject({
  /** Named by the hydrant that is out and nearest to its middle; the id is null for one whose number is not shown. */
  hydrantId: hydrantId.nullable(),
  place: z.string().nullable(),
  /** Of the looked-at place nearest to its middle. */
  position: publicPosition,
  /** `none`: somewhere in it every hydrant within 1,000 ft is out. `short`: the credit is below the need. */
  lost: z.enum(lostKinds),
  points: z.number().int().min(1),
  pointsWithNone: count,
  /** At the place that is worst off. */
  worst: z.strictObject({ beforeGpm: gpm, leftGpm: gpm, certain: z.boolean() }),
  /** Hydrants that are out within 1,000 ft of its places; the first twelve, nearest to its middle first. */
  hydrants: z.array(hydrantId).max(12),
  hydrantsOut: z.number().int().min(1),
});

/** Where cover was looked for and what was found, whether it is much or nothing. */
export const publicFireCover = z.strictObject({
  /** Hose carried, feet, and the credit that every place must have, gpm: the utility's settings. */
  hoseFt: z.number().int().min(1),
  needGpm: gpm,
  by: distanceBy,
  /** `grid`: points `stepFt` apart within 1,000 ft of what is out. `places`: those that the utility loaded. */
  lookedAt: z.strictObject({
    kind: z.enum(['grid', 'places']),
    stepFt: z.number().int().min(1).nullable(),
    points: count,
  }),
  pointsLost: count,
  pointsWithNone: count,
  areasFound: count,
  /** Worst first. */
  areas: z.array(publicLostArea).max(100),
  /** Open reports of hydrants that the inventory does not have: what they took away cannot be known. */
  notCounted: count,
});

/** What the drawing of an area needs beyond its facts. Left out of the snapshot, which has the facts. */
export const publicAreaDrawing = z.strictObject({
  /** Points side by side in a row of the grid, or a single place. */
  rows: z.array(
    z.strictObject({
      latitudeDeg: z.number().min(-90).max(90),
      westDeg: z.number().min(-180).max(180),
      eastDeg: z.number().min(-180).max(180),
      lost: z.enum(lostKinds),
    }),
  ),
  inService: z.array(publicPosition),
  out: z.array(z.strictObject({ number: z.number().int().min(1), position: publicPosition })),
});

export type PublicCover = z.infer<typeof publicCover>;
export type PublicLostArea = z.infer<typeof publicLostArea>;
export type PublicFireCover = z.infer<typeof publicFireCover>;
export type PublicAreaDrawing = z.infer<typeof publicAreaDrawing>;
