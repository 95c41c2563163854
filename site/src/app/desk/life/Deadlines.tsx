import { deadlineWords } from '../../../../../shared/clocks/words.ts';
import { to } from '../../core/router.ts';
import { useDeadlines } from '../../core/records.ts';
import { useWords } from '../../core/words.ts';
import { Unread } from '../../screens/Unread.tsx';
import { DeadlineRow } from './DeadlineRow.tsx';

/** The dates of this claim that still run, the nearest first. */
export function Deadlines({ claimId }: { readonly claimId: string }) {
  const words = useWords();
  const resource = useDeadlines(claimId);
  const { value } = resource;
  const running = (value?.deadlines ?? []).filter(({ state }) =>
    ['running', 'due-today', 'overdue'].includes(state),
  );
  return (
    <>
      <Unread resource={resource} />
      {value &&
        (running.length === 0 ? (
          <p class="soft">{words.t('claim.life.no-deadline')}</p>
        ) : (
          <ul class="deadlines plain-list">
            {running.map((deadline) => (
              <DeadlineRow key={deadline.id} deadline={deadline} today={value.today}>
                <a
                  href={to(['new', 'deadline-answered'], {
                    claim: claimId,
                    deadline: deadline.id,
                    dueOn: deadline.dueOn,
                  })}
                >
                  {words.t('form.title.deadline-answered')}
                </a>
              </DeadlineRow>
            ))}
          </ul>
        ))}
      {(value?.deadlines ?? []).map((deadline) => {
        const said = deadlineWords(words.locale, deadline);
        // What is no longer asked of the payer says so, or a clerk looks for the date in vain.
        return said.ended === null ? null : (
          <p class="small soft" key={deadline.id}>
            {said.clock} {said.of}. {said.ended}.
          </p>
        );
      })}
    </>
  );
}
