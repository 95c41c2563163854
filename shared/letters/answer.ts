import type { Locale } from '../words/index.ts';
import type { EvidenceAsked } from './evidence.ts';
import type { Letter } from './letter.ts';

/** What the desk is told of a claim's letter, to read and to edit it. */
export interface ClaimLetter extends Omit<Letter, 'paragraphs'> {
  /** The utility's language, in which the letter is. */
  readonly locale: Locale;
  readonly template: string;
  readonly evidence: readonly EvidenceAsked[];
}
