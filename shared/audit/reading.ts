import type { StatementLine } from '../costs/line.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import type { FactKind } from '../submissions/kinds.ts';
import type { BodyOf } from '../submissions/submission.ts';
import type { AuditCase } from './case.ts';

/** Questions that more than one rule asks of a case. */

export const DAY_MS = 86_400_000;
export const HOUR_MS = 3_600_000;

export const at = (instant: string): number => Date.parse(instant);

export const bodies = <Kind extends FactKind>(
  facts: readonly Effective[],
  kind: Kind,
): readonly BodyOf<Kind>[] =>
  // The fold picks facts of one kind, and a fact's body is that kind's.
  ofKind(facts, kind).map(({ fact }) => fact.body as BodyOf<Kind>);

export const sumCents = (lines: readonly StatementLine[]): number =>
  lines.reduce((sum, { amountCents }) => sum + (amountCents ?? 0), 0);

/** The lines of a part. */
export const linesOfPart = ({ statement }: AuditCase, partNumber: string): StatementLine[] =>
  statement.lines.filter(({ section, item }) => section === 'materials' && item === partNumber);

export const ofSection = ({ statement }: AuditCase, section: string): StatementLine[] =>
  statement.lines.filter((line) => line.section === section);

export interface Span {
  readonly fromMs: number;
  readonly toMs: number;
}

interface WorkSpan extends Span {
  readonly workerId: string;
  /** The repair that says so. */
  readonly submissionId: string;
}

/** When anybody worked on the strike, by the repairs. */
export function workSpans({ facts }: AuditCase): WorkSpan[] {
  return ofKind(facts, 'repair').flatMap(({ fact: { submissionId, body } }) =>
    body.crew.flatMap(({ workerId, work }) =>
      work.map(({ from, to }) => ({ workerId, submissionId, fromMs: at(from), toMs: at(to) })),
    ),
  );
}

/** The repairs of which anything is so. */
export const repairsThat = (
  { facts }: Pick<AuditCase, 'facts'>,
  holds: (body: BodyOf<'repair'>) => boolean,
): string[] =>
  ofKind(facts, 'repair')
    .filter(({ fact: { body } }) => holds(body))
    .map(({ fact: { submissionId } }) => submissionId);

export const firstWorkMs = (audited: AuditCase): number | null => {
  const starts = workSpans(audited).map(({ fromMs }) => fromMs);
  return starts.length === 0 ? null : Math.min(...starts);
};

/** How long stretches last together, moments that several share counted once. */
export function unionMs(spans: readonly Span[]): number {
  let total = 0;
  let until = -Infinity;
  for (const { fromMs, toMs } of [...spans].sort((a, b) => a.fromMs - b.fromMs)) {
    if (toMs <= until) continue;
    total += toMs - Math.max(fromMs, until);
    until = toMs;
  }
  return total;
}

export const overlapMs = (a: Span, b: Span): number =>
  Math.max(0, Math.min(a.toMs, b.toMs) - Math.max(a.fromMs, b.fromMs));

/** Whole years between two days, `YYYY-MM-DD`, or from an instant's first ten characters. */
export function yearsBetween(from: string, to: string): number {
  const [fromYear = 0, toYear = 0] = [from, to].map((date) => Number(date.slice(0, 4)));
  return toYear - fromYear - (to.slice(5, 10) < from.slice(5, 10) ? 1 : 0);
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const upper = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? upper) + upper) / 2;
}

/** Hours for a sentence: to the hundredth where a quarter would round a difference away, else to the quarter. */
export function quarterHours(ms: number): number {
  const hours = ms / HOUR_MS;
  const quarter = Math.round(hours * 4) / 4;
  return quarter > 0 && Math.abs(quarter - hours) < 0.005
    ? quarter
    : Math.max(0.01, Math.round(hours * 100) / 100);
}
