import type { Range } from './card.ts';

/**
 * Ranges of what can be read at a hydrant, shared by the cards and the checks of input. Wide on purpose: they keep out
 * slips of the pen (850 psi, 25 in), not poor tests; a poor test gets a warning that says what to do about it.
 */
export const ranges = {
  /** Gauge pressure in the main. Above 300 psi it is not a water utility's. */
  pressurePsi: { unit: 'psi', minimum: 0, maximum: 300 },
  /** Velocity pressure of the jet; nothing flows at zero. */
  pitotPsi: { unit: 'psi', minimum: 0, maximum: 200, exclusiveMinimum: true },
  diameterIn: { unit: 'in', minimum: 1, maximum: 12 },
  /** No outlet passes more than the theoretical discharge; below 0.5 there is an obstruction, not an outlet. */
  coefficient: { unit: '1', minimum: 0.5, maximum: 1 },
  /** Computed flows: no limit that a valid set of readings could reach. */
  flowGpm: { unit: 'gpm', minimum: 0, maximum: 100_000_000 },
  testFlowGpm: { unit: 'gpm', minimum: 0, maximum: 10_000_000, exclusiveMinimum: true },
  /** Read from a meter. */
  measuredFlowGpm: { unit: 'gpm', minimum: 0, maximum: 20_000, exclusiveMinimum: true },
  /** A smooth 2½ in outlet has 168, a 6 in one about 970. */
  kGpmPerSqrtPsi: { unit: '1', minimum: 1, maximum: 2000 },
  pipeDiameterIn: { unit: 'in', minimum: 0.25, maximum: 120 },
  /** Hazen-Williams C. */
  roughness: { unit: '1', minimum: 40, maximum: 160 },
  lengthFt: { unit: 'ft', minimum: 0, maximum: 200_000 },
  /** What a crew sees of a stream: a jet of 200 ft is higher than any main can throw. */
  openingIn: { unit: 'in', minimum: 0.0625, maximum: 24 },
  seenIn: { unit: 'in', minimum: 0, maximum: 2400, exclusiveMinimum: true },
  orificeCoefficient: { unit: '1', minimum: 0.3, maximum: 1 },
  gaugeRangePsi: { unit: 'psi', minimum: 0, maximum: 600, exclusiveMinimum: true },
  /** A gauge or meter that is off by more than a fifth is broken. */
  accuracyFraction: { unit: '1', minimum: 0, maximum: 0.2 },
  resolutionPsi: { unit: 'psi', minimum: 0, maximum: 20 },
} as const satisfies Record<string, Range>;

/** Most outlets in one test: six hydrants of six outlets. */
export const MOST_OUTLETS = 36;
