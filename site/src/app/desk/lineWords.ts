import type { StatementLine } from '../../../../shared/costs/line.ts';
import { groupedDollars } from '../../../../shared/costs/money.ts';
import type { Wording } from '../core/words.ts';

/** How a line of a statement is said, wherever the desk shows one. */

export const lineTitle = (
  { kind, description, item, quantity, rateUsd }: StatementLine,
  words: Wording,
): string =>
  words.t(`packet.line.${kind}`, {
    description,
    item,
    quantity: groupedDollars(`$${quantity}`),
    rate: rateUsd === null ? '' : groupedDollars(`$${rateUsd}`),
  });

/** Kinds whose arithmetic can have factors that quantity and rate alone do not: multiplier, fringe, discount, share. */
const factored: readonly StatementLine['kind'][] = [
  'labor',
  'claim-handling',
  'machine-hours',
  'machine-standby',
  'stock',
  'invoiced-part',
  'handling',
  'sales-tax',
  'overhead',
];

/**
 * The factors that multiply to the amount. For time of people and for shares they are those of the arithmetic, fringe
 * and multiplier among them: quantity and rate alone would not give the amount that stands beside them.
 */
export function lineQuantity(line: StatementLine, words: Wording): string {
  const { kind, unit, quantity, rateUsd, arithmetic } = line;
  if (factored.includes(kind)) {
    const beforeAmount = arithmetic.split(/ (?:=|→) \$/)[0] ?? '';
    // Time of several days is first added up, and what the sum is goes on: `1 h + 1 h = 2 h × $40/h`.
    return groupedDollars(beforeAmount.split(' = ').at(-1) ?? '');
  }
  if (unit === 'usd') return '';
  const amount = words.t(`packet.unit.${unit}`, { quantity, count: Number(quantity) });
  return rateUsd === null
    ? amount
    : `${amount} × ${words.t(`packet.per.${unit}`, { rate: groupedDollars(`$${rateUsd}`) })}`;
}
