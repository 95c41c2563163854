import { newId } from '../core/device.ts';
import { keepDraft } from '../core/drafts.ts';
import { useObservable } from '../core/observable.ts';
import { go, route, to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import type { Entry, Receipt } from '../outbox/database.ts';
import { discardEntry, entries, receipts, replaceEntry } from '../outbox/outbox.ts';
import { sendAll } from '../outbox/send.ts';
import { takesOut } from '../outbox/takesOut.ts';
import { formOfKind, formsRead } from '../form/specs/byKind.ts';
import { sayProblem } from '../../../../shared/words/index.ts';
import { Heading } from './Heading.tsx';
import { NotFound } from './NotFound.tsx';
import { TellDispatch } from './TellDispatch.tsx';
import { TwoTouches } from './TwoTouches.tsx';

/** What became of one submission: `#/outbox/<submissionId>`. It follows the sending as it happens. */
export function EntryScreen() {
  const submissionId = useObservable(route).parts[1] ?? '';
  const entry = useObservable(entries).find((each) => each.submissionId === submissionId);
  const receipt = useObservable(receipts).find((each) => each.submissionId === submissionId);
  if (entry) return <Waiting entry={entry} />;
  return receipt ? <Confirmed receipt={receipt} /> : <NotFound />;
}

const nameOf = ({ draft }: Entry, t: (key: string) => string): string =>
  [draft.corrects ? `${t('kind.correction')}: ` : '', t(`kind.${draft.kind}`)].join('');

function Waiting({ entry }: { readonly entry: Entry }) {
  const words = useWords();
  const current = useObservable(session);
  const own = current?.personId === entry.author.personId;
  const title = nameOf(entry, words.t);
  const photosLeft = entry.photos.filter(({ state }) => state === 'awaited').length;
  return (
    <>
      <Heading title={title}>{title}</Heading>
      {entry.state !== 'recorded' && takesOut(entry) && <TellDispatch />}
      {entry.state === 'recorded' ? (
        <div class="good-news" role="status">
          <p class="large">
            <strong>{words.t('outbox.recorded')}</strong>
          </p>
          <p>{words.t('outbox.photos-left', { count: photosLeft })}</p>
        </div>
      ) : (
        <div class="notice" role="status">
          <p class="large">
            <strong>{words.t(`outbox.state.${entry.state}`)}</strong>
          </p>
          <p>{words.t(entry.state === 'refused' ? 'outbox.refused-more' : 'outbox.waiting-more')}</p>
        </div>
      )}
      <dl class="said">
        <div>
          <dt>{words.t('outbox.author')}</dt>
          <dd>{entry.author.name}</dd>
        </div>
        <div>
          <dt>{words.t('outbox.queued')}</dt>
          <dd>{words.when(entry.queuedAt)}</dd>
        </div>
        {entry.lastTriedAt && (
          <div>
            <dt>{words.t('outbox.last-tried')}</dt>
            <dd>
              {words.when(entry.lastTriedAt)}
              {entry.lastError && `: ${words.t(`outbox.error.${entry.lastError}`)}`}
            </dd>
          </div>
        )}
      </dl>
      {entry.state === 'refused' && (
        <ul>
          {entry.problems.map((found, index) => (
            <li key={index}>{sayProblem(words.locale, found)}</li>
          ))}
        </ul>
      )}
      <p class="actions">
        {entry.state === 'refused' && own && <Mend entry={entry} />}
        {entry.state !== 'refused' && own && (
          <button type="button" class="plain" onClick={() => void sendAll()}>
            {words.t('outbox.send-now')}
          </button>
        )}
        {own && entry.submission.kind !== 'link' && entry.submission.subject.type === 'strike' && (
          <a class="button" href={to(['strike', entry.submission.subject.strikeId])}>
            {words.t('offline.go-on')}
          </a>
        )}
        {entry.state !== 'refused' && !own && current && (
          <button type="button" class="plain" onClick={() => void sendAll(entry.submissionId)}>
            {words.t('outbox.deliver', { who: entry.author.name })}
          </button>
        )}
      </p>
      {entry.state === 'refused' && !own && (
        <p>{words.t('outbox.author-mends', { who: entry.author.name })}</p>
      )}
      {entry.state === 'refused' && own && <GiveUp entry={entry} />}
    </>
  );
}

/** Opens the refused entry as it was typed. Content that the server already holds under this id needs a new id. */
function Mend({ entry }: { readonly entry: Entry }) {
  const words = useWords();
  const idTaken = entry.problems.some(({ code }) => code === 'id-reused');
  const mend = (): void => {
    const draft = idTaken ? { ...entry.draft, submissionId: newId() } : entry.draft;
    // Until its words are kept under the new id, the entry is the only copy.
    const kept = keepDraft({ ...draft, touched: true });
    if (idTaken && kept) void replaceEntry(entry);
    go(to(['form', draft.submissionId]));
  };
  useObservable(formsRead);
  return formOfKind(entry.draft.kind) ? (
    <button type="button" class="primary" onClick={mend}>
      {words.t('outbox.mend')}
    </button>
  ) : null;
}

function GiveUp({ entry }: { readonly entry: Entry }) {
  const words = useWords();
  return (
    <p>
      <TwoTouches
        label={words.t('outbox.give-up')}
        onSure={() => void discardEntry(entry).then(() => go('#/'))}
      />
    </p>
  );
}

function Confirmed({ receipt }: { readonly receipt: Receipt }) {
  const words = useWords();
  const { kind, about, submission, recordedAt } = receipt;
  const title = words.t(`kind.${kind}`);
  const { subject } = submission;
  const strikeId = subject.type === 'strike' ? subject.strikeId : about.strikeId;
  const claimId = subject.type === 'claim' ? subject.claimId : about.claimId;
  const desk = location.pathname.startsWith('/desk');
  // A strike that nobody told dispatch of is recorded, and the next truck still does not know.
  const untold = (kind === 'strike' || kind === 'outage') && submission.body['dispatch'] === null;
  const next = [
    ...(claimId !== undefined && desk
      ? [
          {
            href: to(['claim', claimId]),
            words: about.claimId === undefined ? 'outbox.to-claim' : 'outbox.back-to-claim',
          },
        ]
      : []),
    ...(strikeId !== null ? [{ href: to(['strike', strikeId]), words: 'outbox.to-strike' }] : []),
    ...(strikeId === null && about.hydrantId !== null && !desk
      ? [{ href: to(['hydrant', about.hydrantId]), words: 'outbox.to-hydrant' }]
      : []),
  ];
  return (
    <>
      <Heading title={title}>{title}</Heading>
      <div class="good-news" role="status">
        <p class="large">
          <strong>{words.t('outbox.recorded')}</strong>
        </p>
        <p>{words.t('outbox.recorded-at', { when: words.when(recordedAt) })}</p>
        {receipt.authorName !== undefined && receipt.deliveredByName && (
          <p>{words.t('outbox.delivered', { author: receipt.authorName, by: receipt.deliveredByName })}</p>
        )}
      </div>
      {untold && (
        <div class="notice">
          <p>
            <strong>{words.t('outbox.dispatch-untold')}</strong>
          </p>
          <p>
            <a
              class="button primary"
              href={to(['new', 'out-of-service-notice'], {
                strike: subject.type === 'strike' ? subject.strikeId : null,
                hydrant: subject.type === 'hydrant' ? subject.hydrantId : null,
              })}
            >
              {words.t('missing.dispatch.do')}
            </a>
          </p>
        </div>
      )}
      <p class="actions">
        {next.map(({ href, words: key }, index) => (
          <a key={href} class={`button ${index === 0 && !untold ? 'primary' : ''}`} href={href}>
            {words.t(key)}
          </a>
        ))}
        <a class="button" href="#/">
          {words.t('screen.home')}
        </a>
      </p>
    </>
  );
}
