import { useObservable } from '../core/observable.ts';
import { draftsChanged, draftsOf } from '../core/drafts.ts';
import { to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import type { Entry } from '../outbox/database.ts';
import { entries, receipts } from '../outbox/outbox.ts';
import { sendAll } from '../outbox/send.ts';
import { Heading } from './Heading.tsx';
import { ThisDevice } from './ThisDevice.tsx';

/** What has not been sent, what is unfinished, and what was confirmed lately: `#/outbox`. */
export function OutboxScreen() {
  const words = useWords();
  const current = useObservable(session);
  const all = useObservable(entries);
  const confirmed = useObservable(receipts).filter(({ authorId }) => authorId === current?.personId);
  const mine = all.filter(({ author }) => author.personId === current?.personId);
  const others = all.filter(({ author }) => author.personId !== current?.personId);
  return (
    <>
      <Heading title={words.t('outbox.title')}>{words.t('outbox.title')}</Heading>
      <p class="lead">{words.t('outbox.lead')}</p>
      <section>
        <h2>{words.t('outbox.mine')}</h2>
        {mine.length === 0 ? <p>{words.t('outbox.none')}</p> : <EntryList entries={mine} />}
        {mine.length > 0 && (
          <p>
            <button type="button" class="plain" onClick={() => void sendAll()}>
              {words.t('outbox.send-now')}
            </button>
          </p>
        )}
      </section>
      {others.length > 0 && (
        <section>
          <h2>{words.t('outbox.others')}</h2>
          <p>{words.t('outbox.others-more')}</p>
          <EntryList entries={others} />
        </section>
      )}
      <DraftList />
      {confirmed.length > 0 && (
        <section>
          <h2>{words.t('outbox.confirmed')}</h2>
          <ul class="plain-list lines">
            {confirmed.slice(0, 10).map((receipt) => (
              <li key={receipt.submissionId}>
                <a href={to(['outbox', receipt.submissionId])}>{words.t(`kind.${receipt.kind}`)}</a>
                {receipt.about.hydrantId && ` · ${receipt.about.hydrantId}`}
                <br />
                <span class="small soft">
                  {words.t('outbox.recorded-at', { when: words.when(receipt.recordedAt) })}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {location.pathname.startsWith('/crew') && <ThisDevice />}
    </>
  );
}

export function EntryList({ entries: listed }: { readonly entries: readonly Entry[] }) {
  const words = useWords();
  return (
    <ul class="plain-list lines">
      {listed.map((entry) => (
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
