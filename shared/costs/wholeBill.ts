import { problem, type Problem } from '../problems/problem.ts';
import { authorityOf, type DraftLine, type LineKind, type Section } from './line.ts';
import { decimal, dollarText, toCents } from './money.ts';
import type { RateBookEdition } from './rateBook.ts';
import type { Work } from './work.ts';

/** What is laid on the bill as a whole: fees for each strike, credits, the least charge, the tariff's own rounding. */

const sumOf = (lines: readonly DraftLine[]): number =>
  lines.reduce((sum, { amountCents }) => sum + (amountCents ?? 0), 0);

interface Fixed {
  readonly section: Section;
  readonly kind: LineKind;
  readonly order: string;
  readonly item: string;
  readonly description: string;
  readonly amountCents: number;
  readonly rateUsd: string | null;
  readonly authorityId: string | null;
  readonly submissionIds: readonly string[];
  readonly arithmetic: string;
}

function fixedLine(fixed: Fixed, edition: RateBookEdition | null, { strike }: Work): DraftLine {
  const { authorityId, ...line } = fixed;
  return {
    ...line,
    quantity: '1',
    unit: 'each',
    hoursWorked: null,
    time: null,
    days: [],
    fraction: null,
    editionId: authorityId === null ? null : (edition?.editionId ?? null),
    authority: edition && authorityId !== null ? authorityOf(edition, authorityId) : null,
    dateBasis: { rule: 'strike', dates: strike.date === '' ? [] : [strike.date] },
    problems: [],
  };
}

/** Fees for each strike: those for every kind of damage, and those for the damage that was repaired. */
export function jobFeeLines(edition: RateBookEdition | null, work: Work): DraftLine[] {
  return (edition?.jobFees ?? [])
    .filter(({ damage }) => damage.length === 0 || damage.some((item) => work.damage.includes(item)))
    .map((fee) => {
      const amountCents = toCents(decimal(fee.usd));
      return fixedLine(
        {
          section: 'fees',
          kind: 'job-fee',
          order: fee.feeId,
          item: fee.feeId,
          description: fee.title,
          amountCents,
          rateUsd: fee.usd,
          authorityId: fee.authorityId,
          submissionIds: [],
          arithmetic: `1 × $${fee.usd} = $${dollarText(amountCents)}`,
        },
        edition,
        work,
      );
    });
}

/** Credits come off, in the order in which they were recorded, and never exceed the cost (23 CFR 645.117(h)(5)). */
export function creditLines(
  charged: readonly DraftLine[],
  work: Work,
): { readonly lines: readonly DraftLine[]; readonly problems: readonly Problem[] } {
  let leftCents = sumOf(charged);
  const problems: Problem[] = [];
  const lines: DraftLine[] = [];
  const inOrder = [...work.credits].sort((a, b) =>
    a.submissionId < b.submissionId ? -1 : a.submissionId > b.submissionId ? 1 : 0,
  );
  for (const credit of inOrder) {
    const takenCents = Math.min(credit.amountCents, Math.max(0, leftCents));
    if (takenCents < credit.amountCents)
      problems.push(
        problem('credit-above-cost', credit.submissionId, {
          title: credit.title,
          creditCents: credit.amountCents,
          takenCents,
        }),
      );
    leftCents -= takenCents;
    if (takenCents === 0) continue;
    lines.push(
      fixedLine(
        {
          section: 'credits',
          kind: 'credit',
          order: credit.submissionId,
          item: '',
          description: credit.title,
          amountCents: -takenCents,
          rateUsd: null,
          authorityId: null,
          submissionIds: [credit.submissionId],
          arithmetic:
            takenCents < credit.amountCents
              ? `${credit.arithmetic} → -$${dollarText(takenCents)}`
              : credit.arithmetic,
        },
        null,
        work,
      ),
    );
  }
  return { lines, problems };
}

/** What brings a bill up to the least charge; before credits, which are a payment in kind. */
export function minimumChargeLines(
  charged: readonly DraftLine[],
  edition: RateBookEdition | null,
  work: Work,
): DraftLine[] {
  const minimum = edition?.minimumCharge;
  const sumCents = sumOf(charged);
  // Nothing was done: nothing is charged, and no minimum makes a bill of it.
  if (!minimum || charged.length === 0) return [];
  const amountCents = toCents(decimal(minimum.usd)) - sumCents;
  if (amountCents <= 0) return [];
  return [
    fixedLine(
      {
        section: 'adjustments',
        kind: 'minimum-charge',
        order: '0',
        item: '',
        description: '',
        amountCents,
        rateUsd: minimum.usd,
        authorityId: minimum.authorityId,
        submissionIds: [],
        arithmetic: `$${minimum.usd} - $${dollarText(sumCents)} = $${dollarText(amountCents)}`,
      },
      edition,
      work,
    ),
  ];
}

/** What brings the total to the step of the tariff; none when it is there already. */
export function totalRoundingLines(
  lines: readonly DraftLine[],
  edition: RateBookEdition | null,
  work: Work,
): DraftLine[] {
  const rounding = edition?.totalRounding;
  if (!rounding || lines.length === 0) return [];
  const stepCents = toCents(decimal(rounding.nearestUsd));
  const sumCents = sumOf(lines);
  if (stepCents <= 1) return [];
  const steps = sumCents / stepCents;
  const whole = { nearest: Math.floor(steps + 0.5), up: Math.ceil(steps), down: Math.floor(steps) }[
    rounding.toward
  ];
  const roundedCents = whole * stepCents;
  const amountCents = roundedCents - sumCents;
  if (amountCents === 0) return [];
  return [
    fixedLine(
      {
        section: 'adjustments',
        kind: 'total-rounding',
        order: '1',
        item: '',
        description: '',
        amountCents,
        rateUsd: rounding.nearestUsd,
        authorityId: rounding.authorityId,
        submissionIds: [],
        arithmetic: `$${dollarText(sumCents)} → $${dollarText(roundedCents)}`,
      },
      edition,
      work,
    ),
  ];
}
