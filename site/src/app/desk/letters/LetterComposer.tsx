import { useState } from 'preact/hooks';
import type { LaterDraft } from '../../../../../shared/letters/later/answer.ts';
import { laterMergeFields } from '../../../../../shared/letters/later/fields.ts';
import { mergeLetter } from '../../../../../shared/letters/merge.ts';
import { channels } from '../../../../../shared/submissions/forms/claimLife/common.ts';
import { sayProblem } from '../../../../../shared/words/index.ts';
import { postJson } from '../../core/api.ts';
import { newId } from '../../core/device.ts';
import { useObservable } from '../../core/observable.ts';
import { session } from '../../core/session.ts';
import { recordedCount } from '../../core/resource.ts';
import { readStored, removeStored, writeStored } from '../../core/storage.ts';
import { useWords } from '../../core/words.ts';
import { sayFailed } from '../../screens/sayFailed.ts';
import { LetterBody } from '../LetterBody.tsx';
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
  const key = keptKey(useObservable(session)?.personId ?? '', claimId);
  const [keeps, setKeeps] = useState(true);
  const [letter, setLetter] = useState<Kept>(() => {
    const kept = readStored(key);
    return isKept(kept) && kept.letter === draft.letter && kept.answers === answers
      ? kept
      : begun(draft, answers);
  });
  const [refused, setRefused] = useState<readonly string[]>([]);
  const [sent, setSent] = useState<Sent | null>(null);
  const [sending, setSending] = useState(false);
  const merged = mergeLetter(letter.text, draft.values);
  const { problems } = merged;

  const write = (more: Partial<Kept>): void => {
    const next = { ...letter, ...more };
    setLetter(next);
    setSent(null);
    setKeeps(writeStored(key, next));
  };
  const record = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (sending) return;
    setRefused([]);
    // With its id: when the answer is lost, asking again after a reload is not a second letter.
    writeStored(key, letter);
    setSending(true);
    const answer = await postJson<Sent>(`/api/claims/${encodeURIComponent(claimId)}/letters`, letter);
    setSending(false);
    if (answer.outcome === 'ok') {
      removeStored(key);
      setSent(answer.value);
      setLetter({ ...letter, submissionId: newId() });
      recordedCount.set(recordedCount.get() + 1);
      return;
    }
    if (
      answer.outcome === 'refused' &&
      answer.problems.some(({ code }) => code === 'letter-recorded-otherwise')
    ) {
      // The next press is meant as a letter of its own; the one that left is shown below.
      const next = { ...letter, submissionId: newId() };
      setLetter(next);
      setKeeps(writeStored(key, next));
      recordedCount.set(recordedCount.get() + 1);
    }
    setRefused(sayFailed(answer, words));
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
          {reason === 'depreciation' &&
            draft.depreciationHere &&
            `${words.t('letter.depreciation-here', {
              position: draft.depreciationHere.position.replaceAll('-', '_'),
              citation: draft.depreciationHere.citation,
              jurisdiction: draft.depreciationHere.jurisdiction,
              confirmed: draft.depreciationHere.confirmedBy ? 'yes' : 'no',
            })} `}
          {words.t(`letter.contrary.${reason}`)}
        </p>
      ))}
      <LetterBody
        id="letter-text"
        label={words.t('letter.sent.text')}
        rows={18}
        locale={draft.locale}
        text={letter.text}
        write={(text) => write({ text })}
        merged={merged}
        fields={laterMergeFields}
        values={draft.values}
      />
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
      <p class="small soft" role="status">
        {words.t(keeps ? 'form.saved-as-you-type' : 'form.not-kept')}
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
