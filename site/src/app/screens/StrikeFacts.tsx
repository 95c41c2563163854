import type { ClaimState } from '../../../../shared/claims/state.ts';
import { bearsOnBill, missingOf, type Missing } from '../../../../shared/strikes/missing.ts';
import type { StrikeState } from '../../../../shared/strikes/state.ts';
import { effectiveFacts } from '../../../../shared/submissions/effective.ts';
import type { HistoryEntry } from '../../../../shared/submissions/history.ts';
import { formOf } from '../../../../shared/submissions/submission.ts';
import { nameOf } from '../core/people.ts';
import { to } from '../core/router.ts';
import type { StrikeAnswer } from '../core/strikeAnswer.ts';
import { useWords } from '../core/words.ts';
import { sayHold } from '../form/view/sayHold.ts';

/** The times that matter, those that are known. */
export function StrikeTimes({ strike }: { readonly strike: StrikeState }) {
  const words = useWords();
  const times = [
    ['since', strike.since],
    ['struckAt', strike.struckAt],
    ['arrivedAt', strike.arrivedAt],
    ['waterShutAt', strike.waterShutAt],
    ['markedOutOfServiceAt', strike.markedOutOfServiceAt],
    ['dispatchToldAt', strike.dispatchToldAt],
    ['expectedAt', strike.returnedAt === null ? strike.expectedAt : null],
    ['repairedAt', strike.repairedAt],
    ['returnedAt', strike.returnedAt],
  ] as const;
  return (
    <dl class="said">
      {times.map(([name, at]) =>
        at === null ? null : (
          <div key={name}>
            <dt>{words.t(`strike.${name}`)}</dt>
            <dd>
              <time dateTime={at}>{words.when(at)}</time>
              {name === 'expectedAt' &&
                strike.waitingFor &&
                ` · ${words.t(`value.waitingFor.${strike.waitingFor}`)}`}
            </dd>
          </div>
        ),
      )}
    </dl>
  );
}

/** One hold point that was passed: an alarm while the record shows it, a plain note with its correction afterward. */
function BreachNote({ breach }: { readonly breach: StrikeState['breaches'][number] }) {
  const words = useWords();
  const { code, at, byWorkerId, missing, corrected } = breach;
  return (
    <div class={corrected ? 'notice' : 'warning'}>
      <p>
        <strong>{words.t(corrected ? 'strike.breach-corrected' : 'strike.breach')}</strong>
      </p>
      <p>
        {words.when(at)}:{' '}
        {words.t(`breach.${code}`, {
          byWorkerId: nameOf(byWorkerId),
          missing: missing.map((step) => words.t(`step.${step}`)).join('; '),
        })}
      </p>
      {corrected && (
        <p>
          {words.t('strike.breach-corrected-by', {
            when: words.when(corrected.at),
            byPersonId: nameOf(corrected.byPersonId),
            reason: corrected.reason,
          })}
        </p>
      )}
    </div>
  );
}

