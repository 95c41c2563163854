import { useFocusOfList } from '../core/focus.ts';
import { useObservable } from '../core/observable.ts';
import { to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { entries, receipts } from '../outbox/outbox.ts';
import { sendAll } from '../outbox/send.ts';
import { DraftList, EntryList } from './EntryList.tsx';
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
  const { heading, onFocusIn } = useFocusOfList<HTMLHeadingElement>(mine.length);
  return (
    <>
      <Heading title={words.t('outbox.title')}>{words.t('outbox.title')}</Heading>
      <p class="lead">{words.t('outbox.lead')}</p>
      <section onFocusIn={onFocusIn}>
        <h2 tabIndex={-1} ref={heading}>
          {words.t('outbox.mine')}
        </h2>
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
