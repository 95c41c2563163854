import { problem, type Problem } from '../problems/problem.ts';
import { CLOCK_TOLERANCE_MS } from './known.ts';
import { correctionKind } from './kinds.ts';
import type { Submission } from './submission.ts';

/** Fields that speak of what is still to come, by name: what is expected and what is planned. */
export const ofTheFuture: Readonly<Record<string, readonly string[]>> = {
  'expected-return': ['expectedAt'],
  'planned-work': ['from', 'to'],
};

const isInstant = (value: unknown): value is string =>
  typeof value === 'string' && /^\d{4}-\d{2}-\d{2}T/.test(value) && !Number.isNaN(Date.parse(value));

function walk(value: unknown, path: string, found: (at: string, path: string) => void): void {
  if (isInstant(value)) found(value, path);
  else if (Array.isArray(value)) value.forEach((item, index) => walk(item, `${path}.${index}`, found));
  else if (typeof value === 'object' && value !== null)
    for (const [key, inner] of Object.entries(value))
      walk(inner, path === '' ? key : `${path}.${key}`, found);
}

/** Times of a body that lie after `now` (UTC instant) by more than a clock is off: slips of the pen. Paths are in the body. */
export function futureTimes(kind: string, body: unknown, now: string): Problem[] {
  const latest = Date.parse(now) + CLOCK_TOLERANCE_MS;
  const allowed = ofTheFuture[kind] ?? [];
  const problems: Problem[] = [];
  walk(body, '', (at, path) => {
    if (Date.parse(at) > latest && !allowed.includes(path))
      problems.push(problem('still-to-come', path, { at }));
  });
  return problems;
}

/**
 * Times that the sender's own clock had not reached when it sent: a date mistyped into the future. A device whose
 * clock is wrong is consistent with itself and passes; what its times are believed for is decided where they are read.
 */
export function futureProblems(submission: Submission): Problem[] {
  const { sentAt, occurredAt } = submission;
  const happened = futureTimes('', { occurredAt }, sentAt);
  if (submission.kind === correctionKind) {
    const { replacement, targetKind } = submission.body;
    return [
      ...happened,
      ...futureTimes(targetKind, replacement, sentAt).map((found) => ({
        ...found,
        path: `body.replacement.${found.path}`,
      })),
    ];
  }
  return [
    ...happened,
    ...futureTimes(submission.kind, submission.body, sentAt).map((found) => ({
      ...found,
      path: `body.${found.path}`,
    })),
  ];
}
