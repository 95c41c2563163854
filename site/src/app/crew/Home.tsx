import type { StrikeState } from '../../../../shared/strikes/state.ts';
import { useObservable } from '../core/observable.ts';
import { useStrikes, type StrikesAnswer } from '../core/records.ts';
import { to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { entries } from '../outbox/outbox.ts';
import { LookChoice } from '../screens/LookChoice.tsx';
import { Heading } from '../screens/Heading.tsx';
import { DraftList, EntryList } from '../screens/EntryList.tsx';
import { DeviceLine } from '../screens/ThisDevice.tsx';
import { StageTag } from '../screens/StageTag.tsx';
import { StockNotice } from '../screens/StockNotice.tsx';
import { strikeTitle } from '../screens/titles.ts';
import { Unread } from '../screens/Unread.tsx';
import { mayWrite } from '../screens/may.ts';

/** Reports that begin with a hydrant. */
const fromHydrant = [
  'outage',
  'inspection',
  'planned-work',
  'flow-test',
  'valve-operation',
  'repair',
] as const;

/** The crew's start: report first, then what is unsent, then what is out of service now. */
export function Home() {
  const words = useWords();
  const current = useObservable(session);
  const strikes = useStrikes();
  const mine = useObservable(entries).filter(({ author }) => author.personId === current?.personId);
  return (
    <>
      <Heading title={words.t('crew.home')}>{words.t('crew.home')}</Heading>
      {mayWrite(current, 'strike') && (
        <p>
          <a class="button primary big" href={to(['new', 'strike'])}>
            {words.t('crew.report-strike')}
          </a>
        </p>
      )}
      <p class="actions">
        <a class="button" href={to(['find'])}>
          {words.t('crew.find')}
        </a>
        <a class="button plain" href={to(['sheet'])}>
          {words.t('procedure.sheet-any')}
        </a>
      </p>
      {/* Here and not in the frame of every screen: on a phone a line of it is a line less of the form. */}
      <p>
        <LookChoice />
      </p>
      <DeviceLine />
      {mine.length > 0 && (
        <section>
          <h2>{words.t('crew.unsent')}</h2>
          <EntryList entries={mine} />
        </section>
      )}
      <DraftList />
      <section>
        <h2>{words.t('crew.out-now')}</h2>
        <Unread resource={strikes} />
        {strikes.value && <OutNow answer={strikes.value} />}
      </section>
      <StockNotice />
      {mayWrite(current, 'outage') && (
        <section>
          <h2>{words.t('crew.other-reports')}</h2>
          <ul class="plain-list lines">
            {fromHydrant.map((kind) => (
              <li key={kind}>
                <a class="row-link" href={to(['find'], { then: kind })}>
                  {words.t(`kind.${kind}`)}
                </a>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

function OutNow({ answer }: { readonly answer: StrikesAnswer }) {
  const words = useWords();
  const open = answer.strikes.filter(({ returnedAt }) => returnedAt === null);
  const back = answer.strikes.filter(({ returnedAt }) => returnedAt !== null);
  return (
    <>
      {open.length === 0 ? (
        <p>{words.t('crew.no-strike-open')}</p>
      ) : (
        <ul class="plain-list cards">
          {open.map((strike) => (
            <StrikeCard key={strike.strikeId} strike={strike} answer={answer} />
          ))}
        </ul>
      )}
      {back.length > 0 && (
        <details>
          <summary>{words.t('crew.back', { count: back.length })}</summary>
          <ul class="plain-list cards">
            {back.slice(0, 20).map((strike) => (
              <StrikeCard key={strike.strikeId} strike={strike} answer={answer} />
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function StrikeCard({ strike, answer }: { readonly strike: StrikeState; readonly answer: StrikesAnswer }) {
  const words = useWords();
  const place = strike.hydrantId === null ? null : (answer.hydrants[strike.hydrantId]?.place ?? null);
  return (
    <li>
      <a class="card" href={to(['strike', strike.strikeId])}>
        <span class="card-title">{strikeTitle(strike, words)}</span>
        <StageTag strike={strike} />
        {place && <span class="place">{place}</span>}
        <span class="small soft">{words.t('form.since', { when: words.when(strike.since) })}</span>
        {strike.dispatchToldAt === null && strike.returnedAt === null && (
          <span class="small strong">{words.t('missing.dispatch')}</span>
        )}
      </a>
    </li>
  );
}
