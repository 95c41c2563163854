import { useState } from 'preact/hooks';
import { postJson } from '../core/api.ts';
import { useResource } from '../core/resource.ts';
import { useWords } from '../core/words.ts';
import { Unread } from '../screens/Unread.tsx';

interface Made {
  readonly path: string;
  readonly url: string | null;
}

/** One's own private address of a calendar with every date: made, shown once, and taken back. */
export function CalendarAddress() {
  const words = useWords();
  const mine = useResource<{ readonly madeAt: string | null }>('/api/calendar');
  const [made, setMade] = useState<string | null>(null);
  const [failed, setFailed] = useState(false);
  const act = async (action: 'make' | 'revoke'): Promise<void> => {
    const answer = await postJson<Made>('/api/calendar', { action });
    setFailed(answer.outcome !== 'ok');
    if (answer.outcome !== 'ok') return;
    setMade(action === 'make' ? (answer.value.url ?? location.origin + answer.value.path) : null);
    mine.reload();
  };
  const has = mine.value?.madeAt ?? null;
  return (
    <details class="calendar-address">
      <summary>{words.t('desk.calendar')}</summary>
      <p>{words.t('desk.calendar.how')}</p>
      <Unread resource={mine} />
      {has !== null && <p class="small">{words.t('desk.calendar.made', { when: words.when(has) })}</p>}
      <p class="actions">
        <button type="button" onClick={() => void act('make')}>
          {words.t(has === null ? 'desk.calendar.make' : 'desk.calendar.new')}
        </button>
        {has !== null && (
          <button type="button" class="plain" onClick={() => void act('revoke')}>
            {words.t('desk.calendar.revoke')}
          </button>
        )}
      </p>
      <div role="status">
        {failed && <p class="warning">{words.t('screen.failed.server-trouble')}</p>}
        {made !== null && (
          <p>
            {words.t('desk.calendar.once')} <code class="address">{made}</code>
          </p>
        )}
      </div>
    </details>
  );
}
