import { FEET_PER_DEGREE, greatCircleFt } from '../nearest/sphere.ts';
import { fitFrame, tenth } from './mapFrame.ts';
import type { PublicNearest, PublicPosition } from './snapshot.ts';

/** The surroundings of one hydrant that is out: rings of distance, and the hydrants that can be used instead. */
export interface NearMap {
  readonly size: number;
  readonly centre: number;
  readonly rings: readonly { readonly feet: number; readonly radius: number }[];
  /** Direction with the most room for the rings' labels: 1 long, x to the east, y to the south. */
  readonly labelsAlong: { readonly x: number; readonly y: number };
  readonly hydrants: readonly { readonly index: number; readonly x: number; readonly y: number }[];
}

const SIZE = 420;
const MARGIN = 30;

/** Rings every 300 ft up to 1,200 and wider beyond, so that no map has more than five. */
function ringStep(reachFt: number): number {
  const steps = [100, 200, 300, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000];
  return steps.find((step) => reachFt / step <= 4) ?? 100_000;
}

/** The direction farthest from every hydrant's; downwards where two are as free, because that is where one looks. */
function freest(taken: readonly number[]): { x: number; y: number } {
  const apart = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));
  const candidates = Array.from({ length: 24 }, (_, step) => Math.PI / 2 + (step * Math.PI) / 12);
  const room = (turn: number): number => Math.min(...taken.map((other) => apart(turn, other)));
  const best = candidates.reduce((a, b) => (room(b) > room(a) + 0.01 ? b : a));
  return { x: Math.cos(best), y: Math.sin(best) };
}

type Drawn = Pick<PublicNearest, 'position' | 'distanceFt'> & {
  readonly distanceBy?: PublicNearest['distanceBy'] | undefined;
};

/** A published position may be rounded so far that a picture would contradict the distance beside it. */
const agrees = (drawnFt: number, { distanceFt, distanceBy }: Drawn): boolean =>
  distanceBy === 'streets'
    ? // Along streets it is farther than drawn, never nearer.
      drawnFt <= distanceFt * 1.05 + 30
    : Math.abs(drawnFt - distanceFt) <= 30 + distanceFt * 0.05;

/** Null when there is no neighbour to show, or the published positions are too coarse to draw. */
export function nearMap(centre: PublicPosition, nearest: readonly Drawn[]): NearMap | null {
  if (nearest.length === 0) return null;
  // As drawn: along streets it is farther, and rings for that would leave most of the picture empty.
  const far = Math.max(...nearest.map(({ position }) => greatCircleFt(centre, position)));
  const step = ringStep(Math.max(far, 300));
  const reachFt = Math.ceil(Math.max(far, 300) / step) * step;
  const high = reachFt / FEET_PER_DEGREE;
  const wide = high / Math.cos((centre.latitudeDeg * Math.PI) / 180);
  const frame = fitFrame(
    {
      south: centre.latitudeDeg - high,
      north: centre.latitudeDeg + high,
      west: centre.longitudeDeg - wide,
      east: centre.longitudeDeg + wide,
    },
    { width: SIZE, least: SIZE, greatest: SIZE, margin: MARGIN },
  );
  const drawn = nearest.map(({ position }) => frame.place(position));
  const distance = ({ x, y }: { x: number; y: number }): number =>
    Math.hypot(x - SIZE / 2, y - SIZE / 2) * frame.feetPerUnit;
  if (!nearest.every((near, index) => agrees(distance(drawn[index] ?? { x: 0, y: 0 }), near))) return null;
  return {
    size: SIZE,
    centre: SIZE / 2,
    rings: Array.from({ length: reachFt / step }, (_, index) => ({
      feet: (index + 1) * step,
      radius: tenth(((index + 1) * step) / frame.feetPerUnit),
    })),
    labelsAlong: freest(drawn.map(({ x, y }) => Math.atan2(y - SIZE / 2, x - SIZE / 2))),
    hydrants: drawn.map(({ x, y }, index) => ({ index, x: tenth(x), y: tenth(y) })),
  };
}
