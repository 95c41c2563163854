import { standingBreaches } from '../../../../shared/procedure/breaches.ts';
import { missingOf, type Missing } from '../../../../shared/strikes/missing.ts';
import { useObservable } from '../core/observable.ts';
import type { StrikesAnswer } from '../core/records.ts';
import { to } from '../core/router.ts';
import { session, type Session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { mayWrite } from '../screens/may.ts';
import { StageTag } from '../screens/StageTag.tsx';
import { strikeTitle } from '../screens/titles.ts';
import { ageDays } from './age.ts';
import { totalCents, type Case } from './piles.ts';

interface Props {
  readonly cases: readonly Case[];
  readonly answer: StrikesAnswer;
  readonly caption: string;
}

/** The cases of one pile, the oldest first: whoever waited longest is next. */
export function CaseTable({ cases, answer, caption }: Props) {
  const words = useWords();
  const oldestFirst = [...cases].sort((a, b) => Date.parse(a.strike.since) - Date.parse(b.strike.since));
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
        {oldestFirst.map((each) => (
          <Row key={each.strike.strikeId} one={each} answer={answer} />
        ))}
      </tbody>
    </table>
  );
}

function Row({ one, answer }: { readonly one: Case; readonly answer: StrikesAnswer }) {
  const words = useWords();
  const current = useObservable(session);
  const { strike, claims } = one;
  const place = strike.hydrantId === null ? null : (answer.hydrants[strike.hydrantId]?.place ?? null);
  const missing = missingOf({ strike, desk: true, claims, photosAwaited: 0 });
  const demanded = totalCents([one]);
  const owed = claims.reduce((cents, { money }) => cents + money.balanceCents, 0);
  const asked = claims.some(({ money }) => money.askedCents > 0);
  const look =
    standingBreaches(strike.breaches).length > 0 || (strike.returnedAt === null && strike.returns.length > 0);
  return (
    <tr>
      <th scope="row">
        <a href={to(['strike', strike.strikeId])}>{strikeTitle(strike, words)}</a>
        {place && <span class="place">{place}</span>}
      </th>
      <td data-label={words.t('desk.col.struck')}>
        <time dateTime={strike.since}>{words.when(strike.since)}</time>
        <span class="block small soft">{words.t('desk.days-ago', { days: ageDays(strike.since) })}</span>
      </td>
      <td data-label={words.t('desk.col.stage')}>
        <StageTag strike={strike} />
        {look && <span class="tag out">{words.t('desk.look')}</span>}
      </td>
      <td data-label={words.t('desk.col.claim')}>
        {claims.length === 0 ? (
          <span class="soft">{words.t('desk.no-claim')}</span>
        ) : (
          claims.map((claim) => (
            <a key={claim.claimId} href={to(['claim', claim.claimId])} class="block">
              {claim.claimNumber}
              {claim.payerName && ` · ${claim.payerName}`}
              {claim.packets.length > 0 && (
                <>
                  {' '}
                  <span class="tag">{words.t(`standing.${claim.life.standing}`)}</span>
                </>
              )}
            </a>
          ))
        )}
        {demanded > 0 && <span class="block">{words.money(demanded)}</span>}
        {asked && owed !== demanded && (
          <span class="block small soft">{words.t('desk.still-owed', { amount: words.money(owed) })}</span>
        )}
      </td>
      <td data-label={words.t('desk.col.missing')}>
        <Next missing={missing} one={one} current={current} />
      </td>
    </tr>
  );
}

interface NextProps {
  readonly missing: readonly Missing[];
  readonly one: Case;
  readonly current: Session | null;
}

/** The next thing to do, as a way to do it where it is the desk's; what comes after it in small. */
function Next({ missing: [first, ...later], one, current }: NextProps) {
  const words = useWords();
  if (!first) return <span class="soft">{words.t('missing.nothing')}</span>;
  const href = addressOf(first, one, current);
  return (
    <>
      {href ? (
        <a href={href}>{words.t(`missing.${first.code}`)}</a>
      ) : (
        <span>{words.t(`missing.${first.code}`)}</span>
      )}
      {later.length > 0 && (
        <ul class="plain-list small soft">
          {later.slice(0, 2).map(({ code }) => (
            <li key={code}>{words.t(`missing.${code}`)}</li>
          ))}
          {later.length > 2 && <li>{words.t('desk.more', { count: later.length - 2 })}</li>}
        </ul>
      )}
    </>
  );
}

function addressOf(
  { code, kind }: Missing,
  { strike, claims }: Case,
  current: Session | null,
): string | null {
  const claimId = claims.find(({ stage }) => stage !== 'billed')?.claimId;
  if (code === 'packet') return claimId === undefined ? null : to(['claim', claimId]);
  if (kind === null || !mayWrite(current, kind)) return null;
  if (kind === 'demand-sent') return claimId === undefined ? null : to(['new', kind], { claim: claimId });
  return to(['new', kind], { strike: strike.strikeId, hydrant: strike.hydrantId });
}
