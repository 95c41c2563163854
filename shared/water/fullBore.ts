import { DROP_EXPONENT, type TestPoint } from '../hydraulics/availableFlow.ts';
import { frictionFt, PSI_PER_FT, type Pipe } from '../hydraulics/hazenWilliams.ts';
import { OUTLET_CONSTANT } from '../hydraulics/outletFlow.ts';
import { speedPsi } from '../hydraulics/velocityPressure.ts';

/** The lateral with what its fittings lose: K of the velocity pressure in it, without the opening. */
export interface Lateral extends Pipe {
  readonly minorLossK: number;
}

/**
 * Tee, isolation valve, elbow and the hydrant's own open valve, as K on the lateral's velocity pressure. From a
 * hydrant's permitted loss of 5 psi at 1,000 gpm (AWWA C502, from memory) and a tee; the range is common practice, no
 * source.
 */
export const lateralMinorLossK = { low: 2.5, best: 6, high: 10 } as const;

/** How far a stated roughness may be off (common practice, no source). */
export const ROUGHNESS_SPREAD = 20;
/** C where nobody states it: from badly aged to new (common practice, no source). */
export const unknownRoughness = { low: 80, best: 110, high: 140 } as const;

export interface Delivery {
  /** Pressure in the main with nothing flowing, psi. */
  readonly staticPsi: number;
  /** What the main has left at a flow, from a flow test on it; used instead of the main's own pipe. */
  readonly test?: TestPoint | null | undefined;
  /** The main back to where the pressure stays up. */
  readonly main?: Pipe | null | undefined;
  readonly lateral?: Lateral | null | undefined;
  readonly opening: { readonly diameterIn: number; readonly coefficient: number };
}

/** Pressure that is left over at a flow after everything has taken its part, psi. Falls as the flow rises. */
function leftPsi({ staticPsi, test, main, lateral, opening }: Delivery, flowGpm: number): number {
  let left = staticPsi;
  if (test) left -= (test.staticPsi - test.residualPsi) * (flowGpm / test.flowGpm) ** (1 / DROP_EXPONENT);
  else if (main) left -= PSI_PER_FT * frictionFt(main, flowGpm);
  if (lateral)
    left -=
      PSI_PER_FT * frictionFt(lateral, flowGpm) + lateral.minorLossK * speedPsi(lateral.diameterIn, flowGpm);
  return left - speedPsi(opening.diameterIn, flowGpm) / opening.coefficient ** 2;
}

/** No opening passes more than this at a pressure, whatever the pipes: 29.84 d² √p, gpm. */
export const frictionlessGpm = (diameterIn: number, pressurePsi: number): number =>
  OUTLET_CONSTANT * diameterIn * diameterIn * Math.sqrt(pressurePsi);

/** Halvings of the interval; the flow is then known to 1e-12 of the frictionless one. */
const HALVINGS = 42;

/**
 * Flow out of an opening at the end of a lateral, gpm: where static = main + lateral (Hazen-Williams and fittings) +
 * speed at the opening. Found by halving, since every part rises with the flow.
 */
export function deliveredGpm(delivery: Delivery): number {
  let low = 0;
  let high = frictionlessGpm(delivery.opening.diameterIn, delivery.staticPsi);
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (leftPsi(delivery, middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
