import { editionOn } from '../../../../shared/costs/editions.ts';
import type { RateBookEdition } from '../../../../shared/costs/rateBook.ts';
import { useObservable } from '../core/observable.ts';
import { useRateBooks } from '../core/records.ts';
import { route, to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { localDay } from '../form/localTime.ts';
import { Heading } from '../screens/Heading.tsx';
import { mayWrite } from '../screens/may.ts';
import { NotFound } from '../screens/NotFound.tsx';
import { DraftList } from '../screens/EntryList.tsx';
import { Unread } from '../screens/Unread.tsx';
import { daysOf } from './daysOf.ts';
import { EditionView } from './EditionView.tsx';
import { NewEdition } from './NewEdition.tsx';
import { Withdrawn, WithdrawnList } from './Withdrawn.tsx';
import { WithdrawEdition } from './WithdrawEdition.tsx';

/** The rate book: `#/rates` its editions, `#/rates/<id>` one of them, `#/rates/<id>/new` a new one made from it. */
export function Rates() {
  const { parts } = useObservable(route);
  const [, editionId, action] = parts;
  if (action === 'new') return <NewEdition fromId={editionId ?? ''} />;
  return editionId === undefined ? <EditionList /> : <EditionScreen editionId={editionId} />;
}

/** Where an edition stands today: in force, to come, or past. */
function standing(edition: RateBookEdition, editions: readonly RateBookEdition[], today: string): string {
  if (editionOn(today, editions).edition?.editionId === edition.editionId) return 'in-force';
  return edition.effectiveFrom > today ? 'to-come' : 'past';
}

function EditionList() {
  const words = useWords();
  const current = useObservable(session);
  const books = useRateBooks();
  const today = localDay(new Date(), words.zone);
  const editions = [...(books.value?.editions ?? [])].sort((a, b) =>
    a.effectiveFrom < b.effectiveFrom ? 1 : -1,
  );
  const title = words.t('rates.title');
  const newest = editions[0];
  return (
    <>
      <p class="trail">
        <a href="#/">{words.t('shell.desk')}</a>
      </p>
      <Heading title={title}>{title}</Heading>
      <p class="lead">{words.t('rates.lead')}</p>
      <DraftList />
      <Unread resource={books} />
      {books.value && editions.length === 0 && <p>{words.t('rates.none')}</p>}
      {editions.length > 0 && (
        <ul class="plain-list cards">
          {editions.map((edition) => (
            <li class="card" key={edition.editionId}>
              <h2 class="card-title">
                <a href={to(['rates', edition.editionId])}>{edition.title}</a>
              </h2>
              <p>
                <span class="tag">{words.t(`rates.standing.${standing(edition, editions, today)}`)}</span>{' '}
                {edition.editionId} · {daysOf(edition, words)}
              </p>
              <p class="small soft">
                {words.t('rates.counts', {
                  labor: edition.labor.length,
                  machines: edition.machines.length,
                  stock: edition.stock.length,
                })}
              </p>
              <p class="small soft">
                {words.t('rates.by')}{' '}
                {edition.authorities
                  .map(({ title: paper, edition: of }) => [paper, of].filter(Boolean).join(', '))
                  .join('; ')}
              </p>
            </li>
          ))}
        </ul>
      )}
      {books.value && <WithdrawnList withdrawn={books.value.withdrawn} />}
      {books.value && mayWrite(current, 'rate-book') && (
        <p class="actions">
          <a
            class="button primary"
            href={newest ? to(['rates', newest.editionId, 'new']) : to(['new', 'rate-book'])}
          >
            {words.t(newest ? 'rates.new-from-newest' : 'rates.new-first')}
          </a>
        </p>
      )}
    </>
  );
}

function EditionScreen({ editionId }: { readonly editionId: string }) {
  const words = useWords();
  const current = useObservable(session);
  const books = useRateBooks();
  const edition = books.value?.editions.find((each) => each.editionId === editionId);
  const record = books.value?.records.find((each) => each.editionId === editionId);
  const withdrawn = books.value?.withdrawn.find((each) => each.editionId === editionId);
  if (!edition && withdrawn) return <Withdrawn withdrawn={withdrawn} />;
  if (books.value && !edition) return <NotFound />;
  const title = edition?.title ?? editionId;
  return (
    <>
      <p class="trail">
        <a href="#/">{words.t('shell.desk')}</a> / <a href="#/rates">{words.t('rates.title')}</a>
      </p>
      <Heading title={title}>{title}</Heading>
      <Unread resource={books} />
      {edition && (
        <>
          <p class="lead">
            {edition.editionId} · {daysOf(edition, words)}
          </p>
          <p>{words.t('rates.never-edited')}</p>
          {mayWrite(current, 'rate-book') && (
            <p class="actions">
              <a class="button primary" href={to(['rates', editionId, 'new'])}>
                {words.t('rates.new-from-this')}
              </a>
            </p>
          )}
          {record && current && mayWrite(current, 'rate-book') && (
            <WithdrawEdition record={record} author={current} key={record.latestId} />
          )}
          <EditionView edition={edition} />
        </>
      )}
    </>
  );
}
