import { readerOf } from '../packet/reader.ts';
import type { PacketContent } from '../packet/schema.ts';
import type { Effective } from '../submissions/effective.ts';
import { wordsAsWritten, type Locale } from '../words/index.ts';
import { letterKindFor, type LetterKind } from './kind.ts';
import { mergeLetter, type MergedLetter } from './merge.ts';
import type { MergeValues } from './fields.ts';
import { letterValues, type LetterFacts } from './values.ts';

/** The text that a letter has until somebody edits it, with its merge fields. */
export const letterTemplate = (locale: Locale, letter: LetterKind): string =>
  wordsAsWritten(locale, `letter.${letter}.text`);

export interface Letter extends MergedLetter {
  readonly letter: LetterKind;
  /** What was merged: the clerk's text, or the template. */
  readonly text: string;
  readonly values: MergeValues;
  /** The record that holds the clerk's text; null while the template is used. */
  readonly submissionId: string | null;
}

/**
 * The letter of a claim. `edited` is the claim's `letterTextOf`; one whose text was forgotten is as good as none. Pure.
 */
export function letterOf(facts: LetterFacts, edited: Effective<'letter-text'> | null): Letter {
  const { claim, party, locale } = facts;
  const letter = letterKindFor({
    payerKind: claim.payerKind,
    payerName: claim.payer.name,
    hitAndRun: party?.hitAndRun ?? 'unknown',
  });
  const own = edited?.fact.body.letter === letter ? edited.fact.body.text : null;
  const text = own ?? letterTemplate(locale, letter);
  const values = letterValues(facts, readerOf(facts));
  return {
    letter,
    text,
    values,
    submissionId: own === null ? null : (edited?.fact.submissionId ?? null),
    ...mergeLetter(text, values),
  };
}

/** What of it a packet carries. */
export const packetLetter = ({ letter, submissionId, paragraphs }: Letter): PacketContent['letter'] => ({
  letter,
  submissionId,
  paragraphs: [...paragraphs],
});
