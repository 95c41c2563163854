import { problem } from '../problems/problem.ts';
import { groupBy, type DraftLine, type Drafted } from './line.ts';
import { dollarText } from './money.ts';
import { onceAcrossRecords } from './onceAcrossRecords.ts';
import type { Work } from './work.ts';

/**
 * Contractors at cost, a line for each invoice and work. The same invoice typed in two records is billed once; the same
 * number with another amount is billed as recorded and said to be doubtful.
 */
export function contractorLines({ records }: Work): Drafted {
  const { items, twice } = onceAcrossRecords(
    records.map(({ contractors, submissionId }) => ({ submissionId, items: contractors })),
    ({ contractor, invoiceNumber, work, amountCents }) =>
      [contractor, invoiceNumber, work, amountCents].join('\u0000'),
  );
  const problems = twice.map(({ item, submissionIds }) =>
    problem('invoice-recorded-twice', submissionIds.join(' '), {
      contractor: item.contractor,
      invoiceNumber: item.invoiceNumber,
    }),
  );
  for (const [, group] of groupBy(items, ({ item }) =>
    [item.contractor, item.invoiceNumber].join('\u0000'),
  )) {
    const records = new Set(group.flatMap(({ submissionIds }) => submissionIds));
    if (group.length < 2 || records.size < 2) continue;
    const { contractor, invoiceNumber } = group[0].item;
    problems.push(
      problem('invoice-with-two-amounts', [...records].sort().join(' '), { contractor, invoiceNumber }),
    );
  }
  const lines = items.map(({ item, submissionIds }): DraftLine => {
    const { contractor, invoiceNumber, invoicedOn, work, amountCents } = item;
    const amount = dollarText(amountCents);
    return {
      section: 'contractors',
      kind: 'contractor',
      order: [invoicedOn, contractor, invoiceNumber, work, String(amountCents).padStart(12, '0')].join(
        '\u0000',
      ),
      description: work,
      item: contractor,
      quantity: '1',
      unit: 'invoice',
      hoursWorked: null,
      days: [],
      rateUsd: amount,
      time: null,
      fraction: null,
      amountCents,
      editionId: null,
      authority: { kind: 'invoice', title: contractor, edition: invoiceNumber, page: null },
      dateBasis: { rule: 'invoice', dates: [invoicedOn] },
      submissionIds,
      arithmetic: `1 × $${amount} = $${amount}`,
      problems: [],
    };
  });
  return { lines, problems, notes: [] };
}
