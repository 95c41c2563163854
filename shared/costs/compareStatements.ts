import type { StatementLine } from './line.ts';
import type { Statement } from './statement.ts';

/** One line of two statements of the same work; null where one of them has no such line. */
export interface LinePair {
  readonly before: StatementLine | null;
  readonly after: StatementLine | null;
  /** What the line adds to the difference. Whole cents; a line without an amount counts as none. */
  readonly differenceCents: number;
}

/** What a line is about, whatever its rate: lines of one statement that share it are paired in their order. */
const subjectOf = ({ section, kind, item, time }: StatementLine): string =>
  [section, kind, item, time?.as ?? ''].join('\u0000');

/**
 * Two statements of the same work side by side, line by line, in the order in which they read. The differences add up
 * to the difference of the totals.
 */
export function compareStatements(
  before: Pick<Statement, 'lines'>,
  after: Pick<Statement, 'lines'>,
): LinePair[] {
  const waiting = new Map<string, StatementLine[]>();
  for (const line of after.lines) {
    const subject = subjectOf(line);
    waiting.set(subject, [...(waiting.get(subject) ?? []), line]);
  }
  const pair = (old: StatementLine | null, next: StatementLine | null): LinePair => ({
    before: old,
    after: next,
    differenceCents: (next?.amountCents ?? 0) - (old?.amountCents ?? 0),
  });
  const pairs = before.lines.map((line) => pair(line, waiting.get(subjectOf(line))?.shift() ?? null));
  const added = new Set([...waiting.values()].flat());
  return [...pairs, ...after.lines.filter((line) => added.has(line)).map((line) => pair(null, line))];
}
