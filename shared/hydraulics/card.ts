import { problem, type Problem } from '../problems/problem.ts';
import type { UnitId } from '../units/units.ts';

/**
 * How far a source was followed: `seen` in a retrieved text of it, `second-hand` in a text that quotes it, `memory`
 * recalled by the writer, `computed` from stated inputs with no publisher, `practice` common practice with no source.
 */
export type Marker = 'seen' | 'second-hand' | 'memory' | 'computed' | 'practice';

export interface Source {
  /** Title, edition and number of the clause, equation or table. */
  readonly text: string;
  readonly marker: Marker;
}

/** The range in which an argument makes sense. `exclusive` ends are not themselves allowed. */
export interface Range {
  readonly unit: UnitId | '1';
  readonly minimum: number;
  readonly maximum: number;
  readonly exclusiveMinimum?: true;
}

/**
 * A formula as an engineer files it: the equation, who printed it, the unit and range of every argument, and a worked
 * example that is also a test. The code that computes stands beside its card in the same file.
 */
export interface FormulaCard<Argument extends string = string> {
  readonly id: string;
  readonly equation: string;
  readonly sources: readonly Source[];
  readonly arguments: Readonly<Record<Argument, Range>>;
  readonly result: UnitId | '1';
  readonly example: {
    readonly given: Readonly<Record<Argument, number>>;
    readonly expected: number;
    /** Largest difference that the printed figure allows, in the unit of the result. */
    readonly tolerance: number;
    readonly source: Source;
  };
  /** What a reader has to know before relying on it. */
  readonly notes?: readonly string[];
  /** A method, so that cards of different arguments can stand in one list. */
  compute(given: Readonly<Record<Argument, number>>): number;
}

/** A refusal: the arguments are outside what the formula can answer. It carries every problem, not only the first. */
export class OutOfRange extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(problems.map(({ path, code }) => `${path}: ${code}`).join('; '));
    this.name = 'OutOfRange';
    this.problems = problems;
  }
}

/** Every argument that is missing, not a finite number, or outside its range. Codes are those of the zod checks. */
export function rangeProblems<Argument extends string>(
  ranges: Readonly<Record<Argument, Range>>,
  given: Readonly<Record<Argument, number>>,
): Problem[] {
  // A plain loop: this runs for every argument of every formula, and mostly finds nothing.
  const found: Problem[] = [];
  for (const name in ranges) {
    const wrong = outside(name, ranges[name], given[name]);
    if (wrong) found.push(wrong);
  }
  return found;
}

function outside(name: string, range: Range, value: number): Problem | null {
  if (!Number.isFinite(value)) return problem('wrong-type', name, { expected: 'number' });
  if (range.exclusiveMinimum && value <= range.minimum)
    return problem('not-above', name, { minimum: range.minimum });
  if (value < range.minimum) return problem('below-minimum', name, { minimum: range.minimum });
  if (value > range.maximum) return problem('above-maximum', name, { maximum: range.maximum });
  return null;
}

/** @throws OutOfRange with every problem, when there is one. */
export function refuse(problems: readonly Problem[]): void {
  if (problems.length > 0) throw new OutOfRange(problems);
}
