import type { Problem } from '../problems/problem.ts';

/** The file as a whole cannot be taken; nothing was written. Each problem says what would be right. */
export class ImportRefused extends Error {
  override readonly name = 'ImportRefused';
  readonly problems: readonly Problem[];

  constructor(...problems: readonly Problem[]) {
    super(problems.map(({ code }) => code).join(', '));
    this.problems = problems;
  }
}
