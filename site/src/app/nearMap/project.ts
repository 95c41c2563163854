import { EARTH_RADIUS_M, type Position } from '../../../../shared/nearest/sphere.ts';

/** Feet to the east and to the north of a place. */
export interface Offset {
  readonly eastFt: number;
  readonly northFt: number;
}

const FT_PER_DEGREE = (EARTH_RADIUS_M * Math.PI) / 180 / 0.3048;

/**
 * Where a point lies from a center, on the plane that touches the sphere there (equirectangular, true at the center's
 * latitude). Within two miles and latitudes up to 70° it is off by less than 0.1 % of the distance: less than a line's
 * width on a phone. Across the date line it goes the short way.
 */
export function offsetFrom(center: Position, point: Position): Offset {
  const east = ((point.longitudeDeg - center.longitudeDeg + 540) % 360) - 180;
  return {
    eastFt: east * Math.cos((center.latitudeDeg * Math.PI) / 180) * FT_PER_DEGREE,
    northFt: (point.latitudeDeg - center.latitudeDeg) * FT_PER_DEGREE,
  };
}

/** How far the map reaches from its center, feet. */
export const reachesFt = [150, 300, 600, 1200, 2640, 5280, 10_560] as const;

/** The nearest reach that shows so many of these distances (nearest first), or all there are. */
export function reachFor(distancesFt: readonly number[], wanted = 4): number {
  const needed = distancesFt[Math.min(wanted, distancesFt.length) - 1] ?? 0;
  return reachesFt.find((reach) => reach >= needed) ?? reachesFt[reachesFt.length - 1] ?? needed;
}

export interface Placed {
  readonly x: number;
  readonly y: number;
}
export const arrows = ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight'] as const;
export type Arrow = (typeof arrows)[number];

/** The nearest mark in the direction of an arrow key (within 60° of it), or -1. `y` grows downward, as on a screen. */
export function towards(marks: readonly Placed[], from: number, arrow: Arrow): number {
  const here = marks[from];
  if (!here) return marks.length > 0 ? 0 : -1;
  const [dx, dy] = {
    ArrowUp: [0, -1],
    ArrowDown: [0, 1],
    ArrowLeft: [-1, 0],
    ArrowRight: [1, 0],
  }[arrow] as [number, number];
  let best = -1;
  let shortest = Infinity;
  marks.forEach((mark, index) => {
    const [x, y] = [mark.x - here.x, mark.y - here.y];
    const length = Math.hypot(x, y);
    if (index === from || length === 0 || (x * dx + y * dy) / length < 0.5 || length >= shortest) return;
    best = index;
    shortest = length;
  });
  return best;
}

/** Marks so near to a touched point that a thumb may have meant any of them, nearest first. */
export function touched(marks: readonly Placed[], at: Placed, within: number): number[] {
  return marks
    .map((mark, index) => ({ index, far: Math.hypot(mark.x - at.x, mark.y - at.y) }))
    .filter(({ far }) => far <= within)
    .sort((a, b) => a.far - b.far)
    .map(({ index }) => index);
}
