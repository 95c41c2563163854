import type { Lost } from '../../../../shared/claimFigures/lost.ts';
import { useWords } from '../core/words.ts';
import { Chart } from './Chart.tsx';

/** What was lost to which objection, and what would have answered it: the evidence to get next time. */
export function LostTo({ lost }: { readonly lost: readonly Lost[] }) {
  const words = useWords();
  const percent = new Intl.NumberFormat(words.locale, { style: 'percent', maximumFractionDigits: 1 });
  return (
    <section>
      <h2>{words.t('figures.lost')}</h2>
      {lost.length === 0 ? (
        <p>{words.t('figures.lost.none')}</p>
      ) : (
        <>
          <Chart
            idPrefix="lost"
            title={words.t('figures.lost')}
            series={[{ label: words.t('figures.lost.amount'), fill: 'solid' }]}
            rows={lost.map(({ reason, cents }) => ({
              label: words.t(`value.shortReason.${reason}`),
              values: [cents],
              note: words.money(cents),
            }))}
          />
          <div class="wide-table" role="region" aria-label={words.t('figures.lost')} tabIndex={0}>
            <table class="figure-table">
              <caption class="visually-hidden">{words.t('figures.lost')}</caption>
              <thead>
                <tr>
                  <th scope="col">{words.t('figures.lost.reason')}</th>
                  <th scope="col" class="amount">
                    {words.t('figures.lost.amount')}
                  </th>
                  <th scope="col" class="amount">
                    {words.t('figures.lost.share')}
                  </th>
                  <th scope="col">{words.t('figures.lost.would')}</th>
                </tr>
              </thead>
              <tbody>
                {lost.map(({ reason, cents, claims, shareOfBilled }) => (
                  <tr key={reason}>
                    <th scope="row">
                      {words.t(`value.shortReason.${reason}`)}
                      <span class="block small soft">{words.t('figures.in-claims', { count: claims })}</span>
                    </th>
                    <td class="amount">{words.money(cents)}</td>
                    <td class="amount">{shareOfBilled === null ? '—' : percent.format(shareOfBilled)}</td>
                    <td>{words.t(`figures.would.${reason}`)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </>
      )}
    </section>
  );
}
