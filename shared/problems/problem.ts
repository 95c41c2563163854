/**
 * A problem is what a person has to put right: where it is, what it is, and the numbers that belong in the
 * sentence. Words come from the catalogue (`problem.<code>`), so one problem reads in every language and a
 * check never holds a sentence.
 */
export interface Problem {
  /** A key of the catalogue without its `problem.` prefix, e.g. `residual-above-static`. */
  readonly code: string;
  /** Dotted path of the field from the top of what was sent, e.g. `body.found.jetHeightIn`; '' for the whole. */
  readonly path: string;
  readonly params: Readonly<Record<string, string | number>>;
}

export function problem(code: string, path = '', params: Problem['params'] = {}): Problem {
  return { code, path, params };
}
