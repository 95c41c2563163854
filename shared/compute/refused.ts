import type { Problem } from '../problems/problem.ts';

/** A question that its schema let through and that cannot be answered all the same. */
export class Refused extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(problems.map(({ path, code }) => `${path}: ${code}`).join('; '));
    this.name = 'Refused';
    this.problems = problems;
  }
}
