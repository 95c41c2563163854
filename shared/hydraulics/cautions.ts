/**
 * What a crew is told before it flows water or turns a bolt, in the order in which it matters. Words:
 * `hydraulics.caution.<code>`. Common practice, no source; the last one says who decides.
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

export type Caution = (typeof flowTestCautions)[number] | (typeof tighteningCautions)[number];
