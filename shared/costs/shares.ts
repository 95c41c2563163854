import type { overheadBases } from './book/additions.ts';
import { authorityOf, distinctSorted, type DraftLine } from './line.ts';
import { decimal, dollarText, toCents } from './money.ts';
import type { RateBookEdition } from './rateBook.ts';
import type { Work } from './work.ts';

type Base = (typeof overheadBases)[number];

const atPremium = ({ time }: DraftLine): boolean => time !== null && Number(time.multiplier) > 1;

/** Which lines a base is: as they print, rounded, so that a reader can add them up. */
const inBase: Readonly<Record<Base, (line: DraftLine) => boolean>> = {
  labor: ({ section }) => section === 'labor',
  'labor-regular': (line) => line.section === 'labor' && !atPremium(line),
  'labor-premium': (line) => line.section === 'labor' && atPremium(line),
  // A rate that already pays for overhead bears no share of it again.
  machines: ({ section, holdsOverhead }) => section === 'machines' && holdsOverhead !== true,
  stock: ({ kind }) => kind === 'stock',
  'invoiced-parts': ({ kind }) => kind === 'invoiced-part',
  handling: ({ kind }) => kind === 'handling',
  'sales-tax': ({ kind }) => kind === 'sales-tax' || kind === 'invoice-tax',
  contractors: ({ section }) => section === 'contractors',
  water: ({ section }) => section === 'water',
  'flow-test': ({ section }) => section === 'flow-test',
  fees: ({ kind }) => kind === 'job-fee',
};

const baseLines = (lines: readonly DraftLine[], bases: readonly Base[]): DraftLine[] =>
  lines.filter((line) => bases.some((base) => inBase[base](line)));

interface Share {
  readonly section: 'overhead' | 'materials';
  readonly kind: 'overhead' | 'sales-tax';
  readonly order: string;
  readonly item: string;
  readonly description: string;
  readonly fraction: string;
  readonly limitCents: number | null;
  readonly authorityId: string;
  readonly base: readonly DraftLine[];
}

/** One share on the sum of the lines of its base. Null when there is nothing to take it on. */
function shareLine(share: Share, edition: RateBookEdition, { strike }: Work): DraftLine | null {
  const baseCents = share.base.reduce((sum, { amountCents }) => sum + (amountCents ?? 0), 0);
  if (baseCents <= 0) return null;
  const base = dollarText(baseCents);
  const exact = decimal(base).times(share.fraction);
  const wholeCents = toCents(exact);
  const amountCents = Math.min(wholeCents, share.limitCents ?? wholeCents);
  const limited = amountCents < wholeCents;
  const sum = `$${base} × ${share.fraction} = $${dollarText(wholeCents)}`;
  return {
    section: share.section,
    kind: share.kind,
    order: share.order,
    description: share.description,
    item: share.item,
    quantity: base,
    unit: 'usd',
    hoursWorked: null,
    time: null,
    days: [],
    rateUsd: null,
    fraction: share.fraction,
    amountCents,
    exactUsd: limited ? undefined : { numerator: exact, divisor: 1 },
    editionId: edition.editionId,
    authority: authorityOf(edition, share.authorityId),
    dateBasis: { rule: 'strike', dates: strike.date === '' ? [] : [strike.date] },
    submissionIds: distinctSorted(share.base.flatMap(({ submissionIds }) => submissionIds)),
    arithmetic: limited ? `${sum} > $${dollarText(amountCents)}` : sum,
    problems: [],
  };
}

/** Sales tax on materials that do not bear their own, by the edition of the strike's day. */
export function salesTaxLines(
  lines: readonly DraftLine[],
  edition: RateBookEdition | null,
  work: Work,
): DraftLine[] {
  if (!edition?.salesTax) return [];
  const { fraction, on, authorityId } = edition.salesTax;
  const line = shareLine(
    {
      section: 'materials',
      kind: 'sales-tax',
      order: '2',
      item: '',
      description: '',
      fraction,
      limitCents: null,
      authorityId,
      base: baseLines(lines, on).filter(({ taxPaid }) => taxPaid !== true),
    },
    edition,
    work,
  );
  return line ? [line] : [];
}

/**
 * Overheads in the order of the book, each on stated lines and on shares above it. 23 CFR 645.117(d): total, rate and
 * base of each additive are shown; 18 CFR 101: an arbitrary percentage is not permitted, so each names its authority.
 */
export function overheadLines(
  lines: readonly DraftLine[],
  edition: RateBookEdition | null,
  work: Work,
): DraftLine[] {
  if (!edition) return [];
  const made: DraftLine[] = [];
  (edition.overheads ?? []).forEach((overhead, index) => {
    const line = shareLine(
      {
        section: 'overhead',
        kind: 'overhead',
        order: String(index).padStart(3, '0'),
        item: overhead.overheadId,
        description: overhead.title,
        fraction: overhead.fraction,
        limitCents: overhead.limitUsd === null ? null : toCents(decimal(overhead.limitUsd)),
        authorityId: overhead.authorityId,
        base: [
          ...baseLines(lines, overhead.on),
          ...made.filter(({ item }) => overhead.onOverheads.includes(item)),
        ],
      },
      edition,
      work,
    );
    if (line) made.push(line);
  });
  return made;
}
