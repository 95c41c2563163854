import type { ClaimLetter } from '../../../../shared/letters/answer.ts';
import { mergeLetter } from '../../../../shared/letters/merge.ts';

/** The letter as it will read: plain paragraphs, in the utility's language. */
export function LetterText({ answer, text }: { readonly answer: ClaimLetter; readonly text: string }) {
  const { paragraphs } = mergeLetter(text, answer.values);
  return (
    <div class="letter-preview" lang={answer.locale}>
      {paragraphs.map((paragraph, index) => (
        <p key={index}>{paragraph}</p>
      ))}
    </div>
  );
}
