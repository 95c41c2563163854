import type { laterLetterKinds } from '../../submissions/forms/claimLife/letterSent.ts';
import { wordsAsWritten, type Locale } from '../../words/index.ts';

export type LaterLetterKind = (typeof laterLetterKinds)[number];

/** The text that such a letter starts from, with its merge fields. */
export const laterTemplate = (locale: Locale, letter: LaterLetterKind): string =>
  wordsAsWritten(
    locale,
    letter === 'restitution-statement' ? 'letter.restitution-statement.text' : `letter.later.${letter}.text`,
  );

/** Letters that answer something: which is asked for before one is written. */
export const answering: readonly LaterLetterKind[] = ['reply-to-dispute', 'release-checklist'];
/** A paper for the utility's own file; nobody is asked to pay by it. */
export const forTheFile: readonly LaterLetterKind[] = ['release-checklist'];
