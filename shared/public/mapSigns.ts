import { tenth } from './mapFrame.ts';

export interface MapMarker {
  /** Index in the list that was given. */
  readonly index: number;
  /** The true place. */
  readonly x: number;
  readonly y: number;
  /** Where the sign stands: at the place, or moved aside so that it hides no other, with a line between. */
  readonly signX: number;
  readonly signY: number;
}

/** Room that a marker takes, units of the picture. */
export const MARKER_SIZE = 34;

/** Moves each sign along a widening ring until it stands free of those before it, and inside the picture. */
export function placeMarkers(
  points: readonly { readonly index: number; readonly x: number; readonly y: number }[],
  picture: { readonly width: number; readonly height: number },
): MapMarker[] {
  const placed: MapMarker[] = [];
  const half = MARKER_SIZE / 2;
  const free = (x: number, y: number): boolean =>
    x >= half &&
    y >= half &&
    x <= picture.width - half &&
    y <= picture.height - half &&
    placed.every(({ signX, signY }) => Math.hypot(signX - x, signY - y) >= MARKER_SIZE);
  for (const { index, x, y } of points) {
    let sign = { x, y };
    // Eight rings of sixteen places; where even those are taken, signs overlap and the list has them all.
    search: for (let ring = 0; ring <= 8; ring++)
      for (let step = 0; step < (ring === 0 ? 1 : 16); step++) {
        const turn = (step / 16) * 2 * Math.PI;
        const [atX, atY] = [
          x + ring * 0.75 * MARKER_SIZE * Math.cos(turn),
          y + ring * 0.75 * MARKER_SIZE * Math.sin(turn),
        ];
        if (!free(atX, atY)) continue;
        sign = { x: atX, y: atY };
        break search;
      }
    placed.push({ index, x: tenth(x), y: tenth(y), signX: tenth(sign.x), signY: tenth(sign.y) });
  }
  return placed;
}
