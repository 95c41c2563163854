import { draftsChanged, draftsOf } from '../core/drafts.ts';
import { useObservable } from '../core/observable.ts';
import { to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import type { Entry } from '../outbox/database.ts';
import { entries } from '../outbox/outbox.ts';

/** The next ones to leave. A list of hundreds would be drawn again for each that does. */
const MOST_SHOWN = 50;

/** Entries on their way, each with its state and why the last try failed. */
export function EntryList({ entries: listed }: { readonly entries: readonly Entry[] }) {
  const words = useWords();
  // One that was refused waits for somebody: it is shown wherever it stands.
  const shown = listed.filter(({ state }, index) => index < MOST_SHOWN || state === 'refused');
  const left = listed.length - shown.length;
  return (
    <ul class="plain-list lines">
      {shown.map((entry) => (
        <li key={entry.submissionId}>
          <a href={to(['outbox', entry.submissionId])}>
            {words.t(`kind.${entry.draft.kind}`)}
            {entry.draft.about.hydrantId && ` · ${entry.draft.about.hydrantId}`}
          </a>{' '}
          <span class={entry.state === 'recorded' ? 'tag' : 'tag out'}>
            {words.t(`outbox.state.${entry.state}`)}
          </span>
          <br />
          <span class="small soft">
            {words.t('outbox.written', { who: entry.author.name, when: words.when(entry.queuedAt) })}
            {entry.lastError && ` ${words.t(`outbox.error.${entry.lastError}`)}`}
          </span>
        </li>
      ))}
      {left > 0 && <li>{words.t('outbox.more', { count: left })}</li>}
    </ul>
  );
}

/** Forms that were begun and not sent. */
export function DraftList() {
  const words = useWords();
  useObservable(draftsChanged);
  const waiting = useObservable(entries);
  const drafts = draftsOf(useObservable(session)?.personId ?? '').filter(
    ({ submissionId }) => !waiting.some((entry) => entry.submissionId === submissionId),
  );
  if (drafts.length === 0) return null;
  return (
    <section>
      <h2>{words.t('outbox.drafts')}</h2>
      <ul class="plain-list lines">
        {drafts.map((draft) => (
          <li key={draft.submissionId}>
            <a href={to(['form', draft.submissionId])}>
              {draft.corrects ? `${words.t('kind.correction')}: ` : ''}
              {words.t(`kind.${draft.kind}`)}
              {draft.about.hydrantId && ` · ${draft.about.hydrantId}`}
            </a>
            <br />
            <span class="small soft">{words.t('outbox.begun', { when: words.when(draft.openedAt) })}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
