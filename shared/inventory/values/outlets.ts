import type { Hydrant } from '../hydrant.ts';
import { readCountWord } from './words.ts';
import { readQuantity, toUnit } from './quantity.ts';

type Outlet = Hydrant['outlets'][number];

/**
 * Hose nozzle or pumper nozzle by size: hose nozzles are 2½ in (3 in at most), pumper nozzles 4 in and more, so the
 * line is drawn at 3½ in. Common practice of North American hydrants, no single source.
 */
export const outletKind = (diameterIn: number): Outlet['kind'] => (diameterIn >= 3.5 ? 'pumper' : 'hose');

const group = /^(?:\(?(?<count>\d|[a-z]+)\)?\s*(?:x|×|@|-|–|:|\s)\s*)(?<size>.+)$/i;

/**
 * Outlets written as counts and sizes: `2-2.5, 1-4.5`, `2 x 2 1/2", 1 x 4 1/2"`, `(1) 2 1/2"`. A size alone says
 * nothing of how many there are. Null when the text is not of this form.
 */
export function readOutlets(text: string): Outlet[] | null {
  const outlets: Outlet[] = [];
  for (const part of text
    .split(/[,;&+]|\band\b|\by\b/i)
    .map((piece) => piece.trim())
    .filter(Boolean)) {
    // Without this "2 1/2" would read as two outlets of half an inch.
    if (/^\d+[ -]\d{1,2}\/\d{1,2}\D*$/.test(part)) return null;
    const match = group.exec(part);
    const { count: countText = '', size: sizeText = '' } = match?.groups ?? {};
    const count = /^\d$/.test(countText) ? Number(countText) : readCountWord(countText);
    const size = readQuantity(
      sizeText.replace(/\b(hose|pumper|steamer|nozzles?|outlets?|nst|nh)\b/gi, '').trim(),
    );
    if (count === null || !size || 'unknownUnit' in size) return null;
    const diameterIn = toUnit(size.value, size.unit ?? 'in', 'in');
    if (diameterIn < 1 || diameterIn > 12) return null;
    for (let each = 0; each < count; each += 1) outlets.push({ kind: outletKind(diameterIn), diameterIn });
  }
  return outlets.length > 0 && outlets.length <= 8 ? outlets : null;
}
