import { prices, type PriceName } from './prices.ts';

/** An amount of everything that has a price. */
export type Units = Readonly<Record<PriceName, number>>;

const names = Object.keys(prices) as PriceName[];
const make = (of: (name: PriceName) => number): Units =>
  Object.fromEntries(names.map((name) => [name, of(name)])) as Units;

export const nothing: Units = make(() => 0);
export const plus = (a: Units, b: Units): Units => make((name) => a[name] + b[name]);
export const times = (units: Units, count: number): Units => make((name) => units[name] * count);
