import { useObservable } from '../core/observable.ts';
import { route, to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { entries } from '../outbox/outbox.ts';
import { unsentFor } from '../outbox/takesOut.ts';
import { TellDispatch } from './TellDispatch.tsx';

/** On every screen: an outage that the server has not confirmed, and a count of everything else that waits. */
export function UnsentBanner({ area }: { readonly area: 'crew' | 'desk' | 'sign-in' }) {
  const words = useWords();
  const at = useObservable(route).path;
  const current = useObservable(session);
  const { mine, outages } = unsentFor(useObservable(entries), current?.personId ?? null);
  if (mine === 0 && outages === 0) return null;
  const base = area === 'desk' ? '/desk/' : '/crew/';
  const link = `${base}${to(['outbox'])}`;
  // The entry's own screen says it in full.
  if (at.startsWith('#/outbox')) return null;
  return (
    <>
      {outages > 0 && (
        <TellDispatch>
          <a href={link}>{words.t('outbox.unsent-outages', { count: outages })}</a>
        </TellDispatch>
      )}
      {mine > 0 && (
        <p class="unsent">
          <a href={link}>{words.t('outbox.waiting', { count: mine })}</a>
        </p>
      )}
    </>
  );
}
