/**
 * The steps of a dry-barrel breakaway repair in the trade's usual order (common practice, no source). The maker's
 * manual and local codes decide; what a crew ticks is kept as it was ticked, in whatever order.
 */
export const procedureSteps = [
  'traffic-and-protection',
  'isolated',
  'pressure-gone',
  'drained',
  'taken-down',
  'stem-freed',
  'top-opened',
  'hidden-damage-checked',
  'faces-cleaned-gaskets-new',
  'breakaway-parts-fitted',
  'nozzle-section-set',
  'tightened-to-torque',
  'thrust-nut-set',
  'top-closed',
  'refilled-slowly',
  'caps-on',
] as const;
export type ProcedureStep = (typeof procedureSteps)[number];

/** Steps that must stand, by a named person, before the take-down: water that is still held can kill. */
export const beforeTakeDown: readonly ProcedureStep[] = ['isolated', 'pressure-gone', 'drained'];
