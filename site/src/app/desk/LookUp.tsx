import { useState } from 'preact/hooks';
import { LEAST_FIND, type Hit } from '../../../../shared/search/search.ts';
import { postJson, type Answer } from '../core/api.ts';
import { to } from '../core/router.ts';
import { useWords } from '../core/words.ts';
import { sayFailed } from '../screens/sayFailed.ts';

interface Found {
  readonly hits: readonly Hit[];
  readonly more: number;
}
type State = 'idle' | 'looking' | { readonly find: string; readonly answer: Answer<Found> };

/** Looks a case up by what an adjuster says on the telephone: a number, a day, a plate, or half of one. */
export function LookUp() {
  const words = useWords();
  const [find, setFind] = useState('');
  const [state, setState] = useState<State>('idle');
  const look = async (event: Event): Promise<void> => {
    event.preventDefault();
    const wanted = find.trim();
    if (wanted.length < LEAST_FIND) return;
    setState('looking');
    setState({ find: wanted, answer: await postJson<Found>('/api/search', { find: wanted }) });
  };
  return (
    <search class="look-up">
      <form onSubmit={(event) => void look(event)}>
        <label for="look-up">{words.t('search.find')}</label>
        <div class="look-up-line">
          <input
            id="look-up"
            type="search"
            autocomplete="off"
            spellcheck={false}
            maxLength={80}
            value={find}
            onInput={(event) => setFind(event.currentTarget.value)}
          />
          <button type="submit" disabled={state === 'looking'}>
            {words.t('search.title')}
          </button>
        </div>
      </form>
      <div role="status">
        {state === 'looking' && <p>{words.t('screen.reading')}</p>}
        {typeof state === 'object' &&
          (state.answer.outcome === 'ok' ? (
            <Hits find={state.find} {...state.answer.value} />
          ) : (
            <div class="notice">
              {sayFailed(state.answer, words).map((line) => (
                <p key={line}>{line}</p>
              ))}
            </div>
          ))}
      </div>
    </search>
  );
}

function Hits({ find, hits, more }: Found & { readonly find: string }) {
  const words = useWords();
  if (hits.length === 0) return <p>{words.t('search.none', { find })}</p>;
  return (
    <>
      <ul class="look-up-hits plain-list">
        {hits.map((hit) => (
          <li key={hit.strikeId}>
            <a href={to(['strike', hit.strikeId])}>
              {hit.hydrantId ?? hit.placeDescription ?? words.t('title.hydrant-unknown')}
            </a>{' '}
            <span>{words.day(hit.struckOn)}</span>{' '}
            {hit.claims.map(({ claimId, claimNumber }) => (
              <a key={claimId} href={to(['claim', claimId])}>
                {words.t('search.claim', { claimNumber })}
              </a>
            ))}{' '}
            <span class="small soft">{hit.by.map((way) => words.t(`search.by.${way}`)).join(', ')}</span>
          </li>
        ))}
      </ul>
      {more > 0 && <p class="small">{words.t('search.more', { count: more })}</p>}
    </>
  );
}
