import type { PayerKind } from '../../submissions/forms/claimOpened.ts';
import { problem, type Problem } from '../../problems/problem.ts';
import type { MergedLetter } from '../merge.ts';
import type { laterLetterKinds } from '../../submissions/forms/claimLife/letterSent.ts';
import { wordsAsWritten, type Locale } from '../../words/index.ts';

export type LaterLetterKind = (typeof laterLetterKinds)[number];

/** The text that such a letter starts from, with its merge fields. */
export const laterTemplate = (locale: Locale, letter: LaterLetterKind): string =>
  wordsAsWritten(locale, `letter.later.${letter}.text`);

/** Letters that answer something: which is asked for before one is written. */
export const answering: readonly LaterLetterKind[] = ['reply-to-dispute', 'release-checklist'];
/** Who else a letter may be for than the claim's payer, and when that payer is the one after all. */
const forOthers: Partial<Record<LaterLetterKind, PayerKind | null>> = {
  'notice-own-insurer': 'own-policy',
  'restitution-statement': 'restitution',
  'release-checklist': null,
};

/**
 * Whether a letter goes to whom the claim asks. Another reader is not told the payer's adjuster, number or policy, and the
 * address is the clerk's to write.
 */
export const isToPayer = (letter: LaterLetterKind, payerKind: PayerKind): boolean =>
  !(letter in forOthers) || forOthers[letter] === payerKind;

/** A paper for the utility's own file; nobody is asked to pay by it. */
export const forTheFile: readonly LaterLetterKind[] = ['release-checklist'];

/** Letters that ask for what is still owed; a demand and a supplement ask for the whole, the others for no sum. */
const asksBalance: readonly LaterLetterKind[] = [
  'follow-up',
  'reply-to-dispute',
  'final-notice',
  'payment-plan-offer',
  'restitution-statement',
];
const asksAll: readonly LaterLetterKind[] = ['demand', 'supplement'];

/** What a letter asks for, whole cents; null where it asks for no sum. */
export const sumAsked = (
  letter: LaterLetterKind,
  { balanceCents, askedCents }: { readonly balanceCents: number; readonly askedCents: number },
): number | null =>
  asksBalance.includes(letter) ? balanceCents : asksAll.includes(letter) ? askedCents : null;

/** What stands in the way of sending a letter: a text that names what is not there, and a day that has not come. */
export const sendingProblems = (merged: MergedLetter, on: string, today: string): readonly Problem[] => [
  ...(on > today ? [problem('letter-of-the-future', 'on', { on })] : []),
  ...merged.problems,
];

/** Whom it goes to, a line each, as far as it is known. */
export const addressee = (...lines: readonly (string | null)[]): string =>
  [...new Set(lines)].filter((line) => line !== null && line !== '').join('\n');
