import { useState } from 'preact/hooks';
import type { NoticeView } from '../../../../shared/dispatch/view.ts';
import { postJson } from '../core/api.ts';
import { useObservable } from '../core/observable.ts';
import { to } from '../core/router.ts';
import { utility } from '../core/utility.ts';
import { useWords } from '../core/words.ts';
import { sayFailed } from './sayFailed.ts';

/** After so long nobody is asked to call about what is over. */
const PAST_MS = 3 * 24 * 3_600_000;

/** Whether a person still has to tell dispatch: nobody has, it is the last word on it, and it is not of the past. */
export const asksForCall = ({ confirmedAt, latest, what, madeAt }: NoticeView, now: number): boolean =>
  confirmedAt === null && latest && (what === 'out' || now - Date.parse(madeAt) < PAST_MS);

export interface MessageProps {
  readonly notice: NoticeView;
  readonly tooOldHours: number;
  readonly record: string | null;
  readonly reload: () => void;
  /** Where it stands in a list of many: the way to its strike. */
  readonly strikeLink?: boolean;
}

/** One message: to whom it went and when, what did not go, and the call that is still to be made. */
export function DispatchMessage({ notice, tooOldHours, record, reload, strikeLink }: MessageProps) {
  const words = useWords();
  const { what, hydrantId, place, reference, held, deliveries, confirmedAt, latest, text } = notice;
  const name = hydrantId ?? place ?? words.t('dispatch.no-number');
  const asks = asksForCall(notice, Date.now());
  const failed = deliveries.some(({ state }) => state === 'dead' || state === 'failed');
  return (
    <div class={asks && (failed || held !== null) ? 'warning' : 'notice'}>
      <p>
        <strong>
          {strikeLink && notice.strikeId !== null ? (
            <a href={to(['strike', notice.strikeId])}>{words.t(`dispatch.what.${what}`, { what: name })}</a>
          ) : (
            words.t(`dispatch.what.${what}`, { what: name })
          )}
        </strong>
        <br />
        <span class="small">{words.t('dispatch.reference', { reference })}</span>
      </p>
      {held !== null && <p>{words.t(`dispatch.held.${held}`, { hours: tooOldHours })}</p>}
      {deliveries.length > 0 && (
        <ul>
          {deliveries.map(({ label, by, state, tries, changedAt }) => (
            <li key={label + by} class={state === 'dead' || state === 'failed' ? 'strong' : ''}>
              {words.t(`dispatch.state.${state}`, { label, by, tries, when: words.when(changedAt) })}
            </li>
          ))}
        </ul>
      )}
      {confirmedAt !== null && <p>{words.t('dispatch.confirmed', { when: words.when(confirmedAt) })}</p>}
      {asks && <Call record={record} sent={deliveries.some(({ state }) => state === 'sent')} />}
      {latest && confirmedAt === null && (
        <Again notice={notice} offered={failed || held === 'too-old'} reload={reload} />
      )}
      <details>
        <summary>{words.t('dispatch.says')}</summary>
        <p class="small">{text}</p>
      </details>
    </div>
  );
}

/** A message that was sent is not one that was read. */
function Call({ record, sent }: { readonly record: string | null; readonly sent: boolean }) {
  const words = useWords();
  const dispatch = useObservable(utility)?.dispatch;
  return (
    <>
      <p>
        <strong>{words.t('dispatch.unconfirmed', { name: dispatch?.name ?? '' })}</strong>{' '}
        {dispatch && (
          <a class="phone" href={`tel:${dispatch.phone}`}>
            {dispatch.phone}
          </a>
        )}
      </p>
      {sent && <p class="small">{words.t('dispatch.unconfirmed.why')}</p>}
      {record !== null && (
        <p>
          <a class="button" href={record}>
            {words.t('dispatch.record')}
          </a>
        </p>
      )}
    </>
  );
}

interface AgainProps {
  readonly notice: NoticeView;
  /** There is something to send: what was held, or what failed, also once more after it was asked for. */
  readonly offered: boolean;
  readonly reload: () => void;
}

/** It stays after it was pressed, so that what came of it can be read. */
function Again({ notice, offered, reload }: AgainProps) {
  const words = useWords();
  const [state, setState] = useState<'idle' | 'asking' | 'asked'>('idle');
  const [refused, setRefused] = useState<readonly string[]>([]);
  const { subject, number, held, deliveries } = notice;
  const ask = async (): Promise<void> => {
    setState('asking');
    const answer = await postJson('/api/dispatch/retry', { subject, number });
    setRefused(answer.outcome === 'ok' ? [] : sayFailed(answer, words));
    setState(answer.outcome === 'ok' ? 'asked' : 'idle');
    reload();
  };
  const onItsWay = state === 'asked' && !offered && deliveries.some(({ state: of }) => of !== 'sent');
  return (
    <>
      <p role="status">{onItsWay ? words.t('dispatch.retrying') : refused.join(' ')}</p>
      {offered && (
        <p>
          <button type="button" disabled={state === 'asking'} onClick={() => void ask()}>
            {words.t(held === null ? 'dispatch.retry' : 'dispatch.send-anyway')}
          </button>
        </p>
      )}
    </>
  );
}
