import { counterCalculation } from '../../../../shared/costs/counterCalculation.ts';
import { groupedDollars } from '../../../../shared/costs/money.ts';
import { effectiveFacts, ofKind } from '../../../../shared/submissions/effective.ts';
import type { StrikeAnswer } from '../core/strikeAnswer.ts';
import { to } from '../core/router.ts';
import { useWords } from '../core/words.ts';
import { localDay } from '../form/localTime.ts';

/** What an adjuster would take off, worked out beforehand: its figure, and whether it is applied. */
export function CounterCalculations({ answer }: { readonly answer: StrikeAnswer }) {
  const words = useWords();
  const { strike, history } = answer;
  const kept = ofKind(effectiveFacts(history.map(({ recorded }) => recorded)).facts, 'counter-calculation');
  if (kept.length === 0) return null;
  const struckOn = localDay(new Date(strike.struckAt ?? strike.since), words.zone);
  return (
    <>
      <h3>{words.t('counter.kept')}</h3>
      <ul class="plain-list lines">
        {kept.map(({ fact: { body, submissionId } }) => {
          const { creditCents, arithmetic } = counterCalculation(body, struckOn);
          return (
            <li key={submissionId}>
              <a href={to(['strike', strike.strikeId], { entry: submissionId })}>
                <strong>{body.component}</strong>
              </a>{' '}
              {words.money(creditCents)}{' '}
              <span class="tag">
                {words.t(body.applied ? 'counter.is-applied' : 'counter.is-not-applied')}
              </span>
              <br />
              <span class="small soft">{groupedDollars(arithmetic)}</span>
            </li>
          );
        })}
      </ul>
    </>
  );
}
