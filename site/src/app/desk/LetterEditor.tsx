import { useId, useRef, useState } from 'preact/hooks';
import type { ClaimLetter } from '../../../../shared/letters/answer.ts';
import { mergeFields } from '../../../../shared/letters/fields.ts';
import type { LetterKind } from '../../../../shared/letters/kind.ts';
import { mergeLetter } from '../../../../shared/letters/merge.ts';
import { sayProblem } from '../../../../shared/words/index.ts';
import { newId } from '../core/device.ts';
import { draftsOf, dropDraft, keepDraft, type Draft } from '../core/drafts.ts';
import { useObservable } from '../core/observable.ts';
import type { Session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { textOf } from '../form/nodes.ts';
import { deliverInPlace, problemsOf } from '../form/send.ts';
import { letterTextSpec as spec } from '../form/specs/letterText.ts';
import { entries } from '../outbox/outbox.ts';
import { LetterBody } from './LetterBody.tsx';

/** A text for this letter that this person has begun on this device. */
export const letterDraft = (authorId: string, claimId: string, letter: LetterKind): Draft | null =>
  draftsOf(authorId).find(
    ({ kind, subject, values }) =>
      kind === 'letter-text' &&
      subject.type === 'claim' &&
      subject.claimId === claimId &&
      textOf(values['letter']) === letter,
  ) ?? null;

const blankDraft = (authorId: string, claimId: string, { letter, text }: ClaimLetter): Draft => ({
  submissionId: newId(),
  kind: 'letter-text',
  subject: { type: 'claim', claimId },
  authorId,
  openedAt: new Date().toISOString(),
  touched: false,
  values: { letter, text },
  about: { hydrantId: null, strikeId: null },
});

interface Props {
  readonly claimId: string;
  readonly answer: ClaimLetter;
  readonly author: Session;
}

type Told = 'saved' | 'queued' | 'not-kept' | 'empty-text' | 'put-right' | null;

/**
 * The text with its merge fields, beside the letter as it will read. A form like the others: kept as one types, sent
 * through the outbox, and with no connection it waits there.
 */
export function LetterEditor({ claimId, answer, author }: Props) {
  const words = useWords();
  const id = useId();
  const area = useRef<HTMLTextAreaElement>(null);
  const [draft, setDraft] = useState(
    () =>
      letterDraft(author.personId, claimId, answer.letter) ?? blankDraft(author.personId, claimId, answer),
  );
  const [told, setTold] = useState<Told>(null);
  const [refused, setRefused] = useState<readonly string[]>([]);
  const [sending, setSending] = useState(false);
  const waiting = useObservable(entries).some(
    ({ submission, state }) =>
      state !== 'recorded' &&
      submission.kind === 'letter-text' &&
      submission.subject.type === 'claim' &&
      submission.subject.claimId === claimId,
  );
  // Somebody else's newer text shows as soon as it is read, unless one is writing oneself.
  const text = draft.touched || waiting ? textOf(draft.values['text']) : answer.text;
  const merged = mergeLetter(text, answer.values);
  const { problems } = merged;

  const write = (next: string): void => {
    const touched: Draft = {
      ...draft,
      touched: true,
      values: { letter: answer.letter, text: next },
    };
    setDraft(touched);
    setTold(keepDraft(touched) ? null : 'not-kept');
  };
  const startOver = (): void => {
    dropDraft(draft.submissionId);
    setDraft(blankDraft(author.personId, claimId, answer));
    setTold(null);
    setRefused([]);
  };
  const send = async (): Promise<void> => {
    if (sending) return;
    setRefused([]);
    if (text.trim() === '') {
      setTold('empty-text');
      area.current?.focus();
      return;
    }
    // A field that is empty may be filled by a later fact; a slip in the text itself is put right by nobody else.
    if (problems.some(({ code }) => code !== 'letter-field-empty')) {
      setTold('put-right');
      area.current?.focus();
      return;
    }
    const found = problemsOf(spec, draft, words.zone);
    setRefused(found.map((each) => sayProblem(words.locale, each)));
    if (found.length > 0) return;
    setSending(true);
    const sent = await deliverInPlace(spec, draft, author, words.zone);
    setSending(false);
    if (sent.state === 'not-kept') {
      setTold('not-kept');
      return;
    }
    if (sent.state === 'refused') {
      setRefused(sent.problems.map((each) => sayProblem(words.locale, each)));
      return;
    }
    // What was sent stays in view until the server's own answer has it.
    setDraft({ ...blankDraft(author.personId, claimId, answer), values: { letter: answer.letter, text } });
    setTold(sent.state === 'waiting' ? 'queued' : 'saved');
  };

  return (
    <form
      class="letter-editor"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <p class="small soft">{words.t('letter.intro')}</p>
      <LetterBody
        id={id}
        label={words.t('letter.text-label')}
        rows={22}
        locale={answer.locale}
        text={text}
        write={write}
        merged={merged}
        fields={mergeFields}
        values={answer.values}
        invalid={told === 'put-right'}
        area={area}
      />
      {problems.length > 0 && draft.touched && (
        <div class="warning" role="status">
          <ul>
            {problems.map((found) => (
              <li key={`${found.code} ${found.path}`}>{sayProblem(words.locale, found)}</li>
            ))}
          </ul>
        </div>
      )}
      {refused.length > 0 && (
        <ul role="alert">
          {refused.map((sentence) => (
            <li key={sentence}>
              <strong>{sentence}</strong>
            </li>
          ))}
        </ul>
      )}
      <p class="actions">
        <button type="submit" class="primary" disabled={sending || !draft.touched}>
          {words.t(sending ? 'letter.saving' : 'letter.save')}
        </button>
        {text !== answer.template && (
          <button type="button" class="plain" onClick={() => write(answer.template)}>
            {words.t('letter.reset')}
          </button>
        )}
        {draft.touched && (
          <button type="button" class="link" onClick={startOver}>
            {words.t('letter.undo')}
          </button>
        )}
      </p>
      <p role="status" class="small">
        {told !== null ? words.t(`letter.${told}`) : draft.touched ? words.t('letter.draft') : ''}
      </p>
    </form>
  );
}
