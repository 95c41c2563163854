import { useState } from 'preact/hooks';
import type { LaterDraft } from '../../../../../shared/letters/later/answer.ts';
import { laterMergeFields } from '../../../../../shared/letters/later/fields.ts';
import { mergeLetter } from '../../../../../shared/letters/merge.ts';
import { channels } from '../../../../../shared/submissions/forms/claimLife/common.ts';
import { sayProblem } from '../../../../../shared/words/index.ts';
import { postJson } from '../../core/api.ts';
import { newId } from '../../core/device.ts';
import { recordedCount } from '../../core/resource.ts';
import { readStored, removeStored, writeStored } from '../../core/storage.ts';
import { useWords } from '../../core/words.ts';
import { isKept, keptKey, type Kept } from './kept.ts';

interface Props {
  readonly claimId: string;
  readonly draft: LaterDraft;
  readonly answers: string | null;
}

interface Sent {
  readonly url: string;
}

const begun = ({ letter, template, to, on }: LaterDraft, answers: string | null): Kept => ({
  submissionId: newId(),
  letter,
  answers,
  text: template,
  to,
  how: 'email',
  on,
});

/** The text beside the letter as it will read; what is made of it is a PDF, recorded as it leaves. */
export function LetterComposer({ claimId, draft, answers }: Props) {
  const words = useWords();
  const [letter, setLetter] = useState<Kept>(() => {
    const kept = readStored(keptKey(claimId));
    return isKept(kept) && kept.letter === draft.letter && kept.answers === answers
      ? kept
      : begun(draft, answers);
  });
  const [refused, setRefused] = useState<readonly string[]>([]);
  const [sent, setSent] = useState<Sent | null>(null);
  const [sending, setSending] = useState(false);
  const { paragraphs, problems } = mergeLetter(letter.text, draft.values);

  const write = (more: Partial<Kept>): void => {
    const next = { ...letter, ...more };
    setLetter(next);
    setSent(null);
    writeStored(keptKey(claimId), next);
  };
  const record = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (sending) return;
    setRefused([]);
    setSending(true);
    const answer = await postJson<Sent>(`/api/claims/${encodeURIComponent(claimId)}/letters`, letter);
    setSending(false);
    if (answer.outcome === 'ok') {
      removeStored(keptKey(claimId));
      setSent(answer.value);
      setLetter({ ...letter, submissionId: newId() });
      recordedCount.set(recordedCount.get() + 1);
      return;
    }
    setRefused(
      answer.outcome === 'refused'
        ? answer.problems.map((found) => sayProblem(words.locale, found))
        : [
            words.t(
              answer.outcome === 'sign-in' ? 'screen.failed.sign-in' : `screen.failed.${answer.reason}`,
            ),
          ],
    );
  };
  const field = (name: 'to' | 'on', label: string, control: 'area' | 'date') => (
    <div class="field">
      <label for={`letter-${name}`}>{label}</label>
      {control === 'area' ? (
        <textarea
          id={`letter-${name}`}
          rows={3}
          maxLength={400}
          value={letter[name]}
          onInput={(event) => write({ [name]: event.currentTarget.value })}
        />
      ) : (
        <input
          id={`letter-${name}`}
          type="date"
          max={draft.on}
          value={letter[name]}
          onInput={(event) => write({ [name]: event.currentTarget.value })}
        />
      )}
    </div>
  );
  return (
    <form class="letter-editor" noValidate onSubmit={(event) => void record(event)}>
      {draft.letter === 'reply-to-dispute' && <p class="notice">{words.t('letter.authorities-caution')}</p>}
      {draft.contrary.map((reason) => (
        <p key={reason} class="notice">
          {words.t(`letter.contrary.${reason}`)}
        </p>
      ))}
      <div class="letter-columns">
        <div>
          <div class="field">
            <label for="letter-text">{words.t('letter.sent.text')}</label>
            <textarea
              id="letter-text"
              rows={18}
              maxLength={12_000}
              lang={draft.locale}
              value={letter.text}
              onInput={(event) => write({ text: event.currentTarget.value })}
            />
          </div>
          <details class="letter-fields">
            <summary>{words.t('letter.insert')}</summary>
            <ul class="plain-list">
              {laterMergeFields.map((name) => (
                <li key={name}>
                  <button
                    type="button"
                    class="link"
                    onClick={() => write({ text: `${letter.text}{${name}}` })}
                  >
                    {words.t(`letter.field.${name}`)}
                  </button>{' '}
                  <span class="small soft">{draft.values[name] ?? words.t('letter.insert-empty')}</span>
                </li>
              ))}
            </ul>
          </details>
        </div>
        <section aria-label={words.t('letter.preview')}>
          <h3>{words.t('letter.preview')}</h3>
          <div class="letter-preview" lang={draft.locale}>
            {paragraphs.map((paragraph, index) => (
              <p key={index}>{paragraph}</p>
            ))}
          </div>
        </section>
      </div>
      {problems.length > 0 && (
        <div class="warning" role="status">
          <ul>
            {problems.map((found) => (
              <li key={`${found.code} ${found.path}`}>{sayProblem(words.locale, found)}</li>
            ))}
          </ul>
        </div>
      )}
      {field('to', words.t('letter.sent.to'), 'area')}
      {field('on', words.t('letter.sent.on'), 'date')}
      <div class="field">
        <label for="letter-how">{words.t('letter.sent.how')}</label>
        <select
          id="letter-how"
          value={letter.how}
          onChange={(event) => write({ how: event.currentTarget.value })}
        >
          {channels.map((each) => (
            <option key={each} value={each}>
              {words.t(`value.channel.${each}`)}
            </option>
          ))}
        </select>
      </div>
      <p class="actions">
        <button type="submit" class="primary" disabled={sending || problems.length > 0}>
          {words.t(sending ? 'letter.sent.recording' : 'letter.sent.record')}
        </button>
        {letter.text !== draft.template && (
          <button type="button" class="plain" onClick={() => write({ text: draft.template })}>
            {words.t('letter.sent.reset')}
          </button>
        )}
      </p>
      <div role="status">
        {sent && (
          <p>
            {words.t('letter.sent.recorded')}{' '}
            <a href={sent.url} target="_blank" rel="noopener">
              {words.t('letter.sent.open')}
            </a>
          </p>
        )}
      </div>
      {refused.length > 0 && (
        <ul role="alert">
          {refused.map((sentence) => (
            <li key={sentence}>
              <strong>{sentence}</strong>
            </li>
          ))}
        </ul>
      )}
    </form>
  );
}
