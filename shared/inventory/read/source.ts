import type { Problem } from '../../problems/problem.ts';

/** One record of a file, as text, before anyone decides what its columns mean. */
export interface SourceRow {
  /** What a person looks for in the file: its line (CSV, OSM XML) or the feature's number from 1 (GeoJSON). */
  readonly row: number;
  /** The line it begins on, from 1. */
  readonly line: number;
  /** The id the source itself gives the record (a feature id, an OSM element): stable from one export to the next. */
  readonly featureId: string | null;
  /** Its point where the format has one; null for CSV, where the coordinates are columns. */
  readonly point: { readonly x: string; readonly y: string; readonly asText: boolean } | null;
  /** Text of each column, in the order of the reader's `columns`; '' or beyond the end where there is none. */
  readonly values: readonly (string | undefined)[];
  /** Why this record cannot be used at all; it is still counted. */
  readonly fault: Problem | null;
  /** Why this record is usable but odd as a record (a torn line). */
  readonly doubt: Problem | null;
}

/** Things a reader passed over that are not records, so that the report can say so. */
export interface Passed {
  blankLines: number;
  /** Elements of an OSM file that carry no tags (corners of lines) or belong to no point. */
  otherElements: number;
}

/**
 * A reader is fed text as it comes and answers the rows that are complete. It holds no more than the row it is in,
 * so a file of any size passes through.
 */
export interface RowReader {
  /** Columns seen so far. Grows as features with other properties come by. */
  readonly columns: readonly string[];
  push(text: string): SourceRow[];
  end(): SourceRow[];
  readonly passed: Passed;
  /** The CRS the file itself states, where its format can. */
  readonly statedCrs: string | null;
}

/** Names of columns, each given its place as it is first seen. */
export class Columns {
  readonly names: string[] = [];
  readonly #places = new Map<string, number>();

  placeOf(name: string): number {
    let place = this.#places.get(name);
    if (place === undefined) {
      place = this.names.length;
      this.names.push(name);
      this.#places.set(name, place);
    }
    return place;
  }
}

/** No record of a hydrant is this long; more means a bracket or a quote that never closes. */
export const longestRecordChars = 1_000_000;
