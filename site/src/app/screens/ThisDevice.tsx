import { useEffect, useState } from 'preact/hooks';
import { formatQuantity } from '../../../../shared/units/format.ts';
import { locate } from '../core/locate.ts';
import { useObservable } from '../core/observable.ts';
import { to } from '../core/router.ts';
import { useWords } from '../core/words.ts';
import { offlineApp } from '../offline/app.ts';
import { askToKeep, durability, roomLeft } from '../offline/durable.ts';
import { queuedOf } from '../offline/localStrike.ts';
import { listsHere } from '../offline/lists.ts';
import { nearby, notePlace } from '../offline/nearby.ts';
import { entries } from '../outbox/outbox.ts';
import { EntryList } from './EntryList.tsx';

/** Below this the next photos may not fit. */
const LOW_BYTES = 200_000_000;

/** On the start screen, in one line: whether one may drive out of reach. */
export function DeviceLine() {
  const words = useWords();
  const { state } = useObservable(offlineApp);
  const count = useObservable(nearby)?.hydrants.length ?? 0;
  const lists = useObservable(listsHere);
  return (
    <p class="small">
      <a href={to(['outbox'])}>
        {state === 'ready' && lists
          ? words.t('offline.short.ready', { count })
          : words.t('offline.short.not')}
      </a>
    </p>
  );
}

/** Whether the app opens here with no signal, which hydrants are on the device, and whether the browser keeps it all. */
export function ThisDevice() {
  const words = useWords();
  const { state } = useObservable(offlineApp);
  const keeping = useObservable(durability);
  const lists = useObservable(listsHere);
  const [room, setRoom] = useState<number | null>(null);
  useEffect(() => void roomLeft().then(setRoom), []);
  return (
    <section>
      <h2>{words.t('offline.title')}</h2>
      <dl class="said spoken">
        <div>
          <dt>{words.t('offline.app')}</dt>
          <dd>{words.t(`offline.app.${state}`)}</dd>
        </div>
        <div>
          <dt>{words.t('offline.nearby')}</dt>
          <dd>
            <Around />
          </dd>
        </div>
        <div>
          <dt>{words.t('offline.lists')}</dt>
          <dd>{words.t(lists ? 'offline.lists.here' : 'offline.lists.none')}</dd>
        </div>
        <div>
          <dt>{words.t('offline.keeping')}</dt>
          <dd>
            {words.t(`offline.keeping.${keeping}`)}{' '}
            {keeping !== 'kept' && (
              <button type="button" class="plain" onClick={() => void askToKeep()}>
                {words.t('offline.keeping.ask')}
              </button>
            )}
          </dd>
        </div>
        {room !== null && room < LOW_BYTES && (
          <div>
            <dt>{words.t('offline.room')}</dt>
            <dd>{words.t('offline.room.low', { size: `${Math.floor(room / 1_000_000)} MB` })}</dd>
          </div>
        )}
      </dl>
    </section>
  );
}

function Around() {
  const words = useWords();
  const around = useObservable(nearby);
  const [denied, setDenied] = useState(false);
  const here = async (): Promise<void> => {
    const found = await locate();
    setDenied(!found.ok);
    if (found.ok) notePlace(found);
  };
  return (
    <>
      {around === null
        ? words.t('offline.nearby.none')
        : words.t('offline.nearby.known', {
            more: around.more ? 'yes' : 'no',
            count: around.hydrants.length,
            distance: formatQuantity(around.withinFt, 'ft', words),
            when: words.when(new Date(around.fetchedAt).toISOString()),
          })}{' '}
      <button type="button" class="plain" onClick={() => void here()}>
        {words.t('offline.nearby.here')}
      </button>
      {denied && <span role="status"> {words.t('offline.nearby.denied')}</span>}
    </>
  );
}

/** On a strike's page: what of it waits on this device. */
export function WaitingHere({ strikeId }: { readonly strikeId: string }) {
  const words = useWords();
  const queued = queuedOf(strikeId, useObservable(entries));
  if (queued.length === 0) return null;
  return (
    <section class="notice">
      <h2>{words.t('offline.waiting-here')}</h2>
      <p>{words.t('offline.local-strike')}</p>
      <EntryList entries={queued} />
    </section>
  );
}
