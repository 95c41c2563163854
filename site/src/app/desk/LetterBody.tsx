import type { RefObject } from 'preact';
import { useRef } from 'preact/hooks';
import type { MergedLetter } from '../../../../shared/letters/merge.ts';
import type { Locale } from '../../../../shared/words/index.ts';
import { useWords } from '../core/words.ts';
import { LetterText } from './LetterText.tsx';

interface Props {
  readonly id: string;
  readonly label: string;
  readonly rows: number;
  readonly locale: Locale;
  readonly text: string;
  readonly write: (text: string) => void;
  readonly merged: MergedLetter;
  /** Fields that may be named, in the order in which they are offered. */
  readonly fields: readonly string[];
  readonly values: Readonly<Record<string, string | null>>;
  readonly invalid?: boolean;
  readonly area?: RefObject<HTMLTextAreaElement | null>;
}

/** A letter's text with its merge fields, beside the letter as it will read. A field goes in where the cursor stands. */
export function LetterBody({
  id,
  label,
  rows,
  locale,
  text,
  write,
  merged,
  fields,
  values,
  invalid,
  area,
}: Props) {
  const words = useWords();
  const own = useRef<HTMLTextAreaElement>(null);
  const input = area ?? own;
  const insert = (field: string): void => {
    const at = input.current;
    const [from, to] = [at?.selectionStart ?? text.length, at?.selectionEnd ?? text.length];
    const put = `{${field}}`;
    write(text.slice(0, from) + put + text.slice(to));
    requestAnimationFrame(() => {
      at?.focus();
      at?.setSelectionRange(from + put.length, from + put.length);
    });
  };
  return (
    <div class="letter-columns">
      <div class="field">
        <label for={id}>{label}</label>
        <textarea
          id={id}
          ref={input}
          rows={rows}
          maxLength={12_000}
          lang={locale}
          aria-invalid={invalid ? 'true' : undefined}
          value={text}
          onInput={(event) => write(event.currentTarget.value)}
        />
        <details class="letter-fields">
          <summary>{words.t('letter.insert')}</summary>
          <ul class="plain-list">
            {fields.map((field) => (
              <li key={field}>
                <button type="button" class="link" onClick={() => insert(field)}>
                  {words.t(`letter.field.${field}`)}
                </button>{' '}
                <span class="small soft">{values[field] ?? words.t('letter.insert-empty')}</span>
              </li>
            ))}
          </ul>
        </details>
      </div>
      <section aria-label={words.t('letter.preview')}>
        <h3>{words.t('letter.preview')}</h3>
        <LetterText locale={locale} paragraphs={merged.paragraphs} />
      </section>
    </div>
  );
}
