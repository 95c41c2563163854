import { useState } from 'preact/hooks';
import { compareStatements } from '../../../../shared/costs/compareStatements.ts';
import type { RateBookEdition } from '../../../../shared/costs/rateBook.ts';
import { statementOf, type Statement } from '../../../../shared/costs/statement.ts';
import type { Work } from '../../../../shared/costs/work.ts';
import type { StrikeState } from '../../../../shared/strikes/state.ts';
import { useRateBooks, useStrikes, useWork } from '../core/records.ts';
import { lineQuantity, lineTitle } from '../desk/lineWords.ts';
import { checkForm } from '../form/check.ts';
import type { ExtraProps } from '../form/view/props.ts';
import { useScope } from '../form/view/scope.ts';
import { Unread } from '../screens/Unread.tsx';
import { ProblemList } from '../screens/ProblemSummary.tsx';
import { strikeTitle } from '../screens/titles.ts';

/** What the draft would make of a past strike's bill: old and new total, line by line. Worked out in the browser. */
export function RatePreview({ values }: ExtraProps) {
  const { spec, words } = useScope();
  const strikes = useStrikes();
  const books = useRateBooks();
  const [chosen, setChosen] = useState<string | null>(null);
  const past = (strikes.value?.strikes ?? []).filter(({ repairedAt }) => repairedAt !== null);
  const strikeId = chosen ?? past[0]?.strikeId ?? null;
  const work = useWork(strikeId);
  const checked = checkForm(spec, values, words.zone);
  const label = (strike: StrikeState): string => `${strikeTitle(strike, words)}, ${words.when(strike.since)}`;
  return (
    <div class="answer">
      <Unread resource={strikes} />
      {strikes.value && past.length === 0 && <p class="soft">{words.t('rates.preview.no-strike')}</p>}
      {past.length > 0 && (
        <div class="field">
          <label for="preview-strike">{words.t('rates.preview.strike')}</label>
          <select
            id="preview-strike"
            value={strikeId ?? ''}
            onChange={(event) => setChosen(event.currentTarget.value)}
          >
            {past.map((strike) => (
              <option key={strike.strikeId} value={strike.strikeId}>
                {label(strike)}
              </option>
            ))}
          </select>
        </div>
      )}
      {strikeId !== null && <Unread resource={work} />}
      {!checked.ok ? (
        <>
          <p class="soft" role="status">
            {words.t('rates.preview.not-yet', { count: checked.problems.length })}
          </p>
          <ProblemList spec={spec} values={values} problems={checked.problems} />
        </>
      ) : (
        work.value &&
        books.value && (
          <Comparison
            work={work.value.work}
            editions={books.value.editions}
            draft={checked.body as unknown as RateBookEdition}
          />
        )
      )}
    </div>
  );
}

interface ComparisonProps {
  readonly work: Work;
  readonly editions: readonly RateBookEdition[];
  readonly draft: RateBookEdition;
}

/** As if the draft had been in force on every day of the work, whatever its own days say: otherwise nothing would change. */
const asInForce = (draft: RateBookEdition): RateBookEdition => ({
  ...draft,
  effectiveFrom: '0001-01-01',
  effectiveTo: null,
});

function Comparison({ work, editions, draft }: ComparisonProps) {
  const { words } = useScope();
  const before = statementOf(work, editions);
  const after = statementOf(work, [asInForce(draft)]);
  const pairs = compareStatements(before, after);
  const difference = after.totalCents - before.totalCents;
  const money = (cents: number | null | undefined): string =>
    cents === undefined ? '' : cents === null ? words.t('claim.no-amount') : words.money(cents);
  return (
    <>
      <div role="status">
        <p class="answer-line">
          {words.t('rates.preview.totals', {
            before: words.money(before.totalCents),
            after: words.money(after.totalCents),
            change: difference === 0 ? 'same' : difference > 0 ? 'more' : 'less',
            difference: words.money(Math.abs(difference)),
          })}
        </p>
        {[before, after].some(({ complete }) => !complete) && (
          <p>
            <strong>{words.t('rates.preview.incomplete', { which: whichIncomplete(before, after) })}</strong>
          </p>
        )}
      </div>
      <p class="small soft">{words.t('rates.preview.as-if')}</p>
      <div class="wide-table" tabIndex={0} role="group" aria-label={words.t('rates.preview.table')}>
        <table class="compare">
          <caption class="visually-hidden">{words.t('rates.preview.table')}</caption>
          <thead>
            <tr>
              <th scope="col">{words.t('packet.statement.item')}</th>
              <th scope="col">{words.t('rates.preview.before')}</th>
              <th scope="col">{words.t('rates.preview.after')}</th>
              <th scope="col">{words.t('rates.preview.difference')}</th>
            </tr>
          </thead>
          <tbody>
            {pairs.map(({ before: old, after: next, differenceCents }, index) => {
              const line = next ?? old;
              return line === null ? null : (
                <tr key={index} class={differenceCents === 0 ? undefined : 'changed'}>
                  <th scope="row">
                    {lineTitle(line, words)}
                    <span class="block small soft">
                      {old && next && lineQuantity(next, words) !== lineQuantity(old, words) ? (
                        <>
                          <del>{lineQuantity(old, words)}</del> <ins>{lineQuantity(next, words)}</ins>
                        </>
                      ) : (
                        lineQuantity(line, words)
                      )}
                    </span>
                  </th>
                  <td>{old ? money(old.amountCents) : '–'}</td>
                  <td>{next ? money(next.amountCents) : '–'}</td>
                  <td>
                    {differenceCents === 0
                      ? '0'
                      : `${differenceCents > 0 ? '+' : '−'}${words.money(Math.abs(differenceCents))}`}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </>
  );
}

const whichIncomplete = (before: Statement, after: Statement): string =>
  !before.complete && !after.complete ? 'both' : before.complete ? 'after' : 'before';
