import { useState } from 'preact/hooks';
import { acceptedStillBilled, type StillBilled } from '../../../../shared/audit/accepted.ts';
import type { AnsweredObjection } from '../../../../shared/audit/objections.ts';
import type { ClaimState } from '../../../../shared/claims/state.ts';
import type { StrikeState } from '../../../../shared/strikes/state.ts';
import { effectiveFacts } from '../../../../shared/submissions/effective.ts';
import type { Recorded } from '../../../../shared/submissions/recorded.ts';
import { sayParams } from './sayParams.ts';
import { draftsChanged } from '../core/drafts.ts';
import { useObservable } from '../core/observable.ts';
import { nameOf, people } from '../core/people.ts';
import { useStrike, type useObjections } from '../core/records.ts';
import type { StrikeAnswer } from '../core/strikeAnswer.ts';
import { to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { entries } from '../outbox/outbox.ts';
import { mayWrite } from '../screens/may.ts';
import { Unread } from '../screens/Unread.tsx';
import { AnswerForm, draftFor } from './AnswerForm.tsx';
import { CreditLink } from './CreditLink.tsx';
import { showLine } from './places.ts';

interface Props {
  readonly claim: ClaimState;
  readonly strike: StrikeState | null;
  readonly objections: ReturnType<typeof useObjections>;
}

const filters = ['open', 'answered', 'all'] as const;
type Filter = (typeof filters)[number];

/** The packet as the insurer's adjuster will read it, most money first, and what the utility says to each objection. */
export function Objections({ claim, strike, objections }: Props) {
  const words = useWords();
  const [filter, setFilter] = useState<Filter>('open');
  // The one just answered stays in view although the filter would hide it, so that its answer is seen to stand.
  const [kept, setKept] = useState<string | null>(null);
  const all = objections.value?.objections ?? [];
  const story = useStrike(claim.strikeId).value;
  // Unread credits are no reason to offer one twice.
  const billed = story
    ? acceptedStillBilled(all, effectiveFacts(story.history.map(({ recorded }) => recorded)).facts)
    : [];
  const counts: Record<Filter, number> = {
    open: all.filter(({ answered }) => answered === null).length,
    answered: all.filter(({ answered }) => answered !== null).length,
    all: all.length,
  };
  const shown = all.filter(
    ({ answered, key }) => filter === 'all' || (filter === 'open') === (answered === null) || key === kept,
  );
  return (
    <section id="objections" tabIndex={-1}>
      <h2>{words.t('objections.title')}</h2>
      <p class="small soft">{words.t('objections.lead')}</p>
      <Unread resource={objections} />
      {objections.value && (
        <>
          <div class="filters" role="group" aria-label={words.t('objections.show')}>
            {filters.map((each) => (
              <button
                type="button"
                class="plain"
                key={each}
                aria-pressed={filter === each}
                onClick={() => {
                  setFilter(each);
                  setKept(null);
                }}
              >
                {words.t(`objections.show.${each}`, { count: counts[each] })}
              </button>
            ))}
          </div>
          {shown.length === 0 && <p>{words.t(`objections.none.${all.length === 0 ? 'all' : filter}`)}</p>}
          <ol class="plain-list objections">
            {shown.map((objection) => (
              <li key={objection.key}>
                <OneObjection
                  objection={objection}
                  claim={claim}
                  strike={strike}
                  story={story}
                  billed={billed.find((each) => each.objection.key === objection.key)}
                  onAnswered={() => setKept(objection.key)}
                />
              </li>
            ))}
          </ol>
        </>
      )}
    </section>
  );
}

interface OneProps extends Omit<Props, 'objections'> {
  readonly objection: AnsweredObjection;
  /** The strike with what was recorded of it; null until it is read. */
  readonly story: StrikeAnswer | null;
  /** Accepted, and still on the bill. */
  readonly billed: StillBilled | undefined;
  readonly onAnswered: () => void;
}

function OneObjection({ objection, claim, strike, story, billed, onAnswered }: OneProps) {
  const words = useWords();
  const current = useObservable(session);
  useObservable(draftsChanged);
  useObservable(people);
  const { key, rule, atStakeCents, params, lineId, answered } = objection;
  const begun = current ? draftFor(current.personId, claim.claimId, key) : null;
  const [answering, setAnswering] = useState(begun !== null);
  const waiting = useObservable(entries).find(
    ({ submission, state }) =>
      state !== 'recorded' &&
      submission.kind === 'objection-answer' &&
      submission.body['objection'] === key &&
      submission.subject.type === 'claim' &&
      submission.subject.claimId === claim.claimId,
  );
  const said = sayParams(params, words);
  const sentence = words.t(`objection.${rule}`, said);
  return (
    <article aria-label={sentence}>
      <p class="objection-line">
        <strong>{sentence}</strong>
        <span class="at-stake">
          {atStakeCents === 0
            ? words.t('objections.no-stake')
            : words.t('objections.stake', { amount: words.money(atStakeCents) })}
        </span>
      </p>
      <p>
        <span class="soft">{words.t('objections.would-answer')}</span>{' '}
        {words.t(`objection.${rule}.answer`, said)}
      </p>
      {answered && (
        <div class="objection-answer">
          <p>
            <span class="tag">{words.t(`value.objectionAnswer.${answered.answer}`)}</span> {answered.reason}
          </p>
          <p class="small soft">
            {nameOf(answered.personId)}, {words.when(answered.at)}
          </p>
        </div>
      )}
      {waiting && (
        <p role="status">
          <a href={to(['outbox', waiting.submissionId])}>{words.t(`objections.sending.${waiting.state}`)}</a>
        </p>
      )}
      <p class="actions">
        {billed && <CreditLink billed={billed} strikeId={claim.strikeId} claimId={claim.claimId} />}
        <Supply objection={objection} claim={claim} strike={strike} story={story} />
        {lineId !== null && (
          <button type="button" class="plain" onClick={() => showLine(lineId)}>
            {words.t('objections.see-line')}
            <span class="visually-hidden"> {sentence}</span>
          </button>
        )}
        {!answering && !waiting && mayWrite(current, 'objection-answer') && (
          <button type="button" class="plain" onClick={() => setAnswering(true)}>
            {words.t(answered ? 'objections.answer-anew' : 'objections.answer')}
            <span class="visually-hidden"> {sentence}</span>
          </button>
        )}
      </p>
      {answering && current && (
        <AnswerForm
          claimId={claim.claimId}
          objectionKey={key}
          sentence={sentence}
          author={current}
          onSent={() => {
            onAnswered();
            setAnswering(false);
          }}
          onClose={() => setAnswering(false)}
        />
      )}
    </article>
  );
}

/** What a correction of each record names: the latest of its chain. */
function latestOf(recorded: readonly Recorded[], ids: readonly string[]) {
  return effectiveFacts(recorded)
    .facts.filter(({ fact }) => ids.includes(fact.submissionId))
    .map(({ fact, corrections }) => ({
      submissionId: corrections.at(-1)?.submission.submissionId ?? fact.submissionId,
      occurredAt: fact.occurredAt,
    }));
}

/** The way to the form that would answer it; who may not fill it in is told whose it is. */
function Supply({
  objection: { add, rule, params, corrects },
  claim,
  strike,
  story,
}: Omit<OneProps, 'billed' | 'onAnswered'>) {
  const words = useWords();
  const current = useObservable(session);
  if (add === null) return null;
  const what = words.t(`kind.${add}`);
  const about = words.t(`objection.${rule}`, sayParams(params, words));
  if (!mayWrite(current, add)) return <span class="soft">{words.t('objections.others-add', { what })}</span>;
  const strikeId = strike?.strikeId ?? claim.strikeId;
  const records = latestOf(story?.history.map(({ recorded }) => recorded) ?? [], corrects);
  if (records.length > 0)
    return (
      <>
        {records.map(({ submissionId, occurredAt }) => (
          <a class="button" href={to(['correct', 'strike', strikeId, submissionId])} key={submissionId}>
            {words.t('objections.correct', {
              what,
              several: records.length > 1 ? 'yes' : 'no',
              when: words.when(occurredAt),
            })}
            <span class="visually-hidden"> {about}</span>
          </a>
        ))}
      </>
    );
  const href =
    add === 'rate-book'
      ? to(['rates'])
      : add === 'claim-opened'
        ? to(['strike', strikeId])
        : to(['new', add], {
            strike: strikeId,
            hydrant: strike?.hydrantId ?? null,
            claim: claim.claimId,
          });
  return (
    <a class="button" href={href}>
      {words.t(`objections.add.${add === 'rate-book' || add === 'claim-opened' ? add : 'form'}`, { what })}
      <span class="visually-hidden"> {about}</span>
    </a>
  );
}
