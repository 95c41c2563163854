import { useObservable } from '../core/observable.ts';
import { route, to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { entries } from '../outbox/outbox.ts';
import { TellDispatch } from './TellDispatch.tsx';

/** Kinds that take a hydrant out of service: until one is recorded, dispatch knows nothing of it. */
export const takesOut = (kind: string): boolean => kind === 'strike' || kind === 'outage';

/** On every screen: an outage that the server has not confirmed, and a count of everything else that waits. */
export function UnsentBanner({ area }: { readonly area: 'crew' | 'desk' | 'sign-in' }) {
  const words = useWords();
  const at = useObservable(route).path;
  const current = useObservable(session);
  const mine = useObservable(entries).filter(
    ({ author }) => author.personId === current?.personId || current === null,
  );
  const unsent = mine.filter(({ state }) => state !== 'recorded');
  if (mine.length === 0) return null;
  const base = area === 'desk' ? '/desk/' : '/crew/';
  const link = `${base}${to(['outbox'])}`;
  // The entry's own screen says it in full.
  const outages = unsent.filter(({ submission }) => takesOut(submission.kind));
  if (at.startsWith('#/outbox')) return null;
  return (
    <>
      {outages.length > 0 && (
        <TellDispatch>
          <a href={link}>{words.t('outbox.unsent-outages', { count: outages.length })}</a>
        </TellDispatch>
      )}
      <p class="unsent">
        <a href={link}>{words.t('outbox.waiting', { count: mine.length })}</a>
      </p>
    </>
  );
}
