import { useEffect, useRef, useState } from 'preact/hooks';
import type { EditionRecord } from '../../../../shared/costs/editionsOnRecord.ts';
import type { Problem } from '../../../../shared/problems/problem.ts';
import { sayProblem } from '../../../../shared/words/index.ts';
import { newId } from '../core/device.ts';
import { draftsOf, dropDraft, keepDraft, type Draft } from '../core/drafts.ts';
import { useObservable } from '../core/observable.ts';
import { to } from '../core/router.ts';
import type { Session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { deliverInPlace, problemsOf } from '../form/send.ts';
import { rateBookSpec as spec } from '../form/specs/rateBook.ts';
import { entries } from '../outbox/outbox.ts';
import { TwoTouches } from '../screens/TwoTouches.tsx';
import { EditionUses } from './EditionUses.tsx';

interface Props {
  readonly record: EditionRecord;
  readonly author: Session;
}

const begunBy = (authorId: string, targetId: string): Draft | null =>
  draftsOf(authorId).find(({ kind, corrects }) => kind === 'rate-book' && corrects?.targetId === targetId) ??
  null;

/** Takes an edition back, by name and with a reason. Nothing in it can be changed: that is a new edition. */
export function WithdrawEdition({ record, author }: Props) {
  const words = useWords();
  const waiting = useObservable(entries).find(
    ({ submission, state }) => state !== 'recorded' && submission.body['targetId'] === record.latestId,
  );
  const [open, setOpen] = useState(() => begunBy(author.personId, record.latestId) !== null);
  if (waiting && !open)
    return (
      <p role="status">
        <a href={to(['outbox', waiting.submissionId])}>{words.t(`rates.withdraw.${waiting.state}`)}</a>
      </p>
    );
  return open ? (
    <WithdrawForm record={record} author={author} onClose={() => setOpen(false)} />
  ) : (
    <p class="actions">
      <button type="button" class="plain" onClick={() => setOpen(true)}>
        {words.t('rates.withdraw')}
      </button>
    </p>
  );
}

function WithdrawForm({ record, author, onClose }: Props & { readonly onClose: () => void }) {
  const words = useWords();
  const [draft, setDraft] = useState<Draft>(
    () =>
      begunBy(author.personId, record.latestId) ?? {
        submissionId: newId(),
        kind: 'rate-book',
        subject: { type: 'utility' },
        authorId: author.personId,
        openedAt: new Date().toISOString(),
        touched: false,
        values: {},
        corrects: {
          targetId: record.latestId,
          occurredAt: record.occurredAt,
          reason: '',
          withdraw: true,
        },
        about: { hydrantId: null, strikeId: null },
      },
  );
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [kept, setKept] = useState(true);
  const [sending, setSending] = useState(false);
  const [tried, setTried] = useState(false);
  const reason = useRef<HTMLTextAreaElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const { corrects } = draft;
  if (!corrects) return null;

  const type = (text: string): void => {
    const next = { ...draft, corrects: { ...corrects, reason: text, withdraw: true }, touched: true };
    setDraft(next);
    setKept(keepDraft(next));
    if (tried) setProblems(problemsOf(spec, next, words.zone));
  };
  const send = async (): Promise<void> => {
    if (sending) return;
    setTried(true);
    const found = problemsOf(spec, draft, words.zone);
    setProblems(found);
    if (found.length > 0) {
      reason.current?.focus();
      return;
    }
    setSending(true);
    const sent = await deliverInPlace(spec, draft, author, words.zone);
    setSending(false);
    if (sent.state === 'not-kept') setKept(false);
    else if (sent.state === 'refused') setProblems(sent.problems);
    else onClose();
  };
  const wrong = problems.some(({ path }) => path === 'reason');
  const id = `withdraw-${draft.submissionId}`;
  return (
    <form
      class="form answer-form"
      noValidate
      aria-labelledby={`${id}-title`}
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <h2 id={`${id}-title`} ref={heading} tabIndex={-1}>
        {words.t('rates.withdraw')}
      </h2>
      <p>{words.t('rates.withdraw.means')}</p>
      <EditionUses record={record} />
      <div class={`field ${wrong ? 'invalid' : ''}`}>
        <label for={id}>
          {words.t('rates.withdraw.reason')}
          <span class="needed"> {words.t('form.needed')}</span>
        </label>
        {wrong && (
          <p class="error" id={`${id}-error`}>
            {words.t('problem.reason-needed')}
          </p>
        )}
        <textarea
          id={id}
          ref={reason}
          rows={2}
          value={corrects.reason}
          aria-invalid={wrong ? 'true' : undefined}
          aria-describedby={wrong ? `${id}-error` : undefined}
          onInput={(event) => type(event.currentTarget.value)}
        />
      </div>
      {problems
        .filter(({ path }) => path !== 'reason')
        .map((found) => (
          <p class="error" role="alert" key={found.code}>
            {sayProblem(words.locale, found)}
          </p>
        ))}
      {!kept && (
        <p role="alert">
          <strong>{words.t('form.not-kept')}</strong>
        </p>
      )}
      <p class="actions">
        <button type="submit" class="primary" disabled={sending}>
          {words.t(sending ? 'form.sending' : 'rates.withdraw.send')}
        </button>
        <TwoTouches
          label={words.t('rates.withdraw.keep')}
          onSure={() => {
            dropDraft(draft.submissionId);
            onClose();
          }}
        />
      </p>
      <p class="small soft">{words.t('objections.in-your-name', { name: author.name })}</p>
    </form>
  );
}
