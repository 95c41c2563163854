import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Problem } from '../../../../shared/problems/problem.ts';
import { hasWords } from '../../../../shared/words/index.ts';
import { dropDraft, keepDraft, readDraft, type Draft } from '../core/drafts.ts';
import { useObservable } from '../core/observable.ts';
import { replaceWith, route, to } from '../core/router.ts';
import { session, type Session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { entries, readEntry } from '../outbox/outbox.ts';
import { isOutage } from '../outbox/takesOut.ts';
import { queueForm, problemsOf, serverProblems } from '../form/send.ts';
import { formOfKind, formsRead } from '../form/specs/byKind.ts';
import { textOf } from '../form/nodes.ts';
import type { FormSpec } from '../form/spec.ts';
import { Fields } from '../form/view/Fields.tsx';
import { lazy } from '../form/view/Lazy.tsx';
import type { AskToHoldProps, LifeCautionsProps } from '../form/view/LifeCautions.tsx';
import { ScopeProvider } from '../form/view/scope.ts';
import { useFormContext } from './formContext.ts';
import { AlreadyStruck } from './AlreadyStruck.tsx';
import type { AskReturnProps } from './AskReturn.tsx';
import { Cautions } from './Cautions.tsx';
import { AboutClaim, Discard, Reason, SentUnkept } from './FormParts.tsx';
import { Heading } from './Heading.tsx';
import { NotFound } from './NotFound.tsx';
import { ProblemSummary } from './ProblemSummary.tsx';
import { TellDispatch } from './TellDispatch.tsx';

// What a clerk has read before an event of a claim is recorded: no phone at a curb carries it.
const ofClaims = () => import('../form/view/LifeCautions.tsx');
const LifeCautions = lazy<LifeCautionsProps>(async () => (await ofClaims()).LifeCautions, { when: 'asked' });
const AskToHold = lazy<AskToHoldProps>(async () => (await ofClaims()).AskToHold, { when: 'asked' });

// Judging a return takes the folds of the record, which reporting a strike does not.
const ofReturns = () => import('./AskReturn.tsx');
const AskReturn = lazy<AskReturnProps>(async () => (await ofReturns()).AskReturn);

/** A form that is being filled in: `#/form/<submissionId>`. */
export function FormScreen() {
  const { parts } = useObservable(route);
  const submissionId = parts[1] ?? '';
  const current = useObservable(session);
  const draft = useMemo(() => readDraft(submissionId), [submissionId]);
  const entry = useObservable(entries).find((each) => each.submissionId === submissionId);
  useObservable(formsRead);
  const spec = draft ? formOfKind(draft.kind) : null;
  // While this form is being sent it stays, because the answer may be a problem to show beside a field.
  const sendingHere = useRef(false);
  const queued = entry !== undefined && entry.state !== 'refused' && !sendingHere.current;

  useEffect(() => {
    // It is on its way: what is sent must not change any more.
    if (queued || !draft) replaceWith(to(['outbox', submissionId]));
  }, [queued, draft, submissionId]);

  if (!draft || !spec || !current || queued) return null;
  if (draft.authorId !== current.personId) return <NotFound />;
  return <Form key={submissionId} spec={spec} opened={draft} author={current} busy={sendingHere} />;
}

interface FormProps {
  readonly spec: FormSpec;
  readonly opened: Draft;
  readonly author: Session;
  readonly busy: { current: boolean };
}

function Form({ spec, opened, author, busy }: FormProps) {
  const words = useWords();
  const [draft, setDraft] = useState(opened);
  const [kept, setKept] = useState(true);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [tries, setTries] = useState(0);
  const [sending, setSending] = useState(false);
  const [asking, setAsking] = useState<'return' | 'hold' | null>(null);
  const [sentAt, setSentAt] = useState<string | null>(null);
  const { context } = useFormContext(aboutOf(draft), spec.kind === 'claim-opened');

  // A refused entry opens with what the server said beside its fields.
  useEffect(() => {
    void readEntry(opened.submissionId)
      .catch(() => null)
      .then((entry) => {
        if (entry?.state !== 'refused') return;
        setProblems(serverProblems(spec, opened, words.zone, entry.problems));
        setTries((count) => count + 1);
      });
  }, []);

  const update = (next: Draft): void => {
    // A hydrant chosen in the form is what its draft, and its entry on the way, are known by.
    const hydrantId = textOf(next.values['hydrantId']) || next.about.hydrantId;
    const touched: Draft = { ...next, touched: true, about: { ...next.about, hydrantId } };
    setDraft(touched);
    setKept(keepDraft(touched));
    // Once somebody tried to send, problems go as they are put right.
    if (tries > 0) setProblems(problemsOf(spec, touched, words.zone));
  };

  const send = async (sure = false): Promise<void> => {
    if (busy.current) return;
    const found = problemsOf(spec, draft, words.zone);
    setProblems(found);
    setTries((count) => count + 1);
    if (found.length > 0) return;
    if (!sure && !draft.corrects && spec.kind === 'return-to-service') {
      busy.current = true;
      // A part that cannot be had keeps nobody from recording a return: the server judges it all the same.
      const judged = await ofReturns()
        .catch(() => null)
        .finally(() => {
          busy.current = false;
        });
      if (judged?.wouldChangeNothing(spec, context, draft.values, draft.submissionId)) {
        setAsking('return');
        return;
      }
    }
    if (!sure && !draft.corrects && spec.kind === 'payment-received') {
      // Kept from a second touch of the button while the rule is read.
      busy.current = true;
      const { asksToHold } = await ofClaims().finally(() => {
        busy.current = false;
      });
      if (asksToHold(spec, context, draft.values, words.zone)) {
        setAsking('hold');
        return;
      }
    }
    setAsking(null);
    busy.current = true;
    setSending(true);
    const sent = await queueForm(spec, draft, author, words.zone);
    busy.current = false;
    setSending(false);
    if (sent.state === 'not-kept') {
      setKept(false);
      return;
    }
    if (sent.state === 'sent-unkept') {
      setSentAt(sent.recordedAt);
      return;
    }
    const entry = sent.state === 'kept' ? await readEntry(draft.submissionId) : null;
    const refused = sent.state === 'refused' ? sent.problems : entry?.state === 'refused' && entry.problems;
    if (refused) {
      setProblems(serverProblems(spec, draft, words.zone, refused));
      setTries((count) => count + 1);
      return;
    }
    dropDraft(draft.submissionId);
    replaceWith(to(['outbox', draft.submissionId]));
  };

  const title = draft.corrects
    ? `${words.t('kind.correction')}: ${words.t(`kind.${draft.kind}`)}`
    : words.t(hasWords(`form.title.${draft.kind}`) ? `form.title.${draft.kind}` : `kind.${draft.kind}`);
  const about = draft.about.hydrantId ?? context.hydrantId;
  if (sentAt !== null) return <SentUnkept title={title} recordedAt={sentAt} />;
  return (
    <ScopeProvider value={{ spec, job: context, words, problems, submissionId: draft.submissionId, Fields }}>
      <form
        class="form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <Heading title={title}>{title}</Heading>
        {context.claim && <AboutClaim claim={context.claim} />}
        {about && <p class="lead">{words.t('form.about-hydrant', { hydrantId: about })}</p>}
        {hasWords(`intro.${draft.kind}`) && <p class="lead">{words.t(`intro.${draft.kind}`)}</p>}
        <Cautions kind={draft.kind} />
        <ProblemSummary spec={spec} values={draft.values} problems={problems} tries={tries} />
        {draft.corrects && <Reason draft={draft} update={update} problems={problems} />}
        {!draft.corrects?.withdraw && (
          <Fields
            nodes={spec.nodes}
            values={draft.values}
            base=""
            change={(values) => update({ ...draft, values: spec.follow?.(values, words.zone) ?? values })}
          />
        )}
        {draft.subject.type === 'claim' && !draft.corrects?.withdraw && (
          <LifeCautions
            corrects={draft.corrects !== undefined}
            values={draft.values}
            change={(values) => update({ ...draft, values })}
          />
        )}
        {!draft.corrects && <AlreadyStruck spec={spec} job={context} />}
        {asking === 'hold' && (
          <AskToHold
            onHold={() => {
              setAsking(null);
              update({ ...draft, values: { ...draft.values, deposited: 'held' } });
            }}
            onSure={() => void send(true)}
          />
        )}
        {asking === 'return' && (
          <AskReturn
            spec={spec}
            job={context}
            values={draft.values}
            submissionId={draft.submissionId}
            onSure={() => void send(true)}
            onNot={() => setAsking(null)}
          />
        )}
        {sending && !draft.corrects && isOutage(draft.kind) && <TellDispatch />}
        {!kept && (
          <div class="warning" role="alert">
            <p>
              <strong>{words.t('form.not-kept')}</strong>
            </p>
            {tries > 0 && isOutage(draft.kind) && (
              <p>
                <strong>{words.t('outbox.tell-dispatch')}</strong>
              </p>
            )}
          </div>
        )}
        <div class="send-bar">
          <button type="submit" class="primary" disabled={sending}>
            {words.t(sending ? 'form.sending' : 'form.send')}
          </button>
          <p class="small soft" role="status">
            {words.t(draft.touched && kept ? 'form.saved' : 'form.saved-as-you-type')}
          </p>
        </div>
      </form>
      <Discard submissionId={draft.submissionId} />
    </ScopeProvider>
  );
}

const aboutOf = ({ about, subject }: Draft) => ({
  hydrantId: about.hydrantId,
  strikeId: about.strikeId,
  // A new claim is not on the server yet; asking for it would only answer that it does not exist.
  claimId: subject.type === 'claim' && about.strikeId === null ? subject.claimId : null,
});
