import { isBlank } from '../values/blank.ts';
import { readNumber } from '../values/quantity.ts';
import type { Passed, SourceRow } from '../read/source.ts';

/** Different values of a column that are remembered with their counts. Beyond it the column is one of names or numbers. */
const remembered = 2000;

/** What a column holds, seen over the whole file. */
export interface ColumnProfile {
  readonly name: string;
  /** Rows where it says something (`N/A` and its like say nothing). */
  filled: number;
  /** The first values met, each with its count; complete while `overflowed` is false. */
  readonly values: Map<string, number>;
  overflowed: boolean;
  /** Rows counted by `values`: all of `filled` until it overflowed. */
  counted: number;
}

/** Coordinates of a format that has points, as far as they are numbers. */
export interface PointProfile {
  readonly xs: number[];
  readonly ys: number[];
  asText: number;
}

export interface Profile {
  readonly rows: number;
  readonly columns: readonly ColumnProfile[];
  readonly points: PointProfile | null;
  readonly statedCrs: string | null;
  readonly passed: Passed;
  /** True when the rows carry an id of their own (feature ids, OSM elements). */
  readonly featureIds: number;
}

/** Builds the profile from the rows as they come. */
export class Profiler {
  readonly #columns: ColumnProfile[] = [];
  #points: PointProfile | null = null;
  #rows = 0;
  #featureIds = 0;

  add(row: SourceRow, names: readonly string[]): void {
    this.#rows += 1;
    if (row.featureId !== null) this.#featureIds += 1;
    if (row.point) this.#addPoint(row.point);
    // A torn record's values stand under the wrong names.
    if (row.fault && !row.point && row.featureId === null) return;
    for (let place = 0; place < row.values.length; place += 1) {
      const text = row.values[place];
      if (text !== undefined && text !== '') this.#addValue(place, names[place] ?? '', text);
    }
  }

  finish(names: readonly string[], statedCrs: string | null, passed: Passed): Profile {
    const columns = names.map((name, place) => this.#columns[place] ?? emptyColumn(name));
    return {
      rows: this.#rows,
      columns,
      points: this.#points,
      statedCrs,
      passed,
      featureIds: this.#featureIds,
    };
  }

  #addPoint({ x, y, asText }: NonNullable<SourceRow['point']>): void {
    const points = (this.#points ??= { xs: [], ys: [], asText: 0 });
    if (asText) points.asText += 1;
    if (points.xs.length >= remembered) return;
    const [east, north] = [readNumber(x), readNumber(y)];
    if (east === null || north === null) return;
    points.xs.push(east);
    points.ys.push(north);
  }

  #addValue(place: number, name: string, text: string): void {
    const column = (this.#columns[place] ??= emptyColumn(name));
    const count = column.values.get(text);
    if (count !== undefined) {
      column.values.set(text, count + 1);
      column.filled += 1;
      if (!column.overflowed) column.counted += 1;
      return;
    }
    if (isBlank(text)) return;
    column.filled += 1;
    if (column.values.size >= remembered) {
      column.overflowed = true;
      return;
    }
    column.values.set(text, 1);
    column.counted += 1;
  }
}

const emptyColumn = (name: string): ColumnProfile => ({
  name,
  filled: 0,
  values: new Map(),
  overflowed: false,
  counted: 0,
});

/** Share of the filled rows whose value passes `test`, over the remembered values. 0 for an empty column. */
export function shareOf(column: ColumnProfile, test: (text: string) => boolean): number {
  let all = 0;
  let passing = 0;
  for (const [text, count] of column.values) {
    all += count;
    if (test(text)) passing += count;
  }
  return all === 0 ? 0 : passing / all;
}

/** Different values per filled row: 1 for a column of ids, near 0 for one of kinds. */
export const distinctShare = (column: ColumnProfile): number =>
  column.counted === 0 ? 0 : column.values.size / column.counted;

/** The most frequent values, most frequent first. */
export const commonValues = (column: ColumnProfile, howMany: number): [text: string, count: number][] =>
  [...column.values].sort(([, one], [, other]) => other - one).slice(0, howMany);

export function median(numbers: readonly number[]): number {
  const sorted = Float64Array.from(numbers).sort();
  const middle = sorted.length >> 1;
  if (sorted.length === 0) return NaN;
  return sorted.length % 2 === 1
    ? (sorted[middle] ?? NaN)
    : ((sorted[middle - 1] ?? NaN) + (sorted[middle] ?? NaN)) / 2;
}
