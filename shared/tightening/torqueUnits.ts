import { convert } from '../units/convert.ts';

/** Units in which makers' manuals print a torque. */
export const torqueUnits = ['lbf.ft', 'lbf.in', 'N.m', 'kgf.m'] as const;
export type TorqueUnit = (typeof torqueUnits)[number];

/** One torque in both units, exactly the same. */
export interface Torque {
  readonly lbfFt: number;
  readonly nM: number;
}

/** 1 kgf is 9.80665 N exactly (standard gravity; NIST SP 811, appendix B). */
const NEWTON_METRES_PER_KGF_M = 9.80665;

/** The printed value keeps its digits in its own unit; the other is the exact conversion. */
export function bothUnits(value: number, unit: TorqueUnit): Torque {
  switch (unit) {
    case 'lbf.ft':
      return { lbfFt: value, nM: convert(value, 'lbf.ft', 'N.m') };
    case 'lbf.in':
      return { lbfFt: value / 12, nM: convert(value / 12, 'lbf.ft', 'N.m') };
    case 'N.m':
      return { lbfFt: convert(value, 'N.m', 'lbf.ft'), nM: value };
    case 'kgf.m': {
      const nM = value * NEWTON_METRES_PER_KGF_M;
      return { lbfFt: convert(nM, 'N.m', 'lbf.ft'), nM };
    }
  }
}
