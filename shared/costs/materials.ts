import { problem, type Problem } from '../problems/problem.ts';
import { editionOn, type EditionFound } from './editions.ts';
import { authorityOf, distinctSorted, groupBy, type DraftLine, type Drafted } from './line.ts';
import { fuelInRates } from './machineHolds.ts';
import { decimal, dollarText, toCents, type Decimal } from './money.ts';
import { onceAcrossRecords } from './onceAcrossRecords.ts';
import type { RateBookEdition } from './rateBook.ts';
import type { Work, WorkRecord } from './work.ts';

interface Part {
  readonly part: WorkRecord['parts'][number];
  readonly issuedOn: string;
}
interface Counted extends Part {
  readonly found: EditionFound;
  readonly submissionIds: readonly string[];
}

/** The paper that makes two entries in different records one and the same; null where there is none. */
function paperOf({ partNumber, quantity, source }: Part['part']): string | null {
  if (source.from === 'invoice')
    return [
      'invoice',
      source.supplier,
      source.invoiceNumber,
      partNumber,
      quantity,
      source.unitPriceCents,
    ].join('\u0000');
  return source.issueSlip === null ? null : ['stock', source.issueSlip, partNumber, quantity].join('\u0000');
}

const total = (items: readonly Counted[]): Decimal =>
  items.reduce((sum, { part }) => sum.plus(part.quantity), decimal(0));

/**
 * A line for each part: from stock at the price of the edition in force on the day of issue, bought ones at the price
 * on their invoice. The same slip or invoice line typed in two records is billed once. Fuel from stock beside a machine
 * whose rate holds fuel is noted, not billed.
 */
export function materialLines(work: Work, editions: readonly RateBookEdition[]): Drafted {
  const { records } = work;
  const { items, twice } = onceAcrossRecords(
    records.map(({ parts, submissionId, issuedOn }) => ({
      submissionId,
      items: parts.map((part): Part => ({ part, issuedOn })),
    })),
    ({ part }) => paperOf(part),
  );
  const problems = twice.map(({ item: { part }, submissionIds }) =>
    problem('part-recorded-twice', submissionIds.join(' '), { partNumber: part.partNumber }),
  );
  const counted = items.map(({ item, submissionIds }): Counted => ({
    ...item,
    submissionIds,
    found: editionOn(item.issuedOn, editions),
  }));
  const { held, billed: stock } = withoutFuel(
    counted.filter(({ part }) => part.source.from === 'stock'),
    fuelInRates(work, editions),
  );
  const bought = counted.filter(({ part }) => part.source.from === 'invoice');
  const lines = [
    ...groupBy(stock, ({ part, found }) =>
      [part.partNumber, found.edition?.editionId ?? ''].join('\u0000'),
    ).map(([order, group]) => stockLine(order, group)),
    ...groupBy(bought, ({ part }) => boughtKey(part)).flatMap(([order, group]) => invoiceLines(order, group)),
  ];
  for (const { part, found, submissionIds } of counted)
    if (part.source.from === 'invoice' && found.problem !== null)
      problems.push(problem('handling-not-known', submissionIds.join(' '), { partNumber: part.partNumber }));
  return { lines, problems, notes: held };
}

const isFuel = ({ part, found }: Counted): boolean =>
  found.edition?.stock.find(({ partNumber }) => partNumber === part.partNumber)?.fuel === true;

/** Stock that is billed, and a note for each fuel that is not because the rates of `machines` hold it. */
function withoutFuel(
  stock: readonly Counted[],
  machines: readonly string[],
): { readonly held: Problem[]; readonly billed: readonly Counted[] } {
  if (machines.length === 0) return { held: [], billed: stock };
  const held = groupBy(stock.filter(isFuel), ({ part }) => part.partNumber).map(([partNumber, group]) =>
    problem(
      'fuel-in-machine-rate',
      distinctSorted(group.flatMap(({ submissionIds }) => submissionIds)).join(' '),
      { partNumber, machines: machines.join(', ') },
    ),
  );
  return { held, billed: stock.filter((item) => !isFuel(item)) };
}

const boughtKey = ({ partNumber, source }: Part['part']): string =>
  source.from === 'invoice'
    ? [partNumber, source.supplier, source.invoiceNumber, String(source.unitPriceCents)].join('\u0000')
    : '';

function shared(order: string, group: readonly [Counted, ...Counted[]]) {
  const dates = distinctSorted(group.map(({ issuedOn }) => issuedOn));
  return {
    section: 'materials',
    order: `0${order}`,
    item: group[0].part.partNumber,
    quantity: total(group).toFixed(),
    unit: 'each',
    hoursWorked: null,
    days: [],
    time: null,
    fraction: null,
    submissionIds: distinctSorted(group.flatMap(({ submissionIds }) => submissionIds)),
    dates,
  } as const;
}

