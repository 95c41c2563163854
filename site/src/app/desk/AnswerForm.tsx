import { useEffect, useRef, useState } from 'preact/hooks';
import type { Problem } from '../../../../shared/problems/problem.ts';
import { sayProblem } from '../../../../shared/words/index.ts';
import { newId } from '../core/device.ts';
import { draftsOf, dropDraft, keepDraft, type Draft } from '../core/drafts.ts';
import type { Session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { textOf } from '../form/nodes.ts';
import { deliverInPlace, problemsOf, serverProblems } from '../form/send.ts';
import { objectionAnswerSpec as spec } from '../form/specs/objectionAnswer.ts';
import { Fields } from '../form/view/Fields.tsx';
import { ScopeProvider } from '../form/view/scope.ts';
import { TwoTouches } from '../screens/TwoTouches.tsx';
import { useFormContext } from '../screens/formContext.ts';

interface Props {
  readonly claimId: string;
  readonly objectionKey: string;
  readonly sentence: string;
  readonly author: Session;
  readonly onSent: () => void;
  readonly onClose: () => void;
}

/** An answer to this objection that this person has begun on this device. */
export const draftFor = (authorId: string, claimId: string, objectionKey: string): Draft | null =>
  draftsOf(authorId).find(
    ({ kind, subject, values }) =>
      kind === 'objection-answer' &&
      subject.type === 'claim' &&
      subject.claimId === claimId &&
      textOf(values['objection']) === objectionKey,
  ) ?? null;

/**
 * Answer, accept or overrule beside the objection itself. It is a form like the others: kept as one types, sent through
 * the outbox, and with no connection it waits there. The person's name is the one it is signed with.
 */
export function AnswerForm({ claimId, objectionKey, sentence, author, onSent, onClose }: Props) {
  const words = useWords();
  const [draft, setDraft] = useState<Draft>(
    () =>
      draftFor(author.personId, claimId, objectionKey) ?? {
        submissionId: newId(),
        kind: 'objection-answer',
        subject: { type: 'claim', claimId },
        authorId: author.personId,
        openedAt: new Date().toISOString(),
        touched: false,
        values: { objection: objectionKey },
        about: { hydrantId: null, strikeId: null },
      },
  );
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [kept, setKept] = useState(true);
  const [sending, setSending] = useState(false);
  const [tried, setTried] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const { context } = useFormContext({ hydrantId: null, strikeId: null, claimId }, false);
  useEffect(() => form.current?.querySelector<HTMLElement>('input, textarea')?.focus(), []);

  const update = (values: Draft['values']): void => {
    const next = { ...draft, values, touched: true };
    setDraft(next);
    setKept(keepDraft(next));
    if (tried) setProblems(problemsOf(spec, next, words.zone));
  };
  const show = (found: readonly Problem[]): void => {
    setProblems(found);
    requestAnimationFrame(() =>
      form.current?.querySelector<HTMLElement>('.invalid input, .invalid textarea')?.focus(),
    );
  };
  const send = async (): Promise<void> => {
    if (sending) return;
    setTried(true);
    const found = problemsOf(spec, draft, words.zone);
    show(found);
    if (found.length > 0) return;
    setSending(true);
    const sent = await deliverInPlace(spec, draft, author, words.zone);
    setSending(false);
    if (sent.state === 'not-kept') setKept(false);
    else if (sent.state === 'refused') show(serverProblems(spec, draft, words.zone, sent.problems));
    else onSent();
  };
  const base = `a${draft.submissionId}`;
  return (
    <ScopeProvider
      value={{
        spec,
        job: context,
        words,
        // Several answers may be open at once: each field is known by its own answer.
        problems: problems.map((found) => ({ ...found, path: `${base}.${found.path}` })),
        submissionId: draft.submissionId,
        Fields,
      }}
    >
      <form
        class="form answer-form"
        ref={form}
        noValidate
        aria-label={`${words.t('objections.answer')}: ${sentence}`}
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <p class="small soft">{words.t('objections.in-your-name', { name: author.name })}</p>
        <Fields nodes={spec.nodes} values={draft.values} base={base} change={update} />
        {problems
          .filter(({ path }) => path !== 'answer' && path !== 'reason')
          .map((found) => (
            <p class="error" key={found.code}>
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
            {words.t(sending ? 'form.sending' : 'form.send')}
          </button>
          <TwoTouches
            label={words.t('objections.discard')}
            onSure={() => {
              dropDraft(draft.submissionId);
              onClose();
            }}
          />
        </p>
        <p class="small soft" role="status">
          {words.t(draft.touched && kept ? 'form.saved' : 'form.saved-as-you-type')}
        </p>
      </form>
    </ScopeProvider>
  );
}
