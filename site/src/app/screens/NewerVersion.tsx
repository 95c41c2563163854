import { useObservable } from '../core/observable.ts';
import { useWords } from '../core/words.ts';
import { offlineApp, takeNewer } from '../offline/app.ts';

/** A newer version waits until somebody says so: a form that is open is never taken away. */
export function NewerVersion() {
  const words = useWords();
  if (!useObservable(offlineApp).newer) return null;
  return (
    <div class="notice" role="status">
      <p>
        {words.t('offline.newer')} {words.t('offline.newer-more')}
      </p>
      <p>
        <button type="button" class="plain" onClick={takeNewer}>
          {words.t('offline.newer-take')}
        </button>
      </p>
    </div>
  );
}
