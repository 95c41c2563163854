import type { ClaimState } from '../../../../shared/claims/state.ts';
import type { Problem } from '../../../../shared/problems/problem.ts';
import { dropDraft, type Draft } from '../core/drafts.ts';
import { replaceWith } from '../core/router.ts';
import { useWords } from '../core/words.ts';
import { fieldId, problemsAt } from '../form/view/scope.ts';
import { Heading } from './Heading.tsx';
import { TwoTouches } from './TwoTouches.tsx';

/** Recorded from the open page alone; this device keeps no list of it. */
export function SentUnkept({ title, recordedAt }: { readonly title: string; readonly recordedAt: string }) {
  const words = useWords();
  return (
    <>
      <Heading title={title}>{title}</Heading>
      <div class="good-news" role="status">
        <p class="large">
          <strong>{words.t('outbox.recorded')}</strong>
        </p>
        <p>{words.t('outbox.recorded-at', { when: words.when(recordedAt) })}</p>
        <p>{words.t('outbox.unkept')}</p>
      </div>
      <p>
        <a class="button" href="#/">
          {words.t('screen.home')}
        </a>
      </p>
    </>
  );
}

/** Which claim a form is about, against whom, and what is open: two claims of one strike are easily taken for each other. */
export function AboutClaim({ claim }: { readonly claim: ClaimState }) {
  const words = useWords();
  return (
    <p class="lead">
      {words.t(claim.money.askedCents > 0 ? 'form.about-claim' : 'form.about-claim.not-asked', {
        claimNumber: claim.claimNumber,
        payer: claim.payerName ?? words.t(`value.payerKind.${claim.payerKind}`),
        balance: words.money(claim.money.balanceCents),
      })}
    </p>
  );
}

interface ReasonProps {
  readonly draft: Draft;
  readonly update: (next: Draft) => void;
  readonly problems: readonly Problem[];
}

/** Why a recorded submission is put right, and whether it is replaced or withdrawn. */
export function Reason({ draft, update, problems }: ReasonProps) {
  const words = useWords();
  const { corrects } = draft;
  if (!corrects) return null;
  const wrong = problemsAt(problems, 'reason').length > 0;
  const id = fieldId('reason');
  // A repair's alone: its steps are what hold points are judged by.
  const inPacket = draft.kind === 'repair';
  const described = [wrong && `${id}-error`, inPacket && `${id}-help`].filter(Boolean).join(' ');
  return (
    <section class="form-section">
      <h2>{words.t('form.correction-why')}</h2>
      <div class={`field ${wrong ? 'invalid' : ''}`}>
        <label for={id}>
          {words.t('form.reason')}
          <span class="needed"> {words.t('form.needed')}</span>
        </label>
        {wrong && (
          <p class="error" id={`${id}-error`}>
            {words.t('problem.reason-needed')}
          </p>
        )}
        {inPacket && (
          <p class="help" id={`${id}-help`}>
            {words.t('form.reason-in-packet')}
          </p>
        )}
        <textarea
          id={id}
          rows={2}
          value={corrects.reason}
          aria-invalid={wrong ? 'true' : undefined}
          aria-describedby={described || undefined}
          onInput={(event) =>
            update({ ...draft, corrects: { ...corrects, reason: event.currentTarget.value } })
          }
        />
      </div>
      <div class="choices">
        <label class="choice">
          <input
            type="checkbox"
            checked={corrects.withdraw}
            onChange={() => update({ ...draft, corrects: { ...corrects, withdraw: !corrects.withdraw } })}
          />
          <span>{words.t('form.withdraw')}</span>
        </label>
      </div>
    </section>
  );
}

/** Throws away what was typed. */
export function Discard({ submissionId }: { readonly submissionId: string }) {
  const words = useWords();
  const discard = (): void => {
    dropDraft(submissionId);
    if (history.length > 1) history.back();
    else replaceWith('#/');
  };
  return (
    <p class="discard">
      <TwoTouches label={words.t('form.discard')} onSure={discard} />
    </p>
  );
}
