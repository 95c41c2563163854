import type { ClaimFigures } from '../../../../shared/claimFigures/figures.ts';
import { useWords } from '../core/words.ts';

const spans = ['strikeToDemand', 'demandToPaid', 'strikeToPaid'] as const;

/** How long it took: half of the claims were faster than the median, half slower. */
export function Speed({ speed }: Pick<ClaimFigures, 'speed'>) {
  const words = useWords();
  const number = new Intl.NumberFormat(words.locale, { maximumFractionDigits: 1 });
  const days = (value: number | null): string => (value === null ? '—' : number.format(value));
  return (
    <section>
      <h2>{words.t('figures.speed')}</h2>
      <div class="wide-table" role="region" aria-label={words.t('figures.speed')} tabIndex={0}>
        <table class="figure-table">
          <caption class="visually-hidden">{words.t('figures.speed')}</caption>
          <thead>
            <tr>
              <th scope="col">{words.t('figures.speed.from-to')}</th>
              {['claims', 'speed.quarter', 'speed.half', 'speed.three-quarters', 'speed.longest'].map(
                (column) => (
                  <th key={column} scope="col" class="amount">
                    {words.t(`figures.${column}`)}
                  </th>
                ),
              )}
            </tr>
          </thead>
          <tbody>
            {spans.map((span) => {
              const one = speed[span];
              return (
                <tr key={span}>
                  <th scope="row">{words.t(`figures.speed.${span}`)}</th>
                  <td class="amount">{one.claims}</td>
                  <td class="amount">{days(one.lowerQuartileDays)}</td>
                  <td class="amount">{days(one.medianDays)}</td>
                  <td class="amount">{days(one.upperQuartileDays)}</td>
                  <td class="amount">{days(one.longestDays)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}
