import { convert } from '../units/convert.ts';
import { rangeProblems, refuse, type FormulaCard } from './card.ts';
import { ranges } from './ranges.ts';

/**
 * Constant of the outlet equation for gpm, inches and psi: √2 · (π/4) · √(g / w) brought to these units, where w is the
 * weight of water. 29.84 is what water at about 60 °F (62.37 lb/ft³) gives, and what the later editions of NFPA 291
 * print; 29.83 is water at 62.40 lb/ft³. They differ by 0.03 %. Why this one: docs/decisions/0020.
 */
export const OUTLET_CONSTANT = 29.84;

/**
 * The same constant from first principles, for water of a given weight: the speed of a jet is √(2 p / ρ), the outlet's
 * area π d² / 4, and a US gallon 231 in³.
 *
 * @param pcf weight of water, lb/ft³: 62.41 at 40 °F, 62.37 at 60 °F, 62.30 at 70 °F
 */
export function outletConstantAt(pcf: number): number {
  const gravityFtPerS2 = 9.80665 / 0.3048;
  // ft/s for 1 psi: 144 in² a ft²; then in²·ft/s to in³/s (×12), to gallons (÷231), to a minute (×60).
  const speedFtPerS = Math.sqrt((2 * gravityFtPerS2 * 144) / pcf);
  return ((Math.PI / 4) * speedFtPerS * 12 * 60) / 231;
}

const argumentRanges = {
  diameterIn: ranges.diameterIn,
  coefficient: ranges.coefficient,
  pitotPsi: ranges.pitotPsi,
} as const;

export interface OutletReading {
  /** Inside diameter as measured, inches. A nominal size can be 5 % of flow off (K. Kolb, course slide 3). */
  readonly diameterIn: number;
  /** Outlet coefficient c, see `outletShapes`. */
  readonly coefficient: number;
  /** Velocity pressure by pitot at the middle of the stream, psi. */
  readonly pitotPsi: number;
}

/** Flow from one round outlet by pitot, gpm. @throws OutOfRange naming every argument outside its range. */
export function outletFlowGpm(reading: OutletReading): number {
  refuse(rangeProblems(argumentRanges, { ...reading }));
  const { diameterIn, coefficient, pitotPsi } = reading;
  return OUTLET_CONSTANT * coefficient * diameterIn ** 2 * Math.sqrt(pitotPsi);
}

/**
 * The same in metric: millimetres and kilopascals in, litres a minute out, by exact conversion of the one constant
 * (0.0666780 L/min for mm and kPa). The printed metric constant 0.0667766 is 0.15 % above it, 0.18 % above what 29.83
 * gives, and is not used.
 */
export function outletFlowLitresPerMinute(reading: {
  readonly diameterMm: number;
  readonly coefficient: number;
  readonly pitotKpa: number;
}): number {
  const flowGpm = outletFlowGpm({
    diameterIn: convert(reading.diameterMm, 'mm', 'in'),
    coefficient: reading.coefficient,
    pitotPsi: convert(reading.pitotKpa, 'kPa', 'psi'),
  });
  return convert(flowGpm, 'gpm', 'L/min');
}

export const outletFlowCard: FormulaCard<'diameterIn' | 'coefficient' | 'pitotPsi'> = {
  id: 'outlet-flow',
  equation: 'Q = 29.84 · c · d² · √p',
  sources: [
    {
      text: 'NFPA 291, Recommended Practice for Water Flow Testing and Marking of Hydrants, later editions',
      marker: 'memory',
    },
    {
      text: 'K. Kolb, course slides on water supply; N.C. Office of State Fire Marshal drill sheet, 2010 (both with 29.83)',
      marker: 'seen',
    },
  ],
  arguments: argumentRanges,
  result: 'gpm',
  example: {
    given: { diameterIn: 2.5, coefficient: 0.9, pitotPsi: 40 },
    expected: 1061,
    // Printed with 29.83 and to the whole gallon: 0.03 % of 1061 and half a gallon.
    tolerance: 0.9,
    source: { text: "engineer's post on a public forum", marker: 'second-hand' },
  },
  notes: [
    'The diameter is the measured one.',
    'The pitot stands in the middle of the stream, half a diameter out.',
  ],
  compute: outletFlowGpm,
};
