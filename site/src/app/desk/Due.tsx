import type { QuietClaim } from '../../../../shared/clocks/quiet.ts';
import { neverLeftOut, type DeadlineList, type ListedDeadline } from '../../../../shared/clocks/list.ts';
import { useResource } from '../core/resource.ts';
import { to } from '../core/router.ts';
import { useWords } from '../core/words.ts';
import { Unread } from '../screens/Unread.tsx';
import { DeadlineRow } from './life/DeadlineRow.tsx';

interface Answer {
  readonly today: string;
  readonly groups: DeadlineList;
  readonly quiet: readonly QuietClaim[];
  readonly notSet: readonly string[];
  readonly undelivered: readonly unknown[];
}

const groups = ['overdue', 'today', 'week', 'later'] as const;
/** Far dates are many and press nobody; of the last days to sue that are warned of none is left out. */
const MOST_LATER = 5;

/** What is due, before everything else on the desk: overdue, today, this week, and dates to sue that come near. */
export function Due() {
  const words = useWords();
  const resource = useResource<Answer>('/api/deadlines');
  const { value } = resource;
  if (!value) return <Unread resource={resource} />;
  const shown = groups.map((group) => ({
    group,
    all: group === 'later' ? near(value.groups.later, value.today) : value.groups[group],
  }));
  const none = shown.every(({ all }) => all.length === 0);
  return (
    <section class="due" aria-labelledby="due-title">
      <h2 id="due-title">{words.t('desk.due')}</h2>
      <Unread resource={resource} />
      {none && <p>{words.t('desk.due.none', { day: words.day(value.today) })}</p>}
      {shown.map(({ group, all }) =>
        all.length === 0 ? null : (
          <div key={group}>
            <h3>
              {words.t(`desk.due.${group}`)} <span class="count">{all.length}</span>
            </h3>
            <ul class="deadlines plain-list">
              {all.map((deadline) => (
                <DeadlineRow
                  key={`${deadline.claimId} ${deadline.id}`}
                  deadline={deadline}
                  today={value.today}
                >
                  <ClaimLink deadline={deadline} />
                </DeadlineRow>
              ))}
            </ul>
          </div>
        ),
      )}
      <Quiet claims={value.quiet} />
      {value.groups.records.length > 0 && (
        // Nobody is late for it and nothing is lost by waiting: behind one touch, and never silent.
        <details class="small">
          <summary>{words.t('desk.due.records', { count: value.groups.records.length })}</summary>
          <p>{words.t('desk.due.records-what')}</p>
          <ul class="deadlines plain-list">
            {value.groups.records.map((deadline) => (
              <DeadlineRow key={`${deadline.claimId} ${deadline.id}`} deadline={deadline} today={value.today}>
                <ClaimLink deadline={deadline} />
              </DeadlineRow>
            ))}
          </ul>
        </details>
      )}
      {value.undelivered.length > 0 && (
        <p class="warning">{words.t('desk.due.undelivered', { count: value.undelivered.length })}</p>
      )}
      {value.notSet.length > 0 && (
        <details class="small">
          <summary>{words.t('desk.due.not-set', { count: value.notSet.length })}</summary>
          <ul>
            {value.notSet.map((name) => (
              <li key={name}>{words.t(`clock.unset.${name}`)}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

/** Claims that would otherwise be on no list: open, and nothing of them ever comes due. */
function Quiet({ claims }: { readonly claims: readonly QuietClaim[] }) {
  const words = useWords();
  if (claims.length === 0) return null;
  return (
    <div>
      <h3>
        {words.t('desk.quiet')} <span class="count">{claims.length}</span>
      </h3>
      <p class="small">{words.t('desk.quiet.what')}</p>
      <ul class="deadlines plain-list">
        {claims.map(({ claimId, claimNumber, payerName, standing, flags, balanceCents }) => (
          <li key={claimId}>
            <p>
              <a href={to(['claim', claimId])}>{words.t('search.claim', { claimNumber })}</a>
              {payerName && ` · ${payerName}`}
            </p>
            <p class="small">
              {[words.t(`standing.${standing}`), ...flags.map((flag) => words.t(`claim-flag.${flag}`))].join(
                ' · ',
              )}
              {balanceCents > 0 && ` · ${words.money(balanceCents)}`}
            </p>
          </li>
        ))}
      </ul>
    </div>
  );
}

function ClaimLink({ deadline }: { readonly deadline: ListedDeadline }) {
  const words = useWords();
  return (
    <>
      <a href={to(['claim', deadline.claimId])}>
        {words.t('search.claim', { claimNumber: deadline.claimNumber })}
      </a>
      {deadline.payerName && ` · ${deadline.payerName}`}
    </>
  );
}

function near(later: readonly ListedDeadline[], today: string): readonly ListedDeadline[] {
  const warned = later.filter(({ warnFrom }) => warnFrom <= today);
  const others = warned.filter(({ clock }) => !neverLeftOut.includes(clock)).slice(0, MOST_LATER);
  return warned.filter((one) => neverLeftOut.includes(one.clock) || others.includes(one));
}
