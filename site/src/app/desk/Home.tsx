import type { ClaimState } from '../../../../shared/claims/state.ts';
import { missingOf } from '../../../../shared/strikes/missing.ts';
import type { StrikeState } from '../../../../shared/strikes/state.ts';
import { useObservable } from '../core/observable.ts';
import { useStrikes, type StrikesAnswer } from '../core/records.ts';
import { to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { Heading } from '../screens/Heading.tsx';
import { DraftList } from '../screens/OutboxScreen.tsx';
import { mayWrite } from '../screens/may.ts';
import { StageTag } from '../screens/StrikeFacts.tsx';
import { strikeTitle } from '../screens/titles.ts';
import { Unread } from '../screens/Unread.tsx';

/** The desk's piles, in the order in which a clerk works. Words: `desk.pile.<code>`. */
const piles = ['ready', 'open', 'frozen', 'out', 'billed'] as const;
type Pile = (typeof piles)[number];

interface Case {
  readonly strike: StrikeState;
  readonly claims: readonly ClaimState[];
}

function pileOf({ strike, claims }: Case): Pile {
  if (claims.length > 0)
    return claims.some(({ stage }) => stage === 'open')
      ? 'open'
      : claims.some(({ stage }) => stage === 'frozen')
        ? 'frozen'
        : 'billed';
  return strike.returnedAt === null ? 'out' : 'ready';
}

/** Every strike as a case, by what the desk has to do with it next. */
export function Home() {
  const words = useWords();
  const current = useObservable(session);
  const strikes = useStrikes();
  return (
    <>
      <Heading title={words.t('shell.desk')}>{words.t('shell.desk')}</Heading>
      <DraftList />
      <Unread resource={strikes} />
      {strikes.value && <Piles answer={strikes.value} />}
      {mayWrite(current, 'hydrant-model') && (
        <p class="actions">
          <a class="button" href={to(['new', 'hydrant-model'])}>
            {words.t('form.title.hydrant-model')}
          </a>
        </p>
      )}
    </>
  );
}

function Piles({ answer }: { readonly answer: StrikesAnswer }) {
  const words = useWords();
  const cases = answer.strikes.map((strike): Case => ({
    strike,
    claims: (answer.claims ?? []).filter(({ strikeId }) => strike.memberIds.includes(strikeId)),
  }));
  if (cases.length === 0) return <p>{words.t('desk.no-strikes')}</p>;
  return (
    <>
      {piles.map((pile) => {
        const inPile = cases.filter((each) => pileOf(each) === pile);
        return inPile.length === 0 ? null : (
          <section key={pile}>
            <h2>
              {words.t(`desk.pile.${pile}`)} <span class="count">{inPile.length}</span>
            </h2>
            <CaseTable cases={inPile} answer={answer} caption={words.t(`desk.pile.${pile}`)} />
          </section>
        );
      })}
    </>
  );
}

interface TableProps {
  readonly cases: readonly Case[];
  readonly answer: StrikesAnswer;
  readonly caption: string;
}

function CaseTable({ cases, answer, caption }: TableProps) {
  const words = useWords();
  return (
    <table class="cases">
      <caption class="visually-hidden">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{words.t('desk.col.hydrant')}</th>
          <th scope="col">{words.t('desk.col.struck')}</th>
          <th scope="col">{words.t('desk.col.stage')}</th>
          <th scope="col">{words.t('desk.col.claim')}</th>
          <th scope="col">{words.t('desk.col.missing')}</th>
        </tr>
      </thead>
      <tbody>
        {cases.map(({ strike, claims }) => {
          const place = strike.hydrantId === null ? null : (answer.hydrants[strike.hydrantId]?.place ?? null);
          const missing = missingOf({ strike, desk: true, claims, photosAwaited: 0 });
          return (
            <tr key={strike.strikeId}>
              <th scope="row">
                <a href={to(['strike', strike.strikeId])}>{strikeTitle(strike, words)}</a>
                {place && <span class="place">{place}</span>}
              </th>
              <td data-label={words.t('desk.col.struck')}>
                <time dateTime={strike.since}>{words.when(strike.since)}</time>
              </td>
              <td data-label={words.t('desk.col.stage')}>
                <StageTag strike={strike} />
                {(strike.breaches.length > 0 ||
                  (strike.returnedAt === null && strike.returns.length > 0)) && (
                  <span class="tag out">{words.t('desk.look')}</span>
                )}
              </td>
              <td data-label={words.t('desk.col.claim')}>
                {claims.length === 0 ? (
                  <span class="soft">{words.t('desk.no-claim')}</span>
                ) : (
                  claims.map((claim) => (
                    <a key={claim.claimId} href={to(['claim', claim.claimId])} class="block">
                      {claim.claimNumber}
                      {claim.payerName && ` · ${claim.payerName}`}
                    </a>
                  ))
                )}
              </td>
              <td data-label={words.t('desk.col.missing')}>
                {missing.length === 0 ? (
                  <span class="soft">{words.t('missing.nothing')}</span>
                ) : (
                  <ul class="plain-list small">
                    {missing.slice(0, 3).map(({ code }) => (
                      <li key={code}>{words.t(`missing.${code}`)}</li>
                    ))}
                    {missing.length > 3 && (
                      <li class="soft">{words.t('desk.more', { count: missing.length - 3 })}</li>
                    )}
                  </ul>
                )}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
