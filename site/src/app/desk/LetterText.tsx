import type { Locale } from '../../../../shared/words/index.ts';

/** A letter as it will read: plain paragraphs, in the utility's language. */
export function LetterText({
  locale,
  paragraphs,
}: {
  readonly locale: Locale;
  readonly paragraphs: readonly string[];
}) {
  return (
    <div class="letter-preview" lang={locale}>
      {paragraphs.map((paragraph, index) => (
        <p key={index}>{paragraph}</p>
      ))}
    </div>
  );
}
