import type { ComponentChildren } from 'preact';
import type { ListedDeadline } from '../../../../../shared/clocks/list.ts';
import { deadlineWords } from '../../../../../shared/clocks/words.ts';
import { useWords } from '../../core/words.ts';

interface Props {
  readonly deadline: ListedDeadline;
  readonly today: string;
  readonly children?: ComponentChildren;
}

/** One date: when, of what, how it was counted and by which source. What is late says so in a word, not by colour. */
export function DeadlineRow({ deadline, today, children }: Props) {
  const words = useWords();
  const said = deadlineWords(words.locale, deadline);
  const late = deadline.dueOn < today;
  return (
    <li class={late ? 'late' : deadline.dueOn === today ? 'now' : ''}>
      <p>
        <strong>{said.clock}</strong> <time dateTime={deadline.dueOn}>{words.day(deadline.dueOn)}</time>{' '}
        <span class="small soft">{said.of}</span>{' '}
        {deadline.state !== 'running' && <span class={late ? 'tag out' : 'tag'}>{said.state}</span>}
      </p>
      <details class="small">
        <summary>{words.t('claim.life.how-counted')}</summary>
        <p>
          {said.rule}. {said.source}
        </p>
      </details>
      {children && <p class="small">{children}</p>}
    </li>
  );
}
