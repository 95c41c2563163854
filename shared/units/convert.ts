import { units, type UnitId } from './units.ts';

/**
 * How many of `to` are in one `from`: `factor('psi', 'kPa')` is 6.894757293168361.
 *
 * @throws RangeError when the two measure different quantities (a fault of the caller; input from people is checked
 * before, see `sameQuantity`).
 */
export function factor(from: UnitId, to: UnitId): number {
  if (!sameQuantity(from, to)) throw new RangeError(`${from} and ${to} measure different things`);
  return units[from].size / units[to].size;
}

/** `value` of `from`, in `to`. There and back returns the value within two units in the last place. */
export function convert(value: number, from: UnitId, to: UnitId): number {
  return from === to ? value : value * factor(from, to);
}

export function sameQuantity(one: UnitId, other: UnitId): boolean {
  return units[one].quantity === units[other].quantity;
}

/** A conversion as it is printed: the pair, the published digits, and where they stand. */
export interface ConversionCard {
  readonly from: UnitId;
  readonly to: UnitId;
  /** As printed by the source; the factor in use has every digit. */
  readonly published: number;
  /** True where the published digits are the whole number by definition. */
  readonly exact: boolean;
  readonly source: string;
}

const sp811 = 'NIST SP 811 (2008), appendix B';

export const conversionCards: readonly ConversionCard[] = [
  { from: 'in', to: 'mm', published: 25.4, exact: true, source: sp811 },
  { from: 'ft', to: 'm', published: 0.3048, exact: true, source: sp811 },
  { from: 'mi', to: 'km', published: 1.609344, exact: true, source: sp811 },
  {
    from: 'gal',
    to: 'L',
    published: 3.785411784,
    exact: true,
    source: 'NIST Handbook 44, appendix C: 231 in³',
  },
  { from: 'gal', to: 'L', published: 3.785412, exact: false, source: sp811 },
  { from: 'gpm', to: 'L/s', published: 0.0630902, exact: false, source: sp811 },
  { from: 'psi', to: 'kPa', published: 6.894757, exact: false, source: sp811 },
  { from: 'lbf.ft', to: 'N.m', published: 1.355818, exact: false, source: sp811 },
];
