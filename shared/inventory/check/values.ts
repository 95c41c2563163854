import type { ImportChoices } from '../choices.ts';
import { fieldRules } from '../mapping/fields.ts';
import { readCount } from '../mapping/fits.ts';
import type { ColumnUse } from '../mapping/propose.ts';
import { isBlank } from '../values/blank.ts';
import { readDate } from '../values/date.ts';
import { readNumber, readQuantity, toUnit, type SourceUnit } from '../values/quantity.ts';
import { remark, type Remark } from './finding.ts';

/** What one text came to: its value, or null where it is blank or left out, and what there is to say about it. */
export interface Reading<T> {
  readonly value: T | null;
  readonly remark: Remark | null;
}

const clean = <T>(value: T | null): Reading<T> => ({ value, remark: null });
const leftOut = (code: Remark['code'], params: Remark['params'] = {}): Reading<never> => ({
  value: null,
  remark: remark(code, params),
});

/** Readings by text, because sizes, dates and words repeat thousands of times. Bounded; past that, values are read anew. */
export function remembering<T>(read: (text: string) => Reading<T>): (text: string) => Reading<T> {
  const known = new Map<string, Reading<T>>();
  return (text) => {
    let reading = known.get(text);
    if (reading === undefined) {
      reading = isBlank(text) ? clean<T>(null) : read(text);
      if (known.size < 5000) known.set(text, reading);
    }
    return reading;
  };
}

/** Text up to `longest` characters; what is longer is cut, and said. */
export const textReader =
  (longest: number) =>
  (text: string): Reading<string> => {
    // An address over two lines of a form is one line here.
    const line = text.replace(/\s+/g, ' ');
    if (isBlank(line)) return clean<string>(null);
    return line.length <= longest
      ? clean(detached(line))
      : {
          value: detached(line.slice(0, longest).trim()),
          remark: remark('inventory-text-too-long', { longest }),
        };
  };

/**
 * A copy of its own. A piece cut from a longer text can keep the whole of it in memory, and the longer text here is the
 * file.
 */
export const detached = (text: string): string => (text.length < 13 ? text : ` ${text}`.slice(1));

/** Quantities of one column, in the unit of its field. A doubtful one is left out, because a wrong size or flow is worse than none. */
export function quantityReader(use: ColumnUse, choices: ImportChoices): (text: string) => Reading<number> {
  const rule = fieldRules[use.field].quantity;
  const decision = use.unit;
  if (!rule || !decision) throw new Error(`${use.field} is not a quantity`);
  const plausible = (value: number): boolean => value >= rule.minimum && value <= rule.maximum;
  const rounded = (value: number): number => Number(value.toPrecision(value < 100 ? 3 : 4));
  const range = { minimum: rule.minimum, maximum: rule.maximum, target: rule.target };

  return (text) => {
    const read = readQuantity(text, decision.commaIsDecimal);
    if (!read) return leftOut('inventory-not-a-number');
    if ('unknownUnit' in read)
      return leftOut('inventory-unknown-unit', { unit: read.unknownUnit, target: rule.target });
    if (read.value === 0) return { value: null, remark: remark('inventory-zero-as-blank') };
    const unit = read.unit ?? decision.bare;
    const units = decision.written.map(([name]) => name).join(', ');
    if (unit === null) return leftOut('inventory-unit-missing', { units: units || '?', field: use.field });
    const value = toUnit(read.value, unit, rule.target);
    if (!plausible(value)) {
      const said = { unit, converted: rounded(value), ...range };
      return leftOut(read.unit === null ? 'inventory-unit-unlikely' : 'inventory-out-of-range', said);
    }
    if (
      read.unit !== null &&
      unit !== decision.usual &&
      decision.usual !== null &&
      plausible(toUnit(read.value, decision.usual, rule.target))
    ) {
      return mixed(value, read.unit, decision.usual);
    }
    return { value, remark: read.misspelled ? remark('inventory-unit-misspelled', { unit }) : null };
  };

  /** The same number would do in the unit of most rows, so either the unit or the number may be the slip. */
  function mixed(value: number, unit: SourceUnit, usual: SourceUnit): Reading<number> {
    const params = { unit, usual, converted: rounded(value), target: range.target };
    return choices.accept.has('mixed-units')
      ? { value, remark: remark('inventory-mixed-units-taken', params) }
      : leftOut('inventory-mixed-units', params);
  }
}

/** Calendar days of one column as `YYYY-MM-DD`. */
export function dateReader(use: ColumnUse, choices: ImportChoices): (text: string) => Reading<string> {
  return (text) => {
    const read = readDate(text, use.dateOrder, choices.today);
    if (!('fault' in read)) {
      const note = read.yearOnly
        ? remark('inventory-year-only')
        : read.century
          ? remark('inventory-two-digit-year')
          : null;
      return { value: read.date, remark: note };
    }
    switch (read.fault) {
      case 'placeholder':
        return leftOut('inventory-placeholder-date');
      case 'impossible':
        return leftOut('inventory-impossible-date');
      case 'future':
        return leftOut('inventory-future-date', { today: choices.today });
      case 'ambiguous':
        return leftOut('inventory-ambiguous-date');
      case 'not-a-date':
        return leftOut('inventory-not-a-date');
    }
  };
}

/** Counts of outlets, as figures or words. */
export function countReader(text: string): Reading<number> {
  const value = readCount(text);
  if (value === null) return leftOut('inventory-not-a-count');
  return {
    value,
    remark: readNumber(text) === null ? remark('inventory-count-as-word', { count: value }) : null,
  };
}
