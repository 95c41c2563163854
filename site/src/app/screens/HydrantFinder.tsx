import { useEffect, useRef, useState } from 'preact/hooks';
import { hydrantOnTag } from '../../../../shared/inventory/tag.ts';
import { getJson, type Answer } from '../core/api.ts';
import { useObservable } from '../core/observable.ts';
import { lazy } from '../form/view/Lazy.tsx';
import {
  findNearby,
  hydrantNearby,
  nearby,
  nearestNearby,
  notePlace,
  type NearbyHydrant,
} from '../offline/nearby.ts';
import { locate } from '../core/locate.ts';
import type { FoundHydrant, HydrantsAnswer } from '../core/records.ts';
import { useWords } from '../core/words.ts';
import { mayScan } from '../scan/detector.ts';
import { HydrantLine } from './HydrantLine.tsx';

// Read when somebody opens them: most hydrants are found by position or number.
const Scanner = lazy(async () => (await import('../scan/Scanner.tsx')).Scanner);
const NearMap = lazy(async () => (await import('../nearMap/NearMap.tsx')).NearMap);

interface Props {
  readonly inputId: string;
  readonly labelledBy: string;
  /** A hydrant of this job, offered before anything is typed. */
  readonly suggested?: string | null;
  readonly onPick: (hydrantId: string) => void;
}

type State =
  | { readonly is: 'idle' | 'locating' | 'searching' | 'denied' | 'failed' | 'unreachable' }
  | { readonly is: 'found'; readonly hydrants: readonly FoundHydrant[] }
  | {
      readonly is: 'on-device';
      readonly hydrants: readonly (NearbyHydrant & { readonly distanceFt?: number })[];
    };

const MOST = 12;

/** A bad line is given this long before the device's own list is offered; the server's answer still replaces it. */
const PATIENCE_MS = 2_500;

/**
 * Finds a hydrant by its number or street, or by what is near. With no signal it looks in the list on this device, and
 * takes the number as typed.
 */
export function HydrantFinder({ inputId, labelledBy, suggested, onPick }: Props) {
  const words = useWords();
  const [text, setText] = useState('');
  const [state, setState] = useState<State>({ is: 'idle' });
  const typed = text.trim();
  const [way, setWay] = useState<'scan' | 'map' | null>(null);
  /** A number that came from a tag: where the list has exactly that one, it is taken with no further touch. */
  const fromTag = useRef<string | null>(null);

  const around = useObservable(nearby);

  /** Asks the server, and the device where it does not answer. `current` says whether anybody still waits for it. */
  const ask = async (
    query: string,
    onDevice: () => readonly NearbyHydrant[],
    current: () => boolean,
  ): Promise<void> => {
    const instead = (): void =>
      setState(nearby.get() === null ? { is: 'unreachable' } : { is: 'on-device', hydrants: onDevice() });
    const late = setTimeout(() => {
      if (current() && nearby.get() !== null) instead();
    }, PATIENCE_MS);
    const answer: Answer<HydrantsAnswer> = await getJson<HydrantsAnswer>(
      `/api/hydrants?${query}&limit=${MOST}`,
    );
    clearTimeout(late);
    if (!current()) return;
    if (answer.outcome === 'ok') setState({ is: 'found', hydrants: answer.value.hydrants });
    else instead();
  };

  useEffect(() => {
    if (typed === '') return undefined;
    let current = true;
    // Not at every letter: the network at a curb is slow.
    const timer = setTimeout(() => {
      setState({ is: 'searching' });
      void ask(
        `find=${encodeURIComponent(typed)}`,
        () => findNearby(typed, MOST),
        () => current,
      );
    }, 250);
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [typed]);

  const nearMe = async (): Promise<void> => {
    setWay(null);
    fromTag.current = null;
    setText('');
    setState({ is: 'locating' });
    const here = await locate();
    if (!here.ok) {
      setState({ is: here.why });
      return;
    }
    const near = `${here.latitudeDeg.toFixed(6)},${here.longitudeDeg.toFixed(6)}`;
    notePlace(here);
    await ask(
      `near=${near}`,
      () => nearestNearby(here, MOST),
      () => true,
    );
  };

  const found = state.is === 'found' || state.is === 'on-device' ? state.hydrants : [];
  const exact = found.some(({ hydrant }) => hydrant.hydrantId === typed);
  useEffect(() => {
    if (!exact || fromTag.current !== typed) return;
    fromTag.current = null;
    onPick(typed);
  }, [exact, typed]);
  const onCode = (hydrantId: string): void => {
    setWay(null);
    if (hydrantNearby(hydrantId) !== null) {
      onPick(hydrantId);
      return;
    }
    fromTag.current = hydrantId;
    setText(hydrantId);
  };
  const message =
    state.is === 'found'
      ? words.t(found.length < MOST ? 'finder.found' : 'finder.first', { count: found.length })
      : state.is === 'on-device'
        ? words.t('finder.on-device', {
            count: found.length,
            when: around === null ? '' : words.when(new Date(around.fetchedAt).toISOString()),
          })
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
          onInput={(event) => {
            fromTag.current = null;
            setWay(null);
            setText(event.currentTarget.value);
          }}
        />
      </div>
      <div class="ways">
        <button type="button" class="plain" onClick={() => void nearMe()}>
          {words.t('finder.near-me')}
        </button>
        {mayScan() && (
          <button
            type="button"
            class="plain"
            aria-expanded={way === 'scan'}
            onClick={() => setWay(way === 'scan' ? null : 'scan')}
          >
            {words.t('scan.tag')}
          </button>
        )}
        <button
          type="button"
          class="plain"
          aria-expanded={way === 'map'}
          onClick={() => setWay(way === 'map' ? null : 'map')}
        >
          {words.t('near-map.open')}
        </button>
      </div>
      <p class="help" id={`${inputId}-how`}>
        {words.t('finder.how')} {!mayScan() && words.t('scan.none')}
      </p>
      {way === 'scan' && (
        <Scanner
          title={words.t('scan.title.tag')}
          read={hydrantOnTag}
          onCode={onCode}
          onClose={() => setWay(null)}
        />
      )}
      {way === 'map' && <NearMap onPick={onPick} />}
      {suggested && typed === '' && state.is === 'idle' && (
        <button type="button" class="plain" onClick={() => onPick(suggested)}>
          <span>
            {words.t('finder.this-one')} <span class="nowrap">{suggested}</span>
          </span>
        </button>
      )}
      {/* The map has a list of its own: two lists of the same hydrants would be one too many. */}
      <p role="status" class="help">
        {way === 'map' ? '' : message}
      </p>
      {way !== 'map' && found.length > 0 && (
        <ul class="plain-list results">
          {found.map(({ hydrant, inService, distanceFt }) => (
            <li key={hydrant.hydrantId}>
              <button type="button" class="card-button" onClick={() => onPick(hydrant.hydrantId)}>
                <HydrantLine
                  id={hydrant.hydrantId}
                  hydrant={hydrant}
                  // An older list may say that one is out; that one is in service, nobody may take from it.
                  inService={state.is === 'on-device' && inService ? null : inService}
                  distanceFt={distanceFt}
                />
              </button>
            </li>
          ))}
        </ul>
      )}
      {typed !== '' && ['found', 'on-device', 'unreachable'].includes(state.is) && !exact && (
        <button type="button" class="plain" onClick={() => onPick(typed)}>
          {words.t('finder.as-typed', { text: typed })}
        </button>
      )}
    </div>
  );
}
