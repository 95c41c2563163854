import { FARTHEST_FT } from '../fireCover/distanceCredit.ts';
import { gridAround } from '../fireCover/grid.ts';
import type { LostPoint } from '../fireCover/lostCover.ts';
import type { FireCoverSettings } from '../fireCover/settings.ts';
import type { Hydrant } from '../inventory/hydrant.ts';
import type { CoverPoints } from '../layers/coverPoints.ts';
import { placesAround } from '../nearest/within.ts';
import type { PublicAreaDrawing, PublicFireCover, PublicLostArea } from './coverSchema.ts';
import { lostAreas, type LostArea } from './lostAreas.ts';
import { roundedPosition } from './position.ts';
import type { Surroundings } from './surroundings.ts';

const MOST_AREAS = 100;
const MOST_HYDRANTS = 12;
/** Areas that are drawn; those after them stand in the list. */
const MOST_DRAWN = 20;
/** Loaded places as far apart as this belong together: the first ring of the credit. */
const JOIN_PLACES_FT = 300;
/** With fewer decimals (4: 11 m) a drawing would tell more of where hydrants stand than the utility publishes. */
const LEAST_DECIMALS = 4;

export interface FireCoverInput {
  readonly surroundings: Surroundings;
  /** The inventory's hydrants that are out, with their numbers in the list. */
  readonly out: readonly { readonly hydrant: Hydrant; readonly number: number }[];
  readonly mustCover: CoverPoints | null;
  readonly settings: FireCoverSettings;
  readonly showFlow: boolean;
  readonly positionDecimals: number;
  /** Open entries whose hydrant the inventory does not have. */
  readonly notCounted: number;
}

/** Where cover was lost to what is out, as the public is told of it, and what the drawings of it need. */
export function publicFireCoverOf(input: FireCoverInput): {
  readonly fireCover: PublicFireCover;
  readonly drawings: readonly PublicAreaDrawing[];
} {
  const { surroundings, mustCover, settings, positionDecimals } = input;
  const { by, question } = surroundings;
  const out = input.out.map(({ hydrant }) => hydrant);
  const { hoseFt, needGpm, gridStepFt } = settings;
  const points = mustCover ? mustCover.around(out) : gridAround(out, gridStepFt);
  // A point's neighbours in the next rows of the grid lie up to half a step aside: √(1 + ¼) of a step, and some slack.
  const joinFt = mustCover ? JOIN_PLACES_FT : gridStepFt * 1.25;
  const areas = lostAreas(question, { points, joinFt }, needGpm);
  const sum = (of: (area: LostArea) => number): number => areas.reduce((total, area) => total + of(area), 0);
  return {
    fireCover: {
      hoseFt,
      needGpm,
      by,
      lookedAt: {
        kind: mustCover ? 'places' : 'grid',
        stepFt: mustCover ? null : gridStepFt,
        points: points.length,
      },
      pointsLost: sum((area) => area.points.length),
      pointsWithNone: sum(({ withNone }) => withNone),
      areasFound: areas.length,
      areas: areas.slice(0, MOST_AREAS).map((area) => publicArea(area, input)),
      notCounted: input.notCounted,
    },
    drawings:
      positionDecimals < LEAST_DECIMALS
        ? []
        : areas.slice(0, MOST_DRAWN).map((area) => drawingOf(area, input, mustCover ? null : gridStepFt)),
  };
}

function publicArea(area: LostArea, { showFlow, positionDecimals }: FireCoverInput): PublicLostArea {
  const { points, middle, lost, withNone, out } = area;
  const [named] = out;
  const [worst] = points;
  if (!named || !worst) throw new Error('an area that nothing took away');
  return {
    hydrantId: named.hydrantId,
    place: named.place,
    position: roundedPosition(middle, positionDecimals),
    lost,
    points: points.length,
    pointsWithNone: withNone,
    worst: {
      beforeGpm: Math.round(worst.cover.beforeGpm),
      leftGpm: Math.round(worst.cover.leftGpm),
      certain: worst.cover.certain && showFlow,
    },
    hydrants: out.slice(0, MOST_HYDRANTS).map(({ hydrantId }) => hydrantId),
    hydrantsOut: out.length,
  };
}

/** Points of the grid side by side as one row, so that a large area is drawn with few strokes. */
function rowsOf(
  points: readonly LostPoint[],
  gridStepFt: number | null,
  decimals: number,
): PublicAreaDrawing['rows'] {
  const rows: PublicAreaDrawing['rows'] = [];
  const column = ({ point }: LostPoint): number => Number(point.id.split(':')[1]);
  const ordered =
    gridStepFt === null
      ? points
      : points.toSorted(
          (a, b) => a.point.latitudeDeg - b.point.latitudeDeg || a.point.longitudeDeg - b.point.longitudeDeg,
        );
  let last: LostPoint | undefined;
  for (const each of ordered) {
    const { latitudeDeg, longitudeDeg } =
      gridStepFt === null ? roundedPosition(each.point, decimals) : each.point;
    const row = rows.at(-1);
    const isNext =
      gridStepFt !== null &&
      last?.point.latitudeDeg === each.point.latitudeDeg &&
      column(each) === column(last) + 1;
    if (row && isNext && row.lost === each.lost) row.eastDeg = longitudeDeg;
    else rows.push({ latitudeDeg, westDeg: longitudeDeg, eastDeg: longitudeDeg, lost: each.lost });
    last = each;
  }
  return rows;
}

function drawingOf(area: LostArea, input: FireCoverInput, gridStepFt: number | null): PublicAreaDrawing {
  const { surroundings, positionDecimals } = input;
  const { index, isInService, serves } = surroundings.question;
  const around = new Set<number>();
  for (const { point } of area.points)
    for (const place of placesAround(index.tree, point, FARTHEST_FT)) around.add(place);
  const numbers = new Map(input.out.map(({ hydrant, number }) => [hydrant.hydrantId, number]));
  const near = [...around].flatMap((place) => index.hydrants[place] ?? []);
  return {
    rows: rowsOf(area.points, gridStepFt, positionDecimals),
    inService: near
      .filter((hydrant) => isInService(hydrant) && (!serves || serves(hydrant)))
      .map((hydrant) => roundedPosition(hydrant, positionDecimals)),
    out: near.flatMap((hydrant) => {
      const number = numbers.get(hydrant.hydrantId);
      return number === undefined ? [] : [{ number, position: roundedPosition(hydrant, positionDecimals) }];
    }),
  };
}
