import { problem } from '../problems/problem.ts';
import { groupBy, type DraftLine, type Drafted } from './line.ts';
import { dollarText } from './money.ts';
import { onceAcrossRecords } from './onceAcrossRecords.ts';
import type { Work, WorkRecord } from './work.ts';

type Invoice = WorkRecord['contractors'][number];

const paperOf = ({ contractor, invoiceNumber, work, amountCents }: Invoice): string =>
  [contractor, invoiceNumber, work, amountCents].join('\u0000');

/**
 * Contractors at cost, a line for each invoice and work. The same invoice, work and amount is billed once, in one record
 * as in two: an invoice is a paper of which there is one, so a second entry that says nothing else is typed again, and a
 * demand may hold no more than its papers show. Who has two like items on one invoice says in the work what each is. The
 * same number with another amount is billed as recorded and said to be doubtful.
 */
export function contractorLines({ records }: Work): Drafted {
  const { items, twice } = onceAcrossRecords(
    records.map(({ contractors, submissionId }) => ({
      submissionId,
      items: groupBy(contractors, paperOf).map(([, [first]]) => first),
    })),
    paperOf,
  );
  const problems = twice.map(({ item, submissionIds }) =>
    problem('invoice-recorded-twice', submissionIds.join(' '), {
      contractor: item.contractor,
      invoiceNumber: item.invoiceNumber,
    }),
  );
  for (const { contractors, submissionId } of records)
    for (const [, group] of groupBy(contractors, paperOf))
      if (group.length > 1) {
        const [{ contractor, invoiceNumber, work }] = group;
        problems.push(
          problem('invoice-listed-twice', submissionId, {
            contractor,
            invoiceNumber,
            work,
            times: group.length,
          }),
        );
      }
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
