import { useObservable } from '../core/observable.ts';
import { useStrikes, type StrikesAnswer } from '../core/records.ts';
import { to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { Heading } from '../screens/Heading.tsx';
import { mayWrite } from '../screens/may.ts';
import { DraftList } from '../screens/EntryList.tsx';
import { StockNotice } from '../screens/StockNotice.tsx';
import { Unread } from '../screens/Unread.tsx';
import { CaseTable } from './CaseTable.tsx';
import { CalendarAddress } from './CalendarAddress.tsx';
import { DispatchFailed } from './DispatchFailed.tsx';
import { Due } from './Due.tsx';
import { LookUp } from './LookUp.tsx';
import { showPart } from './places.ts';
import { oldestDays, pileOf, piles, totalCents, type Case, type Pile } from './piles.ts';

/** Every strike as a case, in piles that follow the work from the strike to the money. */
export function Home() {
  const words = useWords();
  const current = useObservable(session);
  const strikes = useStrikes();
  return (
    <>
      <Heading title={words.t('shell.desk')}>{words.t('shell.desk')}</Heading>
      <DraftList />
      <LookUp />
      <DispatchFailed />
      <Due />
      <Unread resource={strikes} />
      {strikes.value && <Piles answer={strikes.value} />}
      <StockNotice />
      <CalendarAddress />
      <p class="actions">
        <a class="button" href={to(['rates'])}>
          {words.t('rates.title')}
        </a>
        <a class="button" href={to(['figures'])}>
          {words.t('figures.title')}
        </a>
        {mayWrite(current, 'hydrant-model') && (
          <a class="button" href={to(['new', 'hydrant-model'])}>
            {words.t('form.title.hydrant-model')}
          </a>
        )}
      </p>
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
  const byPile = new Map<Pile, readonly Case[]>(
    piles.map((pile) => [pile, cases.filter((each) => pileOf(each) === pile)]),
  );
  return (
    <>
      <Overview byPile={byPile} />
      {piles.map((pile) => {
        const inPile = byPile.get(pile) ?? [];
        return inPile.length === 0 ? null : (
          <section key={pile} id={`pile-${pile}`} tabIndex={-1}>
            <h2>
              {words.t(`desk.pile.${pile}`)} <span class="count">{inPile.length}</span>
            </h2>
            <p class="small soft">{words.t(`desk.pile.${pile}.do`)}</p>
            <CaseTable cases={inPile} answer={answer} caption={words.t(`desk.pile.${pile}`)} />
          </section>
        );
      })}
    </>
  );
}

/** How many cases are where, how old the oldest is, and what is demanded: the desk at a glance, in the order of the work. */
function Overview({ byPile }: { readonly byPile: ReadonlyMap<Pile, readonly Case[]> }) {
  const words = useWords();
  return (
    <ol class="overview" aria-label={words.t('desk.overview')}>
      {piles.map((pile) => {
        const cases = byPile.get(pile) ?? [];
        const demanded = totalCents(cases);
        return (
          <li key={pile}>
            <button
              type="button"
              class="link"
              disabled={cases.length === 0}
              onClick={() => showPart(`pile-${pile}`)}
            >
              {words.t(`desk.pile.${pile}`)}
            </button>
            <strong>{words.t('desk.cases', { count: cases.length })}</strong>
            {cases.length > 0 && (
              <span class="small soft">{words.t('desk.oldest', { days: oldestDays(cases) })}</span>
            )}
            {demanded > 0 && (
              <span class="small">{words.t('desk.demanded', { amount: words.money(demanded) })}</span>
            )}
          </li>
        );
      })}
    </ol>
  );
}
