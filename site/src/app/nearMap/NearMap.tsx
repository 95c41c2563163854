import { useEffect, useRef, useState } from 'preact/hooks';
import { compassPoint, greatCircleFt, initialBearingDeg } from '../../../../shared/nearest/sphere.ts';
import { formatQuantity } from '../../../../shared/units/format.ts';
import { getJson } from '../core/api.ts';
import { locate } from '../core/locate.ts';
import type { HydrantsAnswer } from '../core/records.ts';
import { useWords } from '../core/words.ts';
import { nearby, nearestNearby, notePlace } from '../offline/nearby.ts';
import { HydrantLine } from '../screens/HydrantLine.tsx';
import { Drawing } from './Drawing.tsx';
import type { Here, MapHydrant } from './onMap.ts';
import { offsetFrom, reachesFt, reachFor } from './project.ts';

const MOST = 80;
const LISTED = 12;
const PATIENCE_MS = 2_500;

type Read = { readonly hydrants: readonly MapHydrant[]; readonly asOf: number | null };

/** The hydrants around, drawn from their own positions: no tiles, no streets, nothing to load where there is no signal. */
export function NearMap({ onPick }: { readonly onPick: (hydrantId: string) => void }) {
  const words = useWords();
  const [here, setHere] = useState<Here | null | 'asking'>('asking');
  const [read, setRead] = useState<Read | null>(null);
  const [reach, setReach] = useState<number | null>(null);
  const [chosen, setChosen] = useState<readonly string[]>([]);

  useEffect(() => {
    let over = false;
    const begin = async (): Promise<void> => {
      const found = await locate();
      if (over) return;
      const last = nearby.get()?.center ?? null;
      const place: Here | null = found.ok ? found : last ? { ...last, accuracyM: null } : null;
      setHere(place);
      if (!place) return;
      if (found.ok) notePlace(found);
      const show = (
        hydrants: readonly Omit<MapHydrant, 'distanceFt' | 'bearing'>[],
        asOf: number | null,
      ): void => {
        if (over) return;
        const around = hydrants
          .map((each) => ({
            ...each,
            distanceFt: greatCircleFt(place, each.hydrant),
            bearing: compassPoint(initialBearingDeg(place, each.hydrant)),
          }))
          .sort((a, b) => a.distanceFt - b.distanceFt);
        setRead({ hydrants: around, asOf });
        setReach((before) => before ?? reachFor(around.map(({ distanceFt }) => distanceFt)));
        setChosen((before) => (before.length > 0 || !around[0] ? before : [around[0].hydrant.hydrantId]));
      };
      const onDevice = (): void => {
        const known = nearby.get();
        if (known)
          show(
            // An older list may say that one is out; that one is in service, nobody may take from it.
            nearestNearby(place, MOST).map(({ hydrant, inService }) => ({
              hydrant,
              inService: inService ? null : false,
            })),
            known.fetchedAt,
          );
        else show([], null);
      };
      const late = setTimeout(onDevice, PATIENCE_MS);
      const near = `${place.latitudeDeg.toFixed(6)},${place.longitudeDeg.toFixed(6)}`;
      const answer = await getJson<HydrantsAnswer>(`/api/hydrants?near=${near}&limit=${MOST}`);
      clearTimeout(late);
      if (answer.outcome === 'ok') show(answer.value.hydrants, null);
      else onDevice();
    };
    void begin();
    return () => {
      over = true;
    };
  }, []);

  const box = useRef<HTMLElement>(null);
  const drawn = read !== null;
  // The map as a whole above the bar at the foot.
  useEffect(() => box.current?.scrollIntoView({ block: 'start' }), [drawn]);

  if (here === 'asking') return <p role="status">{words.t('finder.locating')}</p>;
  if (here === null) return <p role="status">{words.t('near-map.no-place')}</p>;
  if (!read || reach === null) return <p role="status">{words.t('finder.searching')}</p>;

  const shown = read.hydrants.filter(({ distanceFt }) => distanceFt <= reach);
  const picked = shown.filter(({ hydrant }) => chosen.includes(hydrant.hydrantId));
  const step = (reachesFt as readonly number[]).indexOf(reach);
  const distance = formatQuantity(reach, 'ft', words);
  const title = words.t(here.accuracyM === null ? 'near-map.title-place' : 'near-map.title');
  const line = ({ hydrant, inService, distanceFt, bearing }: MapHydrant) => (
    <HydrantLine id={hydrant.hydrantId} {...{ hydrant, inService, distanceFt, bearing }} />
  );
  return (
    <section class="near-map" ref={box} aria-label={title}>
      <h3>{title}</h3>
      {read.asOf !== null && (
        <p class="help">
          {words.t('near-map.on-device', { when: words.when(new Date(read.asOf).toISOString()) })}
        </p>
      )}
      <div class="map-and-list">
        <div>
          <Drawing
            title={title}
            here={here}
            reachFt={reach}
            marks={shown.map((each) => ({ ...each, ...offsetFrom(here, each.hydrant) }))}
            chosen={chosen}
            choose={setChosen}
          />
          <div class="actions zoom">
            <button
              type="button"
              class="plain"
              disabled={step <= 0}
              onClick={() => setReach(reachesFt[step - 1] ?? reach)}
            >
              {words.t('near-map.in')}
            </button>
            <button
              type="button"
              class="plain"
              disabled={step >= reachesFt.length - 1}
              onClick={() => setReach(reachesFt[step + 1] ?? reach)}
            >
              {words.t('near-map.out')}
            </button>
          </div>
          <p class="help">{words.t('near-map.no-streets')}</p>
        </div>
        <div>
          <div role="status">
            {shown.length === 0 && <p>{words.t('near-map.none', { distance })}</p>}
            {picked.length > 1 && <p class="strong">{words.t('near-map.several')}</p>}
          </div>
          {picked.map((each) => (
            <div class="chosen" key={each.hydrant.hydrantId}>
              {line(each)}
              <button type="button" class="primary" onClick={() => onPick(each.hydrant.hydrantId)}>
                {words.t('near-map.take', { hydrantId: each.hydrant.hydrantId })}
              </button>
            </div>
          ))}
          {shown.length > 0 && <p class="help">{words.t('near-map.touch')}</p>}
          <ul class="plain-list results">
            {shown.slice(0, LISTED).map((each) => (
              <li key={each.hydrant.hydrantId}>
                <button type="button" class="card-button" onClick={() => onPick(each.hydrant.hydrantId)}>
                  {line(each)}
                </button>
              </li>
            ))}
          </ul>
        </div>
      </div>
    </section>
  );
}
