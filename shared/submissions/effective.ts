import { problem, type Problem } from '../problems/problem.ts';
import { streamOf } from './envelope.ts';
import type { FactKind } from './kinds.ts';
import { correctionKind } from './kinds.ts';
import { knownBy, notYet } from './known.ts';
import type { Recorded } from './recorded.ts';
import type { Correction, Envelope, Fact } from './submission.ts';

/** A fact as it stands after its corrections. `fact.submissionId` stays that of the first submission. */
export interface Effective<K extends FactKind = FactKind> {
  readonly fact: Fact<K>;
  readonly recordedAt: string;
  readonly deliveredBy: string | null;
  /** The corrections that led here, first to last. Empty for most facts. */
  readonly corrections: readonly Recorded<Correction>[];
  /** The fact as it stood before each of these corrections, in the same order: what was once recorded stays known. */
  readonly earlier?: readonly Fact<K>[];
  readonly erased: boolean;
}

export interface EffectiveFacts {
  readonly facts: readonly Effective[];
  /** Facts that a correction withdrew: shown in the history, counted nowhere. */
  readonly withdrawn: readonly Effective[];
  readonly problems: readonly Problem[];
}

const isCorrection = (recorded: Recorded): recorded is Recorded<Correction> =>
  recorded.submission.kind === correctionKind;

/** When a fact happened, milliseconds; by a device whose clock runs far ahead, no later than when it was recorded. */
const happened = (item: Effective): number =>
  notYet(item.fact.occurredAt, item) ? knownBy(item) : Date.parse(item.fact.occurredAt);

/**
 * Order for reading: by the person's time, then by id, so that a fold never depends on the order of arrival. As
 * instants and not as text: `02:10:00.5Z` is after `02:10:00Z`.
 */
export function byTime(a: Effective, b: Effective): number {
  const apart = happened(a) - happened(b);
  if (apart !== 0) return apart;
  const left = `${a.fact.submissionId} ${streamOf(a.fact.subject)}`;
  const right = `${b.fact.submissionId} ${streamOf(b.fact.subject)}`;
  return left < right ? -1 : left > right ? 1 : 0;
}

/** A correction stands in its target's stream; one in another stream, where the ledger cannot hold it to be the only one, corrects nothing. */
const targetOf = ({ subject }: Envelope, targetId: string): string => `${streamOf(subject)} ${targetId}`;

/**
 * Applies corrections. Chains run in a line; a correction that has arrived before its target waits (reported as
 * `correction-awaits-target`); one whose kind is not its target's changes nothing and is reported, and may itself be
 * corrected, because it holds its target's only place for a correction.
 */
export function effectiveFacts(recorded: readonly Recorded[]): EffectiveFacts {
  const corrections = new Map<string, Recorded<Correction>>();
  for (const item of recorded)
    if (isCorrection(item)) corrections.set(targetOf(item.submission, item.submission.body.targetId), item);

  const facts: Effective[] = [];
  const withdrawn: Effective[] = [];
  const problems: Problem[] = [];
  const used = new Set<Recorded<Correction>>();

  for (const item of recorded) {
    if (isCorrection(item)) continue;
    let fact = item.submission as Fact;
    let standing = true;
    let erased = item.erased;
    const chain: Recorded<Correction>[] = [];
    const earlier: Fact[] = [];
    let next = corrections.get(targetOf(fact, fact.submissionId));
    while (next && !used.has(next)) {
      used.add(next);
      const { targetKind, replacement } = next.submission.body;
      if (targetKind !== fact.kind) {
        problems.push(
          problem('correction-of-other-kind', next.submission.submissionId, { targetKind, kind: fact.kind }),
        );
      } else {
        chain.push(next);
        earlier.push(fact);
        erased ||= next.erased;
        standing = replacement !== null;
        // The time a thing happened is part of what a correction may put right.
        if (replacement !== null)
          fact = { ...fact, body: replacement, occurredAt: next.submission.occurredAt } as unknown as Fact;
      }
      next = corrections.get(targetOf(fact, next.submission.submissionId));
    }
    const effective: Effective = {
      fact,
      recordedAt: item.recordedAt,
      deliveredBy: item.deliveredBy,
      corrections: chain,
      earlier,
      erased,
    };
    (standing ? facts : withdrawn).push(effective);
  }

  for (const correction of corrections.values())
    if (!used.has(correction))
      problems.push(
        problem('correction-awaits-target', correction.submission.submissionId, {
          targetId: correction.submission.body.targetId,
        }),
      );
  return { facts: facts.sort(byTime), withdrawn: withdrawn.sort(byTime), problems };
}

/** The facts of one kind, typed, in time order. */
export function ofKind<K extends FactKind>(facts: readonly Effective[], kind: K): Effective<K>[] {
  return facts.filter((item) => item.fact.kind === kind) as unknown as Effective<K>[];
}