function stockLine(order: string, group: readonly [Counted, ...Counted[]]): DraftLine {
  const { dates, ...base } = shared(order, group);
  const { edition, problem: missing } = group[0].found;
  const rate = edition?.stock.find(({ partNumber }) => partNumber === base.item);
  const amountCents = rate ? toCents(decimal(rate.unitPriceUsd).times(base.quantity)) : null;
  return {
    ...base,
    kind: 'stock',
    description: rate?.title ?? group[0].part.description,
    rateUsd: rate?.unitPriceUsd ?? null,
    amountCents,
    exactUsd: rate ? { numerator: decimal(rate.unitPriceUsd).times(base.quantity), divisor: 1 } : undefined,
    editionId: edition?.editionId ?? null,
    authority: edition && rate ? authorityOf(edition, rate.authorityId) : null,
    dateBasis: { rule: 'issue', dates },
    arithmetic:
      rate && amountCents !== null
        ? `${base.quantity} × $${rate.unitPriceUsd} = $${dollarText(amountCents)}`
        : base.quantity,
    problems: rate
      ? []
      : [
          missing ??
            problem('no-stock-price', '', {
              partNumber: base.item,
              date: dates[0] ?? '',
              editionId: edition.editionId,
            }),
        ],
  };
}

/** A bought part as its invoice has it: less its discount, and the sales tax that it bears as a line of its own. */
function invoiceLines(order: string, group: readonly [Counted, ...Counted[]]): DraftLine[] {
  const { dates, ...base } = shared(order, group);
  const { part } = group[0];
  if (part.source.from !== 'invoice') throw new Error('not an invoiced part');
  const { supplier, invoiceNumber, unitPriceCents } = part.source;
  const on = (field: 'discountCents' | 'taxCents'): number =>
    group.reduce(
      (sum, { part: { source } }) => sum + (source.from === 'invoice' ? (source[field] ?? 0) : 0),
      0,
    );
  const [discountCents, taxCents] = [on('discountCents'), on('taxCents')];
  const rateUsd = dollarText(unitPriceCents);
  const lessDiscount = decimal(rateUsd).times(base.quantity).minus(dollarText(discountCents));
  // The form refuses it; an older record may still hold it, and a part never pays for the rest of the bill.
  const belowZero = lessDiscount.lt(0);
  const exact = belowZero ? decimal(0) : lessDiscount;
  const amountCents = toCents(exact);
  const less = discountCents === 0 ? '' : ` - $${dollarText(discountCents)}`;
  const paper = {
    description: part.description,
    editionId: null,
    authority: { kind: 'invoice', title: supplier, edition: invoiceNumber, page: null },
    dateBasis: { rule: 'invoice', dates },
    problems: [],
  } as const;
  const line: DraftLine = {
    ...base,
    ...paper,
    kind: 'invoiced-part',
    rateUsd,
    amountCents,
    exactUsd: { numerator: exact, divisor: 1 },
    taxPaid: taxCents > 0,
    arithmetic: `${base.quantity} × $${rateUsd}${less} ${belowZero ? '→' : '='} $${dollarText(amountCents)}`,
    problems: belowZero
      ? [problem('invoice-discount-above-price', '', { partNumber: base.item, invoiceNumber })]
      : [],
  };
  if (taxCents === 0) return [line];
  return [
    line,
    {
      ...base,
      ...paper,
      kind: 'invoice-tax',
      order: `${base.order}\u0000tax`,
      quantity: '1',
      unit: 'invoice',
      rateUsd: dollarText(taxCents),
      amountCents: taxCents,
      arithmetic: `1 × $${dollarText(taxCents)} = $${dollarText(taxCents)}`,
    },
  ];
}

/**
 * Handling on the parts of each edition that has a share for it, a line of its own: its base is the sum of the lines as
 * they print, so that a reader can add it up.
 */
export function handlingLines(all: readonly DraftLine[], editions: readonly RateBookEdition[]): DraftLine[] {
  const lines = all.filter(({ kind }) => kind === 'stock' || kind === 'invoiced-part');
  // A bought part has no edition of its own; the day it was used says whose handling it bears.
  const editionOf = (line: DraftLine): RateBookEdition | null => {
    const date = line.dateBasis.dates[0];
    return date === undefined ? null : editionOn(date, editions).edition;
  };
  const bearing = lines.flatMap((line) => {
    const edition = editionOf(line);
    return edition?.materialHandling && line.amountCents !== null && line.amountCents > 0
      ? [{ line, edition, handling: edition.materialHandling, amountCents: line.amountCents }]
      : [];
  });
  return groupBy(bearing, ({ edition }) => edition.editionId).map(([editionId, group]): DraftLine => {
    const [{ edition, handling }] = group;
    const baseCents = group.reduce((sum, { amountCents }) => sum + amountCents, 0);
    const base = dollarText(baseCents);
    const amountCents = toCents(decimal(base).times(handling.fraction));
    return {
      section: 'materials',
      kind: 'handling',
      order: `1${editionId}`,
      description: '',
      item: '',
      quantity: base,
      unit: 'usd',
      hoursWorked: null,
      days: [],
      rateUsd: null,
      time: null,
      fraction: handling.fraction,
      amountCents,
      editionId,
      authority: authorityOf(edition, handling.authorityId),
      dateBasis: { rule: 'issue', dates: distinctSorted(group.flatMap(({ line }) => line.dateBasis.dates)) },
      submissionIds: distinctSorted(group.flatMap(({ line }) => line.submissionIds)),
      arithmetic: `$${base} × ${handling.fraction} = $${dollarText(amountCents)}`,
      problems: [],
    };
  });
}
