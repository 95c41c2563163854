import { folded } from '../values/blank.ts';
import type { ColumnProfile } from './profile.ts';

/** Spellings of one name that differ in case, punctuation, company form or a letter. */
export interface SpellingGroup {
  /** The most frequent spelling, as written. */
  readonly usual: string;
  readonly spellings: readonly string[];
  readonly rows: number;
}

const companyForms =
  /\b(co|company|corp|corporation|inc|incorporated|ltd|limited|llc|mfg|manufacturing|hydrants?|valves?|works|and|the)\b/g;
const bareName = (text: string): string => folded(text).replace(companyForms, ' ').replace(/\s+/g, '');

/** True when one letter was added, left out, changed or swapped with its neighbour. */
export function oneSlipApart(one: string, other: string): boolean {
  if (Math.abs(one.length - other.length) > 1) return false;
  let start = 0;
  while (start < one.length && one[start] === other[start]) start += 1;
  let end = 0;
  while (end < Math.min(one.length, other.length) - start && one.at(-1 - end) === other.at(-1 - end))
    end += 1;
  const [a, b] = [one.slice(start, one.length - end), other.slice(start, other.length - end)];
  return (
    a.length + b.length <= 1 ||
    (a.length === 1 && b.length === 1) ||
    (a.length === 2 && b.length === 2 && a[0] === b[1] && a[1] === b[0])
  );
}

/**
 * The names of a column with their spellings. For a person to look at: nothing is renamed, because two makers can
 * differ by one letter.
 */
export function groupSpellings(column: ColumnProfile): SpellingGroup[] {
  const groups: { key: string; usual: string; spellings: string[]; rows: number }[] = [];
  // The most frequent spelling first, so that it leads its group. The loop is bounded by the profile's remembered values.
  for (const [text, rows] of [...column.values].sort(([, one], [, other]) => other - one)) {
    const key = bareName(text) || folded(text);
    // Short names differ by a letter too easily (a code, initials).
    const group = groups.find((each) => each.key === key || (key.length >= 5 && oneSlipApart(each.key, key)));
    if (group) {
      group.spellings.push(text);
      group.rows += rows;
    } else {
      groups.push({ key, usual: text, spellings: [text], rows });
    }
  }
  return groups
    .sort((one, other) => other.rows - one.rows)
    .map(({ usual, spellings, rows }) => ({ usual, spellings, rows }));
}
