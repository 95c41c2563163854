import { problem, type Problem } from '../problems/problem.ts';
import { editionOn } from './editions.ts';
import { authorityOf, distinctSorted, groupBy, type DraftLine, type Drafted, type LineUnit } from './line.ts';
import { decimal, dollarText, shownDecimal, toCents, type Decimal } from './money.ts';
import type { RateBookEdition } from './rateBook.ts';
import type { Work } from './work.ts';

/** What is known of the water that was lost. Words: `packet.water.<code>`. */
export const waterStates = ['valve-held', 'none-lost', 'recorded', 'not-measured'] as const;
export type WaterState = (typeof waterStates)[number];

interface Tariff {
  readonly section: 'water' | 'flow-test';
  readonly description: string;
  readonly quantity: string;
  /** The quantity before it was shown to so many places; left out where it is whole as it stands. */
  readonly exact?: { readonly numerator: Decimal; readonly divisor: number } | undefined;
  readonly unit: LineUnit;
  readonly rate: { readonly usd: string; readonly authorityId: string } | null;
  readonly edition: RateBookEdition | null;
  readonly missing: Problem;
  readonly date: string;
  readonly submissionIds: readonly string[];
}

const unitSigns: Partial<Record<LineUnit, string>> = {
  '1000-gal': ' × 1000 gal',
  '100-ft3': ' × 100 ft³',
  m3: ' m³',
};

function tariffLine(tariff: Tariff): DraftLine {
  const { section, description, quantity, exact, unit, rate, edition, missing, date, submissionIds } = tariff;
  const { numerator, divisor } = exact ?? { numerator: decimal(quantity), divisor: 1 };
  const amountCents = rate ? toCents(decimal(rate.usd).times(numerator), divisor) : null;
  const label = `${quantity}${unitSigns[unit] ?? ''}`;
  return {
    section,
    kind: section,
    order: '',
    description,
    item: '',
    quantity,
    unit,
    hoursWorked: null,
    days: [],
    rateUsd: rate?.usd ?? null,
    time: null,
    fraction: null,
    amountCents,
    editionId: edition?.editionId ?? null,
    authority: edition && rate ? authorityOf(edition, rate.authorityId) : null,
    dateBasis: { rule: 'strike', dates: date === '' ? [] : [date] },
    submissionIds,
    arithmetic:
      rate && amountCents !== null ? `${label} × $${rate.usd} = $${dollarText(amountCents)}` : label,
    problems: rate ? [] : [missing],
  };
}

type WaterUnit = '1000-gal' | '100-ft3' | 'm3';

const waterPriceOf = (
  water: NonNullable<RateBookEdition['water']>,
): { readonly usd: string; readonly per: WaterUnit; readonly authorityId: string } =>
  'per1000GalUsd' in water
    ? { usd: water.per1000GalUsd, per: '1000-gal', authorityId: water.authorityId }
    : water;

/**
 * US gallons in the unit of the price, exact: a gallon is 231 cubic inches, a cubic foot 1,728, and an inch 25.4 mm
 * (NIST SP 811).
 */
function billedWater(
  gallons: number,
  unit: WaterUnit,
): { readonly unit: WaterUnit; readonly exactQuantity: Decimal; readonly divisor: number } {
  if (unit === '100-ft3') return { unit, exactQuantity: decimal(gallons).times(231), divisor: 172_800 };
  if (unit === 'm3') return { unit, exactQuantity: decimal(gallons).times('0.003785411784'), divisor: 1 };
  // Ten to the third only moves the point, so the quantity stays exact.
  return { unit, exactQuantity: decimal(gallons).times('0.001'), divisor: 1 };
}

/**
 * Water lost: the figure a person recorded, at the tariff of the strike's day. Nothing when nobody measured it, and
 * nothing when the crews found the main valve holding: a figure recorded all the same is then not billed, and shown.
 */
export function waterLines(
  { waterLost, mainValveHeld, strike }: Work,
  editions: readonly RateBookEdition[],
): Drafted & { readonly state: WaterState } {
  const nothing = { lines: [], problems: [], notes: [] };
  if (mainValveHeld) {
    const doubtful = waterLost !== null && waterLost.gallons > 0;
    return {
      ...nothing,
      state: 'valve-held',
      problems: doubtful
        ? [problem('water-though-valve-held', waterLost.submissionId ?? '', { gallons: waterLost.gallons })]
        : [],
    };
  }
  if (waterLost === null) return { ...nothing, state: 'not-measured' };
  if (waterLost.gallons === 0) return { ...nothing, state: 'none-lost' };
  const { edition, problem: missing } = editionOn(strike.date, editions);
  const price = edition?.water ? waterPriceOf(edition.water) : null;
  const { unit, exactQuantity, divisor } = billedWater(waterLost.gallons, price?.per ?? '1000-gal');
  const line = tariffLine({
    section: 'water',
    description: waterLost.basis,
    quantity: shownDecimal(exactQuantity, divisor, 6),
    exact: { numerator: exactQuantity, divisor },
    unit,
    rate: price,
    edition,
    missing: missing ?? problem('no-water-rate', '', { date: strike.date, editionId: edition.editionId }),
    date: strike.date,
    submissionIds: waterLost.submissionId === undefined ? [] : [waterLost.submissionId],
  });
  return { ...nothing, lines: [line], state: 'recorded' };
}

/** The fee for each flow test after the repair, by the strike's day. Other tests are nobody's damage and are noted. */
export function flowTestLines({ flowTests, strike }: Work, editions: readonly RateBookEdition[]): Drafted {
  const billed = flowTests.filter(({ purpose }) => purpose === 'after-repair');
  const notes = flowTests
    .filter(({ purpose }) => purpose !== 'after-repair')
    .map(({ submissionId }) => problem('flow-test-not-billed', submissionId))
    .sort((a, b) => (a.path < b.path ? -1 : 1));
  if (billed.length === 0) return { lines: [], problems: [], notes };
  const { edition, problem: missing } = editionOn(strike.date, editions);
  const submissionIds = distinctSorted(billed.map(({ submissionId }) => submissionId));
  // A strike has one hydrant, so two records of one moment are of one test.
  const tests = groupBy(billed, ({ testedAt }) => String(Date.parse(testedAt)));
  const problems = tests
    .filter(([, told]) => told.length > 1)
    .map(([, told]) =>
      problem(
        'flow-test-recorded-twice',
        distinctSorted(told.map(({ submissionId }) => submissionId)).join(' '),
      ),
    );
  if (edition?.flowTest === null)
    return {
      lines: [],
      problems: [],
      notes: [...notes, problem('no-flow-test-fee', submissionIds.join(' '))],
    };
  const line = tariffLine({
    section: 'flow-test',
    description: '',
    quantity: String(tests.length),
    unit: 'each',
    rate: edition?.flowTest
      ? { usd: edition.flowTest.eachUsd, authorityId: edition.flowTest.authorityId }
      : null,
    edition,
    missing: missing ?? problem('no-rate-edition', '', { date: strike.date }),
    date: strike.date,
    submissionIds,
  });
  return { lines: [line], problems, notes };
}
