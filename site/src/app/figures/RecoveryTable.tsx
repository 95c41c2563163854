import type { Grouping, Recovery } from '../../../../shared/claimFigures/recovery.ts';
import { useWords, type Wording } from '../core/words.ts';
import { Chart } from './Chart.tsx';

const nameOf = (grouping: Grouping, group: string, words: Wording): string =>
  grouping === 'year'
    ? group
    : words.t(grouping === 'payer' ? `value.payerKind.${group}` : `value.strikeCause.${group}`);

/** Billed, recovered, cut and written off by payer, cause or year. */
export function RecoveryTable({
  grouping,
  rows,
}: {
  readonly grouping: Grouping;
  readonly rows: readonly Recovery[];
}) {
  const words = useWords();
  const percent = new Intl.NumberFormat(words.locale, { style: 'percent', maximumFractionDigits: 1 });
  const title = words.t(`figures.by.${grouping}`);
  // Billed is recovered, passed on, written off and owed; the two that seldom arise are shown where they do.
  const some = (of: (row: Recovery) => number): boolean => rows.some((row) => of(row) > 0);
  const columns = [
    'billed',
    'recovered',
    ...(some(({ passedOnCents }) => passedOnCents) ? (['passed-on'] as const) : []),
    'written-off',
    'balance',
    ...(some(({ overpaidCents }) => overpaidCents) ? (['overpaid'] as const) : []),
    'cut',
    'share',
  ] as const;
  const cell: Record<(typeof columns)[number], (row: Recovery) => string> = {
    billed: (row) => words.money(row.billedCents),
    recovered: (row) => words.money(row.recoveredCents),
    'passed-on': (row) => words.money(row.passedOnCents),
    'written-off': (row) => words.money(row.writtenOffCents),
    balance: (row) => words.money(row.balanceCents),
    overpaid: (row) => words.money(row.overpaidCents),
    cut: (row) => words.money(row.cutCents),
    share: (row) => (row.share === null ? '—' : percent.format(row.share)),
  };
  return (
    <section>
      <h2>{title}</h2>
      <Chart
        idPrefix={`by-${grouping}`}
        title={title}
        series={[
          { label: words.t('figures.recovered'), fill: 'solid' },
          { label: words.t('figures.balance'), fill: 'hatched' },
          { label: words.t('figures.written-off'), fill: 'open' },
        ]}
        rows={rows.map((row) => ({
          label: nameOf(grouping, row.group, words),
          values: [row.recoveredCents, row.balanceCents, row.writtenOffCents].map((cents) =>
            Math.max(0, cents),
          ),
          note: words.money(row.billedCents),
        }))}
      />
      <div class="wide-table" role="region" aria-label={title} tabIndex={0}>
        <table class="figure-table">
          <caption class="visually-hidden">{title}</caption>
          <thead>
            <tr>
              <th scope="col">{words.t(`figures.group.${grouping}`)}</th>
              <th scope="col" class="amount">
                {words.t('figures.claims')}
              </th>
              {columns.map((column) => (
                <th key={column} scope="col" class="amount">
                  {words.t(`figures.${column}`)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.group}>
                <th scope="row">{nameOf(grouping, row.group, words)}</th>
                <td class="amount">{row.claims}</td>
                {columns.map((column) => (
                  <td key={column} class="amount">
                    {cell[column](row)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
