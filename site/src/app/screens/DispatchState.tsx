import { useEffect } from 'preact/hooks';
import type { NoticesAnswer } from '../../../../shared/dispatch/view.ts';
import { useObservable } from '../core/observable.ts';
import { useResource } from '../core/resource.ts';
import { utility } from '../core/utility.ts';
import { useWords } from '../core/words.ts';
import { asksForCall, DispatchMessage } from './DispatchMessage.tsx';
import { Unread } from './Unread.tsx';

export interface DispatchProps {
  readonly of: 'strikes' | 'hydrants';
  readonly id: string;
  /** Whether it is out of service now: then a message must be there, or somebody tells dispatch. */
  readonly out: boolean;
  /** Where it is recorded who took a message; null for those who may not. */
  readonly record: string | null;
}

/** A message is made and sent within seconds of its cause: until it is there the screen looks again, milliseconds. */
const LOOK_AGAIN_MS = 5000;

/** Messages about a strike or hydrant: what went to whom, what did not, and whether somebody has confirmed it. */
export function DispatchState({ of, id, out, record }: DispatchProps) {
  const words = useWords();
  const resource = useResource<NoticesAnswer>(`/api/dispatch/${of}/${encodeURIComponent(id)}`);
  const dispatch = useObservable(utility)?.dispatch;
  const { value } = resource;
  const underWay =
    value?.on === true &&
    ((out && value.notices.length === 0) ||
      value.notices.some(({ deliveries }) =>
        deliveries.some(({ state }) => state === 'waiting' || state === 'claimed' || state === 'failed'),
      ));
  useEffect(() => {
    if (!underWay) return undefined;
    const timer = setInterval(resource.reload, LOOK_AGAIN_MS);
    return () => clearInterval(timer);
  }, [underWay, resource.reload]);

  if (!value) return resource.failed ? <Unread resource={resource} /> : null;
  const { on, notices } = value;
  if (notices.length === 0) {
    if (!out) return null;
    return (
      <section class="dispatch">
        <h2>{words.t('dispatch.title')}</h2>
        <p>
          {words.t(on ? 'dispatch.none' : 'dispatch.off')}{' '}
          {dispatch && <a href={`tel:${dispatch.phone}`}>{dispatch.phone}</a>}
        </p>
      </section>
    );
  }
  const now = Date.now();
  const first = notices.filter((notice, index) => index === 0 || notice.latest || asksForCall(notice, now));
  const earlier = notices.filter((notice) => !first.includes(notice));
  const message = (notice: (typeof notices)[number]) => (
    <DispatchMessage
      key={`${notice.subject} ${notice.number}`}
      notice={notice}
      tooOldHours={value.tooOldHours}
      record={record}
      reload={resource.reload}
    />
  );
  return (
    <section class="dispatch">
      <h2>{words.t('dispatch.title')}</h2>
      {first.map(message)}
      {earlier.length > 0 && (
        <details>
          <summary>{words.t('dispatch.earlier', { count: earlier.length })}</summary>
          {earlier.map(message)}
        </details>
      )}
    </section>
  );
}
