import { coordinate } from '../drawing/markup.ts';
import { say, type Locale } from '../words/index.ts';
import type { Ring, RingBolt } from './ring.ts';
import { sayOrder } from './say.ts';

const SIZE = 360;
const MIDDLE = SIZE / 2;
const RADIUS = 124;
/** Inner edge of the flange; drawn there, no line runs through a number. */
const INNER = 92;

const text = (x: number, y: number, size: number, words: string, extra = ''): string =>
  `<text x="${coordinate(x)}" y="${coordinate(y + size * 0.35)}" font-size="${coordinate(size)}" text-anchor="middle"${extra}>${words}</text>`;

/** Bolts stand apart by their number; the heads shrink so that they never touch. */
function head({ place, turn, x, y }: RingBolt, bolts: number): string {
  const radius = Math.min(22, (Math.PI * RADIUS) / bolts - 3);
  const [atX, atY] = [MIDDLE + RADIUS * x, MIDDLE - RADIUS * y];
  const outside = RADIUS + radius + 12;
  return [
    `<circle cx="${coordinate(atX)}" cy="${coordinate(atY)}" r="${coordinate(radius)}" fill="none" stroke="currentColor" stroke-width="2"/>`,
    text(atX, atY, Math.max(5, radius * 0.95), String(turn), ' font-weight="700"'),
    text(MIDDLE + outside * x, MIDDLE - outside * y, Math.max(7, Math.min(16, radius)), String(place)),
  ].join('');
}

export interface RingDrawing {
  readonly locale: Locale;
  /** Makes the ids unique where a page shows several rings; letters, digits and hyphens. */
  readonly idPrefix: string;
}

/** What the ring shows, in sentences, for those who do not see it. */
export const ringDescription = ({ bolts, groups }: Ring, locale: Locale): string =>
  say(locale, 'tightening.ring-description', { bolts: bolts.length, order: sayOrder({ groups }) });

/**
 * The ring as one SVG element: a circle for each bolt with the turn in which it is tightened, its place beside it, place
 * 1 at the top. One ink (`currentColor`), so it prints in black and white. Title and description tell the same order.
 */
export function ringSvg(ring: Ring, { locale, idPrefix }: RingDrawing): string {
  const title = say(locale, 'tightening.ring-title', { bolts: ring.bolts.length });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${SIZE} ${SIZE}" role="img" class="tightening-ring"`,
    ` aria-labelledby="${idPrefix}-title ${idPrefix}-desc" font-family="inherit" fill="currentColor">`,
    `<title id="${idPrefix}-title">${title}</title>`,
    `<desc id="${idPrefix}-desc">${ringDescription(ring, locale)}</desc>`,
    `<circle cx="${MIDDLE}" cy="${MIDDLE}" r="${INNER}" fill="none" stroke="currentColor" stroke-opacity="0.35" stroke-width="1"/>`,
    ...ring.bolts.map((bolt) => head(bolt, ring.bolts.length)),
    text(MIDDLE, MIDDLE - 11, 15, say(locale, 'tightening.ring-inside')),
    text(MIDDLE, MIDDLE + 13, 15, say(locale, 'tightening.ring-outside')),
    '</svg>',
  ].join('');
}
