import type { Hydrant } from '../hydrant.ts';
import type { ImportField } from '../mapping/fields.ts';
import { isSize } from '../mapping/fits.ts';
import { outletKind, readOutlets } from '../values/outlets.ts';
import { readQuantity, toUnit } from '../values/quantity.ts';
import { remark, type Remark } from './finding.ts';

type Outlets = Pick<Hydrant, 'outlets' | 'outletCount'>;

/** What the outlet columns of one row say, each already read from its column. */
export interface OutletTexts {
  readonly outlets: string;
  readonly count: number | null;
  readonly hose: { readonly count: number | null; readonly diameterIn: number | null };
  readonly pumper: { readonly count: number | null; readonly diameterIn: number | null };
}

/**
 * The outlets of one hydrant. Sizes are never supplied: three outlets of unknown size are a count and no more.
 */
export function outletsOf(
  { outlets: text, count, hose, pumper }: OutletTexts,
  say: (found: Remark, field: ImportField) => void,
): Outlets {
  let kept: Hydrant['outlets'] = none;
  if (text !== '') {
    const read = readKnown(text) ?? sizeOnly(text, count, say);
    if (read) kept = read;
    else if (!isSize(text)) say(remark('inventory-unreadable-outlets'), 'outlets');
  } else if (hose.diameterIn !== null || pumper.diameterIn !== null) {
    kept = grouped(hose, pumper);
  }
  const counted =
    count ?? (hose.count === null && pumper.count === null ? null : (hose.count ?? 0) + (pumper.count ?? 0));
  if (kept.length > 0) {
    if (counted !== null && counted !== kept.length)
      say(remark('inventory-outlet-counts-differ', { counted, listed: kept.length }), 'outletCount');
    return { outlets: kept };
  }
  return counted === null ? { outlets: none } : { outlets: none, outletCount: counted };
}

const none: Hydrant['outlets'] = [];

function grouped(hose: OutletTexts['hose'], pumper: OutletTexts['pumper']): Hydrant['outlets'] {
  const outlets: Hydrant['outlets'] = [];
  for (const [kind, { count, diameterIn }] of [
    ['hose', hose],
    ['pumper', pumper],
  ] as const) {
    for (let each = 0; diameterIn !== null && each < (count ?? 0); each += 1)
      outlets.push({ kind, diameterIn });
  }
  return outlets.slice(0, 8);
}

// One list for all hydrants of the same outlets: a city has a handful of kinds, and hydrants are never changed in place.
const known = new Map<string, Hydrant['outlets'] | null>();
function readKnown(text: string): Hydrant['outlets'] | null {
  let outlets = known.get(text);
  if (outlets === undefined) {
    outlets = readOutlets(text);
    if (known.size < 1000) known.set(text, outlets);
  }
  return outlets;
}

/** A size with no count is one outlet where the count column says one, and otherwise only half an answer. */
function sizeOnly(
  text: string,
  count: number | null,
  say: (found: Remark, field: ImportField) => void,
): Hydrant['outlets'] | null {
  if (!isSize(text)) return null;
  const size = readQuantity(text);
  if (count !== 1 || !size || 'unknownUnit' in size) {
    say(remark('inventory-outlet-size-without-count'), 'outlets');
    return null;
  }
  const diameterIn = toUnit(size.value, size.unit ?? 'in', 'in');
  return diameterIn >= 1 && diameterIn <= 12 ? [{ kind: outletKind(diameterIn), diameterIn }] : null;
}
