/**
 * The units this project reads and shows. Each holds its size as a whole number of a base that is common to its
 * quantity, so every factor is the quotient of two exact integers: one rounding, no drift, and 1 in is 25.4 mm to the
 * last bit. See docs/decisions/0022.
 *
 * Sources: NIST Special Publication 811 (2008), Guide for the Use of the SI, appendix B: inch 25.4 mm, foot 0.3048 m,
 * mile 1.609344 km, US gallon 231 in³, avoirdupois pound 0.45359237 kg and standard gravity 9.80665 m/s², all exact by
 * definition. From these: lbf = 4.4482216152605 N, psi = lbf/in², lbf·ft = lbf × 0.3048 m.
 */

export type Quantity = 'pressure' | 'flow' | 'length' | 'volume' | 'torque';

interface Unit {
  readonly quantity: Quantity;
  /** Size in the quantity's base, an exact integer below 2^53. */
  readonly size: number;
  readonly system: 'us' | 'metric';
}

/** 231 in³ of 2.54 cm: 3.785411784 L, here in nanolitres. */
const GALLON_NL = 3_785_411_784;

export const units = {
  // Base: 1/6 451 600 000 Pa, because 1 psi is 44 482 216 152 605e-13 N over 6.4516e-4 m².
  psi: { quantity: 'pressure', size: 44_482_216_152_605, system: 'us' },
  kPa: { quantity: 'pressure', size: 6_451_600_000_000, system: 'metric' },
  bar: { quantity: 'pressure', size: 645_160_000_000_000, system: 'metric' },
  // Base: nanolitre per hour.
  gpm: { quantity: 'flow', size: GALLON_NL * 60, system: 'us' },
  /** Million US gallons a day. */
  MGD: { quantity: 'flow', size: (GALLON_NL / 24) * 1_000_000, system: 'us' },
  'L/s': { quantity: 'flow', size: 3_600_000_000_000, system: 'metric' },
  'L/min': { quantity: 'flow', size: 60_000_000_000, system: 'metric' },
  'm3/h': { quantity: 'flow', size: 1_000_000_000_000, system: 'metric' },
  // Base: tenth of a millimetre.
  in: { quantity: 'length', size: 254, system: 'us' },
  ft: { quantity: 'length', size: 3048, system: 'us' },
  mi: { quantity: 'length', size: 16_093_440, system: 'us' },
  mm: { quantity: 'length', size: 10, system: 'metric' },
  m: { quantity: 'length', size: 10_000, system: 'metric' },
  km: { quantity: 'length', size: 10_000_000, system: 'metric' },
  // Base: nanolitre.
  gal: { quantity: 'volume', size: GALLON_NL, system: 'us' },
  L: { quantity: 'volume', size: 1_000_000_000, system: 'metric' },
  m3: { quantity: 'volume', size: 1_000_000_000_000, system: 'metric' },
  // Base: 4e-16 N·m, because 1 lbf·ft is 1.3558179483314004 N·m exactly.
  'lbf.ft': { quantity: 'torque', size: 3_389_544_870_828_501, system: 'us' },
  'N.m': { quantity: 'torque', size: 2_500_000_000_000_000, system: 'metric' },
} as const satisfies Record<string, Unit>;

export type UnitId = keyof typeof units;
export const unitIds = Object.keys(units) as [UnitId, ...UnitId[]];

export type System = 'us' | 'metric';

export const isUnitId = (value: unknown): value is UnitId =>
  typeof value === 'string' && Object.hasOwn(units, value);
