import { problem, type Problem } from '../../problems/problem.ts';
import type { ImportChoices } from '../choices.ts';
import { ImportRefused } from '../refused.ts';
import { compact } from '../values/blank.ts';
import { orderShown, type DateOrder } from '../values/date.ts';
import { fieldRules, importFields, type ImportField } from './fields.ts';
import { columnNames, isHouseNumber, isMakeYear, isMaker, isStreet } from './names.ts';
import { valuesFit } from './fits.ts';
import { commonValues, type ColumnProfile, type Profile } from './profile.ts';
import { groupSpellings, type SpellingGroup } from './spellings.ts';
import { coordinatesByShape } from './shapes.ts';
import { decideUnit, withoutUnit, type UnitDecision } from './units.ts';

/** One field of the inventory and where it comes from. */
export interface ColumnUse {
  readonly field: ImportField;
  readonly columns: readonly ColumnProfile[];
  /** Chosen by the column's name (one cut to ten characters is less sure), by its values, or stated by the person. */
  readonly by: 'name' | 'cut-name' | 'values' | 'stated';
  readonly unit: UnitDecision | null;
  readonly dateOrder: DateOrder | null;
}

export interface Proposal {
  readonly uses: readonly ColumnUse[];
  /** Columns that go nowhere, with the reason where there is one to give. */
  readonly unmapped: readonly { readonly column: ColumnProfile; readonly why: Problem | null }[];
  /** The maker's column with its spellings, if the file has one. */
  readonly makers: readonly { readonly column: ColumnProfile; readonly groups: readonly SpellingGroup[] }[];
}

/** The order in which fields pick their columns: what identifies and places first, then the sharper of two claims. */
const order: readonly ImportField[] = [
  ...new Set<ImportField>(['hydrantId', 'point', 'latitudeDeg', 'longitudeDeg', 'private', ...importFields]),
];

/**
 * Proposes which column feeds which field, from the columns' names and from what they hold, and follows the person's
 * own mapping where there is one.
 *
 * @throws ImportRefused for a stated column that the file does not have
 */
export function propose(profile: Profile, choices: ImportChoices): Proposal {
  const taken = new Set<ColumnProfile>();
  const reasons = new Map<ColumnProfile, Problem>();
  const uses: ColumnUse[] = [];
  for (const field of order) {
    const stated = choices.map[field];
    if (stated)
      for (const column of stated.map((name) => columnNamed(profile, field, name))) taken.add(column);
  }
  for (const field of order) {
    const stated = choices.map[field];
    // A format with points has no need of coordinate columns, and two sources of one point could differ.
    if (!stated && profile.points && ['latitudeDeg', 'longitudeDeg', 'point'].includes(field)) continue;
    if (
      !stated &&
      field !== 'point' &&
      field.endsWith('tudeDeg') &&
      uses.some((use) => use.field === 'point')
    )
      continue;
    const columns = stated
      ? stated.map((name) => columnNamed(profile, field, name))
      : pick(field, profile, taken, reasons);
    const [first] = columns;
    if (!first) continue;
    const { quantity, kind } = fieldRules[field];
    const unit = quantity ? decideUnit(first, quantity, choices.units[field] ?? null) : null;
    if (!stated && unit?.why === 'not-shown') {
      // Left out as a column, not row by row: one answer (`--unit`) settles them all.
      const examples = commonValues(first, 5)
        .map(([text]) => text)
        .join(', ');
      reasons.set(first, problem('inventory-unit-not-shown', first.name, { field, examples }));
      continue;
    }
    for (const column of columns) taken.add(column);
    uses.push({
      field,
      columns,
      by: stated
        ? 'stated'
        : columns.some((column) => rankOf(field, column) < cutNameRank)
          ? 'name'
          : 'cut-name',
      unit,
      dateOrder: kind === 'date' ? (shownOrder(columns) ?? choices.dateOrder) : null,
    });
  }
  if (
    !profile.points &&
    !['point', 'latitudeDeg', 'longitudeDeg'].some((field) => uses.some((use) => use.field === field))
  ) {
    for (const [field, column] of coordinatesByShape(profile.columns.filter((each) => !taken.has(each)))) {
      taken.add(column);
      uses.push({ field, columns: [column], by: 'values', unit: null, dateOrder: null });
    }
  }
  const left = profile.columns.filter((column) => !taken.has(column));
  return {
    uses: importFields.flatMap((field) => uses.filter((use) => use.field === field)),
    unmapped: left.map((column) => ({ column, why: reasons.get(column) ?? reasonByName(column) })),
    makers: left
      .filter(({ name }) => isMaker(name))
      .map((column) => ({ column, groups: groupSpellings(column) })),
  };
}