/** Hold points that were passed without their condition, and returns that have no effect: shown wherever the strike is. */
export function StrikeAlarms({ strike }: { readonly strike: StrikeState }) {
  const words = useWords();
  const held = strike.returns.filter(({ takesEffect }) => !takesEffect);
  // A return that took effect later has answered those before it.
  const stillHeld = strike.returnedAt === null ? held : [];
  return (
    <>
      {strike.breaches.map((breach) => (
        <BreachNote key={`${breach.submissionId} ${breach.at} ${breach.step ?? ''}`} breach={breach} />
      ))}
      {strike.pumped && (
        <div class="warning">
          <p>
            <strong>{words.t('strike.pumped')}</strong>
          </p>
          <p>
            {words.t('strike.pumped-by', {
              when: words.when(strike.pumped.at),
              byWorkerId: nameOf(strike.pumped.byWorkerId),
            })}
          </p>
        </div>
      )}
      {stillHeld.map(({ returnId, returnedAt, holds }) => (
        <div class="warning" key={returnId}>
          <p>
            <strong>{words.t('strike.held-return', { when: words.when(returnedAt) })}</strong>
          </p>
          <ul>
            {holds.map((hold, index) => (
              <li key={index}>{sayHold(hold, words)}</li>
            ))}
          </ul>
        </div>
      ))}
      {strike.deferred.length > 0 && (
        <div class="warning">
          <p>
            <strong>{words.t('strike.not-retested')}</strong>
          </p>
          <ul>
            {strike.deferred.map(({ proof, reason, byWorkerId }) => (
              <li key={proof}>
                {words.t('strike.deferred', { proof: words.t(`proof.${proof}`), reason, byWorkerId })}
              </li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}

export const missingFrom = (answer: StrikeAnswer, desk: boolean): Missing[] =>
  missingOf({
    strike: answer.strike,
    desk,
    claims: answer.claims ?? [],
    billIds: answer.history
      .map(({ recorded }) => recorded.submission)
      .filter((submission) => bearsOnBill(formOf(submission).kind))
      .map(({ submissionId }) => submissionId),
    photosAwaited: Object.values(answer.evidence).filter((state) => state === 'awaited').length,
  });

interface MissingProps {
  readonly missing: readonly Missing[];
  readonly strike: StrikeState;
  /** Only what this person may supply gets a button. */
  readonly may: (kind: string) => boolean;
  readonly claims?: readonly ClaimState[];
  /** With it the report of the strike can be opened, so that photos are added to it. */
  readonly history?: readonly HistoryEntry[];
}

/** The report of the strike as it stands: photos are added to it by a correction, so that they stay with what they show. */
const reportIn = (history: readonly HistoryEntry[]): HistoryEntry | undefined =>
  history.find(
    ({ recorded: { submission }, standing }) => standing === 'stands' && formOf(submission).kind === 'strike',
  );

/** The record that a correction of an entry corrects: the entry, or the last correction of it. Null: not told here. */
function lastOf(submissionId: string, history: readonly HistoryEntry[]): string | null {
  const { facts } = effectiveFacts(history.map(({ recorded }) => recorded));
  const item = facts.find(({ fact }) => fact.submissionId === submissionId);
  return item ? (item.corrections.at(-1)?.submission.submissionId ?? submissionId) : null;
}

/** What is missing next, each with the form that supplies it. */
export function MissingList({ missing, strike, may, claims = [], history = [] }: MissingProps) {
  const words = useWords();
  if (missing.length === 0) return <p>{words.t('missing.nothing')}</p>;
  const address = ({ code, kind }: Missing): string | null => {
    if (code === 'packet' || code === 'packet-old')
      return claims[0] ? to(['claim', claims[0].claimId]) : null;
    // Both are put right in the report itself.
    if (code === 'photos' || code === 'hydrant') {
      const report = may('strike') ? reportIn(history)?.recorded.submission : undefined;
      return report?.subject.type === 'strike'
        ? to(['correct', 'strike', report.subject.strikeId, report.submissionId])
        : null;
    }
    if (code === 'customers' && may('valve-operation')) {
      const closing = strike.shutMain?.closings.find(({ customersListed }) => !customersListed);
      const last = closing && lastOf(closing.submissionId, history);
      return last ? to(['correct', 'strike', strike.strikeId, last]) : null;
    }
    if (kind === null || !may(kind)) return null;
    if (kind === 'demand-sent') return claims[0] ? to(['new', kind], { claim: claims[0].claimId }) : null;
    return to(['new', kind], { strike: strike.strikeId, hydrant: strike.hydrantId });
  };
  return (
    <ol class="plain-list missing">
      {missing.map((each, index) => {
        const href = address(each);
        return (
          <li key={each.code}>
            <span>
              {words.t(`missing.${each.code}`, { revision: claims[0]?.packets.at(-1)?.revision ?? 0 })}
            </span>
            {href && (
              <a class={`button ${index === 0 ? 'primary' : ''}`} href={href}>
                {words.t(`missing.${each.code}.do`)}
              </a>
            )}
          </li>
        );
      })}
    </ol>
  );
}
