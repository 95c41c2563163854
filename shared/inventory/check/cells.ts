import type { ImportField } from '../mapping/fields.ts';
import { isRecordKey, isStableKey } from '../mapping/names.ts';
import type { ColumnUse, Proposal } from '../mapping/propose.ts';
import type { SourceRow } from '../read/source.ts';

/** A text with the column it stands in. */
export interface Cell {
  readonly column: string;
  readonly text: string;
}

/** Finds the cells of a row by column and by field. Columns appear as a file goes on, so their places are learnt on the way. */
export class Cells {
  /** Columns that number the record; see `isRecordKey`. */
  readonly recordKeys = new Set<number>();
  /** Columns of the form `disused:emergency`. */
  readonly lifecycle: string[] = [];
  readonly #uses: ReadonlyMap<ImportField, ColumnUse>;
  readonly #places = new Map<string, number>();
  #stableKey: string | null = null;

  constructor(proposal: Proposal) {
    this.#uses = new Map(proposal.uses.map((use) => [use.field, use]));
  }

  learn(names: readonly string[]): void {
    for (let place = this.#places.size; place < names.length; place += 1) {
      const name = names[place] ?? '';
      this.#places.set(name, place);
      if (isRecordKey(name)) this.recordKeys.add(place);
      if (isStableKey(name) && this.use('hydrantId')?.columns[0]?.name !== name) this.#stableKey ??= name;
      if (name.endsWith(':emergency')) this.lifecycle.push(name);
    }
  }

  use(field: ImportField): ColumnUse | undefined {
    return this.#uses.get(field);
  }

  /** The names of a field's columns; none where the field is not mapped. */
  columnsOf(field: ImportField): string[] {
    return this.use(field)?.columns.map(({ name }) => name) ?? [];
  }

  /** The place of a field's (first) column in a row, or -1. */
  placeOf(field: ImportField): number {
    return this.#places.get(this.use(field)?.columns[0]?.name ?? '') ?? -1;
  }

  cell(row: SourceRow, column: string): Cell {
    return { column, text: row.values[this.#places.get(column) ?? -1] ?? '' };
  }

  of(row: SourceRow, field: ImportField): Cell[] {
    return (this.use(field)?.columns ?? []).map(({ name }) => this.cell(row, name));
  }

  /** The record's own id in a column such as GLOBALID, '' where there is none. */
  stableKeyOf(row: SourceRow): string {
    return this.#stableKey === null ? '' : this.cell(row, this.#stableKey).text;
  }
}
