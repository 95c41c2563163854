import type { NoticesAnswer } from '../../../../shared/dispatch/view.ts';
import { useObservable } from '../core/observable.ts';
import { useResource } from '../core/resource.ts';
import { utility } from '../core/utility.ts';
import { useWords } from '../core/words.ts';
import { DispatchMessage } from '../screens/DispatchMessage.tsx';
import { Unread } from '../screens/Unread.tsx';

/** Messages to dispatch of the last days that did not go out, and that nobody has made good by telephone. */
export function DispatchFailed() {
  const words = useWords();
  const resource = useResource<NoticesAnswer>('/api/dispatch');
  const dispatch = useObservable(utility)?.dispatch;
  const { value } = resource;
  if (!value) return resource.failed ? <Unread resource={resource} /> : null;
  if (value.notices.length === 0) return null;
  return (
    <section class="dispatch" aria-labelledby="dispatch-failed">
      <h2 id="dispatch-failed">
        {words.t('dispatch.failed.title')} <span class="count">{value.notices.length}</span>
      </h2>
      <p>
        {words.t('dispatch.failed.do', { name: dispatch?.name ?? '' })}{' '}
        {dispatch && <a href={`tel:${dispatch.phone}`}>{dispatch.phone}</a>}
      </p>
      {value.notices.map((notice) => (
        <DispatchMessage
          key={`${notice.subject} ${notice.number}`}
          notice={notice}
          tooOldHours={value.tooOldHours}
          record={null}
          strikeLink
          reload={resource.reload}
        />
      ))}
    </section>
  );
}
