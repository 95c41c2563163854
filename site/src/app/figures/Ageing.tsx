import type { Aged } from '../../../../shared/claimFigures/ageing.ts';
import { to } from '../core/router.ts';
import { useWords } from '../core/words.ts';
import { Chart } from './Chart.tsx';

/** What is owed, by how long ago it was demanded. */
export function Ageing({ aged }: { readonly aged: readonly Aged[] }) {
  const words = useWords();
  return (
    <section>
      <h2>{words.t('figures.ageing')}</h2>
      <p class="small soft">{words.t('figures.ageing.how')}</p>
      <Chart
        idPrefix="ageing"
        title={words.t('figures.ageing')}
        series={[{ label: words.t('figures.balance'), fill: 'solid' }]}
        rows={aged.map(({ code, balanceCents }) => ({
          label: words.t(`figures.age.${code}`),
          values: [balanceCents],
          note: words.money(balanceCents),
        }))}
      />
      <table class="figure-table">
        <caption class="visually-hidden">{words.t('figures.ageing')}</caption>
        <thead>
          <tr>
            <th scope="col">{words.t('figures.age')}</th>
            <th scope="col">{words.t('figures.claims')}</th>
            <th scope="col" class="amount">
              {words.t('figures.balance')}
            </th>
          </tr>
        </thead>
        <tbody>
          {aged.map(({ code, claims, balanceCents }) => (
            <tr key={code}>
              <th scope="row">{words.t(`figures.age.${code}`)}</th>
              <td>
                {claims.length === 0
                  ? '—'
                  : claims.map(({ claimId, claimNumber, days }) => (
                      <a key={claimId} class="block" href={to(['claim', claimId])}>
                        {words.t('figures.claim-days', { claimNumber, days })}
                      </a>
                    ))}
              </td>
              <td class="amount">{words.money(balanceCents)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
