import type { ComponentChildren } from 'preact';
import { useObservable } from '../core/observable.ts';
import { utility } from '../core/utility.ts';
import { useWords } from '../core/words.ts';

/** The words that must stand until the server has confirmed an outage. Large, plain, with the number to call. */
export function TellDispatch({ children }: { readonly children?: ComponentChildren }) {
  const words = useWords();
  const dispatch = useObservable(utility)?.dispatch;
  return (
    <div class="warning not-sent" role="alert">
      <p class="large">
        <strong>{words.t('outbox.not-sent')}</strong>
      </p>
      <p class="large">
        <strong>{words.t('outbox.tell-dispatch')}</strong>
      </p>
      {dispatch && (
        <p>
          {dispatch.name}: <a href={`tel:${dispatch.phone}`}>{dispatch.phone}</a>
        </p>
      )}
      {children && <p>{children}</p>}
    </div>
  );
}
