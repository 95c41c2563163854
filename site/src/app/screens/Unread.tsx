import { useWords } from '../core/words.ts';
import type { Resource } from '../core/resource.ts';
import { sayFailed } from './sayFailed.ts';

/**
 * What stands where nothing could be read yet. A fault is never shown as an empty result: it says what is the matter
 * and offers to try again. With an older answer on screen it says how old that is.
 */
export function Unread({
  resource,
}: {
  readonly resource: Resource<unknown> & { readonly reload: () => void };
}) {
  const words = useWords();
  const { failed, value, fetchedAt } = resource;
  if (!failed) return value === null ? <p role="status">{words.t('screen.reading')}</p> : null;
  return (
    <div class="notice" role="status">
      {sayFailed(failed, words).map((line) => (
        <p key={line}>{line}</p>
      ))}
      {fetchedAt !== null && (
        <p>{words.t('screen.as-of', { when: words.when(new Date(fetchedAt).toISOString()) })}</p>
      )}
      <p>
        <button type="button" class="plain" onClick={resource.reload}>
          {words.t('screen.try-again')}
        </button>
      </p>
    </div>
  );
}
