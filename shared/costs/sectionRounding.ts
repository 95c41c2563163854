import { HOUR_MS } from './hours.ts';
import type { DraftLine, Section } from './line.ts';
import { decimal, dollarText, toCents, type Decimal } from './money.ts';

/** Every exact amount is a decimal over 1 or over the milliseconds of an hour, so one divisor serves them all. */
const DIVISOR = HOUR_MS;

const overDivisor = ({ numerator, divisor }: NonNullable<DraftLine['exactUsd']>): Decimal => {
  if (DIVISOR % divisor !== 0) throw new RangeError(`an amount over ${divisor} has no common divisor`);
  return numerator.times(DIVISOR / divisor);
};

/**
 * Rounds a section's exact sum once, half up, and gives its cents to the lines by largest remainder, so that the lines
 * still add up to it: each line is its exact amount cut to the cent, and the cents left over go to those that lost most.
 * A line whose amount was never rounded keeps it.
 */
export function roundBySection(lines: readonly DraftLine[]): DraftLine[] {
  const sections = [...new Set(lines.map(({ section }) => section))];
  const rounded = new Map<DraftLine, DraftLine>();
  for (const section of sections) roundSection(lines, section, rounded);
  return lines.map((line) => rounded.get(line) ?? line);
}

function roundSection(
  lines: readonly DraftLine[],
  section: Section,
  rounded: Map<DraftLine, DraftLine>,
): void {
  const exact = lines.flatMap((line) =>
    line.section === section && line.exactUsd && line.amountCents !== null
      ? [{ line, scaled: overDivisor(line.exactUsd) }]
      : [],
  );
  if (exact.length < 2) return;
  const targetCents = toCents(
    exact.reduce((total, { scaled }) => total.plus(scaled), decimal(0)),
    DIVISOR,
  );
  const cut = exact.map(({ line, scaled }) => {
    const scaledCents = scaled.times(100);
    const remainder = scaledCents.mod(DIVISOR);
    return { line, cents: scaledCents.minus(remainder).div(DIVISOR).toNumber(), remainder };
  });
  let left = targetCents - cut.reduce((total, { cents }) => total + cents, 0);
  const byRemainder = [...cut].sort(
    (a, b) =>
      b.remainder.cmp(a.remainder) ||
      (a.line.order < b.line.order ? -1 : a.line.order > b.line.order ? 1 : 0),
  );
  for (const { line, cents } of byRemainder) {
    const amountCents = cents + (left > 0 ? 1 : 0);
    if (left > 0) left -= 1;
    if (amountCents === line.amountCents) continue;
    rounded.set(line, {
      ...line,
      amountCents,
      arithmetic: `${line.arithmetic} → $${dollarText(amountCents)}`,
    });
  }
}
