import * as z from 'zod';
import {
  counterCalculation,
  type CounterCalculation,
} from '../../../../../shared/costs/counterCalculation.ts';
import { counterCalculation as form } from '../../../../../shared/submissions/forms/counterCalculation.ts';
import { localDay } from '../localTime.ts';
import { encode } from '../encode.ts';
import type { ExtraProps } from './props.ts';
import { useScope } from './scope.ts';

const { installedOn, serviceLifeYears, originalCostCents, salvageCents, bettermentCents } = form.body.shape;
const asked = z.object({ installedOn, serviceLifeYears, originalCostCents, salvageCents, bettermentCents });

/** The figure of a counter-calculation while it is typed, with its age and its sum. */
export function CounterAnswer({ values }: ExtraProps) {
  const { spec, job, words } = useScope();
  const { body } = encode(spec.nodes, values, { zone: words.zone, nullable: spec.nullable });
  const parsed = asked.safeParse(
    Object.fromEntries(Object.keys(asked.shape).map((name) => [name, body[name]])),
  );
  const { strike } = job;
  const struckOn = strike ? localDay(new Date(strike.struckAt ?? strike.since), words.zone) : null;
  return (
    <div class="answer">
      <h3>{words.t('counter.title')}</h3>
      <div role="status">
        {parsed.success && struckOn !== null ? (
          <Figures found={counterCalculation(parsed.data, struckOn)} struckOn={struckOn} />
        ) : (
          <p class="soft">{words.t(struckOn === null ? 'counter.no-strike' : 'counter.more')}</p>
        )}
      </div>
    </div>
  );
}

function Figures({ found, struckOn }: { readonly found: CounterCalculation; readonly struckOn: string }) {
  const { words } = useScope();
  const { age } = found;
  return (
    <>
      <p class="answer-line">{words.t('counter.credit', { amount: words.money(found.creditCents) })}</p>
      <dl class="said">
        <div>
          <dt>{words.t('counter.age', { day: words.day(struckOn) })}</dt>
          <dd>{words.t('counter.age-of', { years: age.years, days: age.days })}</dd>
        </div>
        <div>
          <dt>{words.t('counter.depreciation')}</dt>
          <dd>{words.money(found.depreciationCents)}</dd>
        </div>
        <div>
          <dt>{words.t('claim.why.arithmetic')}</dt>
          <dd>{found.arithmetic}</dd>
        </div>
      </dl>
      {found.lifeSpent && <p>{words.t('counter.life-spent')}</p>}
    </>
  );
}
