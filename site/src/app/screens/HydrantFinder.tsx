import { useEffect, useState } from 'preact/hooks';
import { getJson, type Answer } from '../core/api.ts';
import { locate } from '../core/locate.ts';
import type { FoundHydrant, HydrantsAnswer } from '../core/records.ts';
import { useWords } from '../core/words.ts';
import { HydrantLine } from './HydrantLine.tsx';

interface Props {
  readonly inputId: string;
  readonly labelledBy: string;
  /** A hydrant of this job, offered before anything is typed. */
  readonly suggested?: string | null;
  readonly onPick: (hydrantId: string) => void;
}

type State =
  | { readonly is: 'idle' | 'locating' | 'searching' | 'denied' | 'failed' | 'unreachable' }
  | { readonly is: 'found'; readonly hydrants: readonly FoundHydrant[] };

const MOST = 12;

/** Finds a hydrant by its number or street, or by what is near; with no signal it takes the number as typed. */
export function HydrantFinder({ inputId, labelledBy, suggested, onPick }: Props) {
  const words = useWords();
  const [text, setText] = useState('');
  const [state, setState] = useState<State>({ is: 'idle' });
  const typed = text.trim();

  const show = (answer: Answer<HydrantsAnswer>): void =>
    setState(
      answer.outcome === 'ok' ? { is: 'found', hydrants: answer.value.hydrants } : { is: 'unreachable' },
    );

  useEffect(() => {
    if (typed === '') return undefined;
    let current = true;
    // Not at every letter: the network at a curb is slow.
    const timer = setTimeout(() => {
      setState({ is: 'searching' });
      void getJson<HydrantsAnswer>(`/api/hydrants?find=${encodeURIComponent(typed)}&limit=${MOST}`).then(
        (answer) => {
          if (current) show(answer);
        },
      );
    }, 250);
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [typed]);

  const nearMe = async (): Promise<void> => {
    setText('');
    setState({ is: 'locating' });
    const here = await locate();
    if (!here.ok) {
      setState({ is: here.why });
      return;
    }
    const near = `${here.latitudeDeg.toFixed(6)},${here.longitudeDeg.toFixed(6)}`;
    show(await getJson<HydrantsAnswer>(`/api/hydrants?near=${near}&limit=${MOST}`));
  };

  const found = state.is === 'found' ? state.hydrants : [];
  const exact = found.some(({ hydrant }) => hydrant.hydrantId === typed);
  const message =
    state.is === 'found'
      ? words.t(found.length < MOST ? 'finder.found' : 'finder.first', { count: found.length })
      : state.is === 'idle'
        ? ''
        : words.t(`finder.${state.is}`);

  return (
    <div class="finder">
      <div class="with-button">
        <input
          id={inputId}
          type="search"
          aria-labelledby={labelledBy}
          aria-describedby={`${inputId}-how`}
          autocomplete="off"
          autocapitalize="characters"
          spellcheck={false}
          value={text}
          onInput={(event) => setText(event.currentTarget.value)}
        />
        <button type="button" class="plain" onClick={() => void nearMe()}>
          {words.t('finder.near-me')}
        </button>
      </div>
      <p class="help" id={`${inputId}-how`}>
        {words.t('finder.how')}
      </p>
      {suggested && typed === '' && state.is === 'idle' && (
        <button type="button" class="plain" onClick={() => onPick(suggested)}>
          {words.t('finder.this-one', { hydrantId: suggested })}
        </button>
      )}
      <p role="status" class="help">
        {message}
      </p>
      {found.length > 0 && (
        <ul class="plain-list results">
          {found.map(({ hydrant, inService, distanceFt }) => (
            <li key={hydrant.hydrantId}>
              <button type="button" class="card-button" onClick={() => onPick(hydrant.hydrantId)}>
                <HydrantLine
                  id={hydrant.hydrantId}
                  hydrant={hydrant}
                  inService={inService}
                  distanceFt={distanceFt}
                />
              </button>
            </li>
          ))}
        </ul>
      )}
      {typed !== '' && (state.is === 'found' || state.is === 'unreachable') && !exact && (
        <button type="button" class="plain" onClick={() => onPick(typed)}>
          {words.t('finder.as-typed', { text: typed })}
        </button>
      )}
    </div>
  );
}
