import type { NearMap } from '../public/nearMap.ts';

/** A word on the sketch: where its first letter stands, in the map's units. */
export interface MapLabel {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly strong: boolean;
}
interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
interface Words {
  readonly rings: readonly string[];
  readonly hydrants: readonly string[];
  readonly centre: string;
  readonly north: string;
}

/** No letter of the sketch's face is wider on average, in the map's units (7 points on 250 points for 420 units). */
const LETTER = 7.6;
const ABOVE = 11;
const BELOW = 4;
const AROUND = 2;
/** The north arrow with its letter keeps this corner. */
const NORTH = { width: 40, height: 72 };

const widthOf = (text: string, strong: boolean): number => text.length * LETTER * (strong ? 1.15 : 1);
const boxOf = ({ text, x, y, strong }: MapLabel): Box => ({
  left: x - AROUND,
  right: x + widthOf(text, strong) + AROUND,
  top: y - ABOVE,
  bottom: y + BELOW,
});
const around = (x: number, y: number, reach: number): Box => ({
  left: x - reach,
  right: x + reach,
  top: y - reach,
  bottom: y + reach,
});
const meet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/**
 * Words for a sketch, each where it covers neither a dot nor another word: a hydrant's number to the right of its dot
 * or else left, above, below or aslant; a ring's distance anywhere on its ring, the direction with the most room first, and
 * left out where the ring has no free place. A number with no free place stands to the right all the same.
 */
export function mapLabels(map: NearMap, words: Words): MapLabel[] {
  const taken: Box[] = [
    around(map.centre, map.centre, 15),
    ...map.hydrants.map(({ x, y }) => around(x, y, 6)),
    { left: map.size - NORTH.width, top: 0, right: map.size, bottom: NORTH.height },
  ];
  const free = (label: MapLabel): boolean => {
    const box = boxOf(label);
    const inside = box.left > 0 && box.top > 0 && box.right < map.size && box.bottom < map.size;
    return inside && !taken.some((other) => meet(other, box));
  };
  const take = (label: MapLabel): MapLabel => {
    taken.push(boxOf(label));
    return label;
  };
  const beside = (text: string, x: number, y: number, gap: number, strong: boolean): MapLabel => {
    const width = widthOf(text, strong);
    const right = { text, x: x + gap, y: y + 4, strong };
    const places = [
      right,
      { ...right, x: x - gap - width },
      { ...right, x: x - width / 2, y: y - gap },
      { ...right, x: x - width / 2, y: y + gap + ABOVE },
      // Aslant, a little nearer, and last of all one line farther.
      ...[gap - 4, gap + ABOVE + BELOW].flatMap((reach) =>
        [y - reach, y + reach + ABOVE].flatMap((at) => [
          { ...right, x: x + reach / 2, y: at },
          { ...right, x: x - reach / 2 - width, y: at },
        ]),
      ),
    ];
    return take(places.find(free) ?? right);
  };

  const centre = beside(words.centre, map.centre, map.centre, 20, true);
  const hydrants = map.hydrants.map(({ index, x, y }) =>
    beside(words.hydrants[index] ?? '', x, y, 10, false),
  );
  const freest = Math.atan2(map.labelsAlong.y, map.labelsAlong.x);
  const rings = map.rings.flatMap(({ radius }, index): MapLabel[] => {
    const text = words.rings[index] ?? '';
    const place = Array.from({ length: 48 }, (_, step): MapLabel => {
      // To both sides of the freest direction in turn.
      const turn = freest + (Math.ceil(step / 2) * (step % 2 === 0 ? 1 : -1) * Math.PI) / 24;
      const x = map.centre + Math.cos(turn) * radius - widthOf(text, false) / 2;
      return { text, x, y: map.centre + Math.sin(turn) * radius + 4, strong: false };
    }).find(free);
    return place ? [take(place)] : [];
  });
  const north = { text: words.north, x: map.size - 28, y: 66, strong: true };
  return [...rings, ...hydrants, centre, north];
}
