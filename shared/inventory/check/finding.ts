import type { Problem } from '../../problems/problem.ts';
import type { ImportField } from '../mapping/fields.ts';
import type { SourceRow } from '../read/source.ts';

/**
 * `rejected`: the row is not in the inventory. `doubt`: it is, but a person should look (a doubtful value is left
 * out). `note`: it is, and what was done to read it is on record.
 */
export type Level = 'rejected' | 'doubt' | 'note';

/** Every finding that can be made on a row, with its level. The sentence of each is `problem.<code>`. */
export const levels = {
  'inventory-too-many-columns': 'rejected',
  'inventory-broken-feature': 'rejected',
  'inventory-not-a-point': 'rejected',
  'inventory-no-coordinates': 'rejected',
  'inventory-not-a-coordinate': 'rejected',
  'inventory-at-zero': 'rejected',
  'inventory-not-in-degrees': 'rejected',
  'inventory-latitude-range': 'rejected',
  'inventory-longitude-range': 'rejected',
  'inventory-row-outside-area': 'rejected',
  'inventory-swapped-axes': 'rejected',
  'inventory-not-a-hydrant': 'rejected',
  'inventory-deleted-asset': 'rejected',
  'inventory-duplicate-row': 'rejected',
  'inventory-duplicate-id-same-place': 'rejected',
  'inventory-duplicate-place': 'rejected',
  'inventory-breaks-schema': 'rejected',
  'inventory-too-few-columns': 'doubt',
  'inventory-swapped-axes-taken': 'doubt',
  'inventory-far-from-rest': 'doubt',
  'inventory-same-place': 'doubt',
  'inventory-duplicate-id': 'doubt',
  'inventory-duplicate-id-first': 'doubt',
  'inventory-duplicate-place-first': 'doubt',
  'inventory-placeholder-id': 'doubt',
  'inventory-odd-id': 'doubt',
  'inventory-id-not-usable': 'doubt',
  'inventory-says-out-of-service': 'doubt',
  'inventory-abandoned': 'doubt',
  'inventory-planned': 'doubt',
  'inventory-perhaps-blow-off': 'doubt',
  'inventory-not-for-fire': 'doubt',
  'inventory-perhaps-gone': 'doubt',
  'inventory-place-uncertain': 'doubt',
  'inventory-not-from-main': 'doubt',
  'inventory-unknown-word': 'doubt',
  'inventory-not-a-number': 'doubt',
  'inventory-unknown-unit': 'doubt',
  'inventory-unit-missing': 'doubt',
  'inventory-mixed-units': 'doubt',
  'inventory-mixed-units-taken': 'doubt',
  'inventory-unit-unlikely': 'doubt',
  'inventory-out-of-range': 'doubt',
  'inventory-not-a-count': 'doubt',
  'inventory-unreadable-outlets': 'doubt',
  'inventory-outlet-counts-differ': 'doubt',
  'inventory-not-a-date': 'doubt',
  'inventory-ambiguous-date': 'doubt',
  'inventory-impossible-date': 'doubt',
  'inventory-future-date': 'doubt',
  'inventory-placeholder-date': 'doubt',
  'inventory-text-too-long': 'doubt',
  'inventory-id-from-source': 'note',
  'inventory-id-from-place': 'note',
  'inventory-coordinates-as-text': 'note',
  'inventory-type-not-specific': 'note',
  'inventory-count-as-word': 'note',
  'inventory-outlet-size-without-count': 'note',
  'inventory-zero-as-blank': 'note',
  'inventory-unit-misspelled': 'note',
  'inventory-year-only': 'note',
  'inventory-two-digit-year': 'note',
} as const satisfies Record<string, Level>;
export type FindingCode = keyof typeof levels;

/** One thing found on one row. `path` is the field of the inventory; `column` and `value` are the file's own. */
export interface Finding extends Problem {
  readonly code: FindingCode;
  /** Count of the row from 0 in reading order. */
  readonly index: number;
  readonly row: number;
  readonly line: number;
  readonly element: string | null;
  readonly column: string | null;
  readonly value: string | null;
}

export type Params = Problem['params'];

/** A finding before it is known which row it is on: what a reader of single values answers. */
export interface Remark {
  readonly code: FindingCode;
  readonly params: Params;
}

/** Shared, because a file can have hundreds of thousands of findings without parameters. */
const noParams: Params = {};
export const remark = (code: FindingCode, params: Params = noParams): Remark => ({ code, params });

/** Notes of one kind on one column, counted instead of listed: they say how rows were read, not what is wrong. */
export interface NoteCount {
  readonly code: FindingCode;
  readonly field: ImportField | '';
  readonly column: string | null;
  rows: number;
  readonly examples: string[];
}

const examplesKept = 3;

/** Gathers the findings of all rows and the level that each row ends at. */
export class Findings {
  readonly list: Finding[] = [];
  readonly notes = new Map<string, NoteCount>();
  /** Level per row in reading order: 0 clean, 1 doubtful, 2 rejected. */
  readonly rowLevels: number[] = [];

  add(
    index: number,
    row: Pick<SourceRow, 'row' | 'line' | 'featureId'>,
    found: Remark,
    field: ImportField | '' = '',
    column: string | null = null,
    value: string | null = null,
  ): void {
    const level = levels[found.code];
    if (level === 'note') {
      const key = `${found.code} ${column ?? ''}`;
      const note = this.notes.get(key) ?? { code: found.code, field, column, rows: 0, examples: [] };
      note.rows += 1;
      if (value !== null && note.examples.length < examplesKept && !note.examples.includes(value))
        note.examples.push(value);
      this.notes.set(key, note);
      return;
    }
    this.rowLevels[index] = Math.max(this.rowLevels[index] ?? 0, level === 'rejected' ? 2 : 1);
    this.list.push({
      code: found.code,
      index,
      path: field,
      params: found.params,
      row: row.row,
      line: row.line,
      element: row.featureId,
      column,
      value,
    });
  }
}
