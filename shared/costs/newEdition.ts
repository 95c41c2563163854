import { problem, type Problem } from '../problems/problem.ts';
import { canonicalJson } from '../submissions/canonical.ts';
import { effectiveFacts, ofKind } from '../submissions/effective.ts';
import { correctionKind } from '../submissions/kinds.ts';
import type { Recorded } from '../submissions/recorded.ts';
import type { Submission } from '../submissions/submission.ts';
import type { RateBookEdition } from './rateBook.ts';

/**
 * Whether a submission would change an edition that is on record: an edition id that any recorded edition has, also a
 * withdrawn one, and a correction that replaces an edition. Bills were made by it; what is wrong in it is withdrawn
 * with a reason and recorded anew under another id. `recorded`: the utility's stream. The same content again is no
 * change: ask `sameEdition` first.
 */
export function pastEditionProblems(submission: Submission, recorded: readonly Recorded[]): Problem[] {
  if (submission.kind === correctionKind)
    return submission.body.targetKind === 'rate-book' && submission.body.replacement !== null
      ? [problem('edition-not-edited', 'body.replacement')]
      : [];
  const named = sameName(submission, recorded);
  if (!named) return [];
  const { editionId } = named.fact.body;
  return named.withdrawn
    ? [problem('edition-withdrawn', 'body.editionId', { editionId })]
    : [problem('edition-taken', 'body.editionId', { editionId })];
}

/**
 * The record that already says what this submission says: an edition that stands, of the same id, with the same
 * content in every field. A device that lost its outbox, or a second manager, sends one edition twice; the second is
 * told of the first and nothing is recorded. Null for anything else.
 */
export function sameEdition(
  submission: Submission,
  recorded: readonly Recorded[],
): { readonly submissionId: string; readonly recordedAt: string } | null {
  const named = sameName(submission, recorded);
  if (!named || named.withdrawn || canonicalJson(named.fact.body) !== canonicalJson(submission.body))
    return null;
  return { submissionId: named.fact.submissionId, recordedAt: named.recordedAt };
}

/** Another submission's edition of the same id, the one that stands before one that was withdrawn. */
function sameName(submission: Submission, recorded: readonly Recorded[]) {
  if (submission.kind !== 'rate-book') return null;
  const { facts, withdrawn } = effectiveFacts(recorded);
  const found = ofKind([...facts, ...withdrawn], 'rate-book').find(
    ({ fact }) =>
      fact.submissionId !== submission.submissionId && fact.body.editionId === submission.body.editionId,
  );
  return found ? { ...found, withdrawn: withdrawn.some(({ fact }) => fact === found.fact) } : null;
}

const dayAfter = (date: string): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);

/**
 * What a reader should know of the days of a new edition beside those on record, dates as `YYYY-MM-DD`. Only
 * `edition-same-start` is an error: a day covered by two editions of one start finds no rate. The others are told and
 * left to the manager.
 */
export function editionDayDoubts(
  edition: Pick<RateBookEdition, 'editionId' | 'effectiveFrom' | 'effectiveTo'>,
  known: readonly Pick<RateBookEdition, 'editionId' | 'effectiveFrom' | 'effectiveTo'>[],
  today: string,
): Problem[] {
  const others = known.filter(({ editionId }) => editionId !== edition.editionId);
  const { effectiveFrom, effectiveTo } = edition;
  const found: Problem[] = [];
  const same = others.find((other) => other.effectiveFrom === effectiveFrom);
  if (same)
    found.push(
      problem('edition-same-start', 'effectiveFrom', { editionId: same.editionId, date: effectiveFrom }),
    );
  if (effectiveFrom < today)
    found.push(problem('edition-starts-in-past', 'effectiveFrom', { date: effectiveFrom }));
  const covers = (date: string): boolean =>
    others.some(
      (other) => other.effectiveFrom <= date && (other.effectiveTo === null || date <= other.effectiveTo),
    );
  const before = others
    .filter((other) => other.effectiveFrom < effectiveFrom && other.effectiveTo !== null)
    .map((other) => other.effectiveTo ?? '')
    .sort()
    .at(-1);
  if (before !== undefined && dayAfter(before) < effectiveFrom && !covers(dayAfter(before)))
    found.push(problem('edition-gap-before', 'effectiveFrom', { from: dayAfter(before), to: effectiveFrom }));
  const later = others
    .filter((other) => other.effectiveFrom > effectiveFrom)
    .sort((a, b) => (a.effectiveFrom < b.effectiveFrom ? -1 : 1))[0];
  if (later && (effectiveTo === null || effectiveTo >= later.effectiveFrom))
    found.push(
      problem('edition-later-counts', 'effectiveTo', {
        editionId: later.editionId,
        date: later.effectiveFrom,
      }),
    );
  return found;
}