function columnNamed(profile: Profile, field: ImportField, name: string): ColumnProfile {
  const exact = profile.columns.find((column) => column.name === name);
  const loose =
    exact ?? profile.columns.find((column) => column.name.toLowerCase() === name.trim().toLowerCase());
  if (loose) return loose;
  throw new ImportRefused(
    problem('inventory-no-such-column', `map.${field}`, {
      column: name,
      columns: profile.columns.map((each) => each.name).join(', '),
    }),
  );
}

const cutNameRank = 1000;

/** How far a column's name is from a field's: 0 is the most trusted name; Infinity is none of them. */
function rankOf(field: ImportField, column: ColumnProfile): number {
  const names = columnNames[field];
  const name = compact(column.name);
  const place = names.indexOf(name);
  if (place >= 0) return place;
  const bare = names.indexOf(name.replace(/^(hydrant|hyd|fh)/, ''));
  if (bare >= 0 && field !== 'hydrantId') return bare + 0.5;
  if (fieldRules[field].quantity) {
    const unitless = names.indexOf(compact(withoutUnit(column.name)));
    if (unitless >= 0) return unitless + 0.25;
  }
  // Shapefiles cut names to ten characters: "Number_of_", "INSTALLDAT".
  if (column.name.length === 10 && name.length >= 8) {
    const cut = names.findIndex((each) => each.length > name.length && each.startsWith(name));
    if (cut >= 0) return cutNameRank + cut;
  }
  return Infinity;
}

function pick(
  field: ImportField,
  profile: Profile,
  taken: ReadonlySet<ColumnProfile>,
  reasons: Map<ColumnProfile, Problem>,
): ColumnProfile[] {
  const named = profile.columns
    .filter((column) => !taken.has(column) && column.filled > 0)
    .map((column) => ({ column, rank: rankOf(field, column) }))
    .filter(({ rank }) => Number.isFinite(rank));
  const fitting = named.filter(({ column }) => valuesFit(field, column));
  for (const { column } of named) {
    if (fitting.some((each) => each.column === column)) continue;
    const examples = commonValues(column, 3)
      .map(([text]) => text)
      .join(', ');
    reasons.set(column, problem('inventory-not-what-it-says', column.name, { field, examples }));
  }
  // A more trusted name on hardly any row loses to one that is filled: OSM's `owner` on one node of a thousand.
  const most = Math.max(0, ...fitting.map(({ column }) => column.filled));
  const sorted = fitting
    .filter(({ column }) => column.filled * 20 >= most)
    .sort((one, other) => one.rank - other.rank);
  for (const { column } of fitting) reasons.delete(column);
  const [best] = sorted;
  if (!best) return [];
  const { several } = fieldRules[field];
  if (several === 'in-turn')
    return fitting.sort((one, other) => one.rank - other.rank).map(({ column }) => column);
  if (several === 'joined' && isStreet(best.column.name)) {
    const house = profile.columns.find(
      (column) => isHouseNumber(column.name) && !taken.has(column) && column.filled > 0,
    );
    if (house) return [house, best.column];
  }
  return [best.column];
}

/** The order of day and month that the column's own values show; null when none does or they contradict each other. */
function shownOrder(columns: readonly ColumnProfile[]): DateOrder | null {
  let mdy = 0;
  let dmy = 0;
  for (const column of columns) {
    for (const [text, rows] of column.values) {
      const shown = orderShown(text);
      if (shown === 'mdy') mdy += rows;
      if (shown === 'dmy') dmy += rows;
    }
  }
  // A few slips must not undo what thousands of rows show.
  if (mdy > dmy * 20) return 'mdy';
  return dmy > mdy * 20 ? 'dmy' : null;
}

function reasonByName(column: ColumnProfile): Problem | null {
  if (isMaker(column.name)) return problem('inventory-maker-not-kept', column.name);
  if (isMakeYear(column.name))
    return problem('inventory-make-year-not-install', column.name, { column: column.name });
  return null;
}
