import type { Problem } from '../problems/problem.ts';

/** `rejected`: the feature is not in the layer. `doubt`: it is, but a person should look. */
export type Level = 'rejected' | 'doubt';

/** Every finding that can be made on a feature, with its level. The sentence of each is `problem.<code>`. */
export const levels = {
  'layers-broken-feature': 'rejected',
  'layers-no-geometry': 'rejected',
  'layers-wrong-geometry': 'rejected',
  'layers-no-positions': 'rejected',
  'layers-not-a-position': 'rejected',
  'layers-not-in-degrees': 'rejected',
  'layers-at-zero': 'rejected',
  'layers-outside-area': 'rejected',
  'layers-too-few-positions': 'rejected',
  'layers-no-length': 'rejected',
  'layers-date-line': 'rejected',
  'layers-not-a-street': 'rejected',
  'layers-not-built': 'rejected',
  'layers-motorway': 'rejected',
  'layers-ring-open': 'rejected',
  'layers-ring-crosses': 'rejected',
  'layers-no-name': 'rejected',
  'layers-name-too-long': 'rejected',
  'layers-name-not-usable': 'rejected',
  'layers-same-address': 'rejected',
  'layers-long-step': 'doubt',
  'layers-same-name': 'doubt',
  'layers-end-near-street': 'doubt',
  'layers-crosses-unjoined': 'doubt',
} as const satisfies Readonly<Record<string, Level>>;
export type FindingCode = keyof typeof levels;

/** A feature as a person finds it in the file. */
export interface FeatureRef {
  /** Its number in the list, from 1. */
  readonly row: number;
  /** The line it begins on, from 1. */
  readonly line: number;
  /** The id that the file gives it; null when it gives none. */
  readonly featureId: string | null;
}

/** Something said of one feature; `path` names the field within it, e.g. `geometry.coordinates.3`. */
export interface Finding extends FeatureRef, Problem {
  readonly code: FindingCode;
}

/** What is said of the features of one file, one by one. */
export class Findings {
  readonly all: Finding[] = [];
  readonly #rejected = new Set<number>();
  readonly #doubtful = new Set<number>();

  add(
    { row, line, featureId }: FeatureRef,
    code: FindingCode,
    path: string,
    params: Problem['params'] = {},
  ): void {
    this.all.push({ code, path, params, row, line, featureId });
    (levels[code] === 'rejected' ? this.#rejected : this.#doubtful).add(row);
  }

  get rejected(): number {
    return this.#rejected.size;
  }

  /** Features that are in the layer and doubtful. */
  get doubtful(): number {
    return [...this.#doubtful].filter((row) => !this.#rejected.has(row)).length;
  }
}
