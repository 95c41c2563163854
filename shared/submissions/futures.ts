import { problem, type Problem } from '../problems/problem.ts';
import { localDate } from '../costs/days.ts';
import { dayOfEvent } from './dayOfEvent.ts';
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

const isDay = (value: unknown): value is string =>
  typeof value === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(value);

/** What stands at a path of names, in which `*` is every row of a list. */
function at(
  value: unknown,
  [name, ...rest]: readonly string[],
  path = '',
): { path: string; value: unknown }[] {
  if (name === undefined) return [{ path, value }];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value)
    .filter(([key]) => name === '*' || key === name)
    .flatMap(([key, inner]) => at(inner, rest, path === '' ? key : `${path}.${key}`));
}

function walk(value: unknown, path: string, found: (at: string, path: string) => void): void {
  if (isInstant(value)) found(value, path);
  else if (Array.isArray(value)) value.forEach((item, index) => walk(item, `${path}.${index}`, found));
  else if (typeof value === 'object' && value !== null)
    for (const [key, inner] of Object.entries(value))
      walk(inner, path === '' ? key : `${path}.${key}`, found);
}

/** Days of what has happened, by kind, as paths in which `*` is any row. Other days may lie ahead: they are due, planned, agreed. */
const pastDays: Readonly<Record<string, string>> = {
  ...dayOfEvent,
  // Records may be held from a day to come.
  'legal-hold': '',
  repair: 'contractors.*.invoicedOn',
};

/**
 * Times and days of a body that lie after `now` (UTC instant) by more than a clock is off: slips of the pen. Days are
 * those of `timeZone`, the utility's. Paths are in the body.
 */
export function futureTimes(kind: string, body: unknown, now: string, timeZone: string): Problem[] {
  const latest = Date.parse(now) + CLOCK_TOLERANCE_MS;
  const allowed = ofTheFuture[kind] ?? [];
  const problems: Problem[] = [];
  walk(body, '', (at, path) => {
    if (Date.parse(at) > latest && !allowed.includes(path))
      problems.push(problem('still-to-come', path, { at }));
  });
  const lastDay = localDate(new Date(latest).toISOString(), timeZone);
  const past = pastDays[kind];
  if (past)
    for (const { path, value } of at(body, past.split('.')))
      if (isDay(value) && value > lastDay) problems.push(problem('still-to-come', path, { at: value }));
  return problems;
}

/**
 * Times that the sender's own clock had not reached when it sent: a date mistyped into the future. A device whose
 * clock is wrong is consistent with itself and passes; what its times are believed for is decided where they are read.
 */
export function futureProblems(submission: Submission, timeZone: string): Problem[] {
  const { sentAt, occurredAt } = submission;
  const happened = futureTimes('', { occurredAt }, sentAt, timeZone);
  if (submission.kind === correctionKind) {
    const { replacement, targetKind } = submission.body;
    return [
      ...happened,
      ...futureTimes(targetKind, replacement, sentAt, timeZone).map((found) => ({
        ...found,
        path: `body.replacement.${found.path}`,
      })),
    ];
  }
  return [
    ...happened,
    ...futureTimes(submission.kind, submission.body, sentAt, timeZone).map((found) => ({
      ...found,
      path: `body.${found.path}`,
    })),
  ];
}
