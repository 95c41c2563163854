/**
 * What a crew is told before it flows water, takes a hydrant apart or turns a bolt, in the order in which it matters.
 * Words: `hydraulics.caution.<code>`, and `caution.short.<code>` for a line of a list. Common practice, no source; the
 * last one says who decides.
 */
export const flowTestCautions = [
  'traffic',
  'discharge-path',
  'ice',
  'slowly',
  'stand-clear',
  'dechlorinate',
  'rules-decide',
] as const;

export const flushingCautions = flowTestCautions;

export const tighteningCautions = [
  'traffic',
  'no-pressure',
  'stand-clear',
  'slowly',
  'rules-decide',
] as const;

/** At the place of a strike, before anything is touched. */
export const strikeCautions = [
  'traffic',
  'lines',
  'water',
  'stand-clear',
  'ice',
  'locate',
  'rules-decide',
] as const;

/** From the take-down to the refill. */
export const repairCautions = [
  'traffic',
  'locate',
  'no-pressure',
  'stand-clear',
  'slowly',
  'discharge-path',
  'ice',
  'dechlorinate',
  'flush',
  'rules-decide',
] as const;

/** Refilling, proving and flowing, before the mark is taken off. */
export const returnCautions = [
  'traffic',
  'slowly',
  'stand-clear',
  'discharge-path',
  'ice',
  'dechlorinate',
  'flush',
  'rules-decide',
] as const;

export const valveCautions = ['traffic', 'locate', 'slowly', 'rules-decide'] as const;

/** Judging what flows, for the figure of water lost. */
export const waterLostCautions = ['traffic', 'measure', 'water', 'lines'] as const;

export type Caution = (
  | typeof flowTestCautions
  | typeof tighteningCautions
  | typeof strikeCautions
  | typeof repairCautions
  | typeof returnCautions
  | typeof valveCautions
  | typeof waterLostCautions
)[number];
