/**
 * Every step that a repair may record, in the trade's usual order, of every procedure at once: which of them belong to
 * the job at hand says `procedureFor`. Common practice, no source; the maker's manual, local codes and licensed practice
 * decide, and what a crew ticks is kept as it was ticked, in whatever order. A code, once released, stays.
 * Words: `step.<code>` and `step.<code>.caution`.
 */
export const procedureSteps = [
  'traffic-and-protection',
  'vehicle-and-lines-safe',
  'locate-ticket',
  'isolated',
  'pressure-gone',
  'drained',
  'pumped-out',
  'water-lowered',
  'taken-down',
  'stem-freed',
  'top-opened',
  'hidden-damage-checked',
  'dug',
  'trench-protected',
  'in-excavation',
  'main-opened',
  'old-hydrant-out',
  'lower-barrel-changed',
  'main-repaired',
  'new-hydrant-set',
  'main-disinfected',
  'thrust-block-set',
  'drain-bed-laid',
  'faces-cleaned-gaskets-new',
  'breakaway-parts-fitted',
  'nozzle-section-set',
  'tightened-to-torque',
  'outlet-valves-checked',
  'thrust-nut-set',
  'top-closed',
  'refilled-slowly',
  'leaks-looked-for',
  'backfilled',
  'opened-and-closed',
  'drain-down-timed',
  'flushed',
  'flow-tested',
  'caps-on',
  'height-checked',
  'surface-restored',
  'marked-off',
  'dispatch-told',
] as const;
export type ProcedureStep = (typeof procedureSteps)[number];

/** After one of these the hydrant, or its main, stands open until it is recorded closed up. */
export const opensUp: readonly ProcedureStep[] = [
  'taken-down',
  'top-opened',
  'main-opened',
  'old-hydrant-out',
];

/**
 * Steps that another form records: the test with its readings, the return with its mark and its word to dispatch. They
 * stand in the procedure at their place and are never ticked twice.
 */
export const recordedElsewhere: Readonly<Partial<Record<ProcedureStep, 'flow-test' | 'return-to-service'>>> =
  {
    'flow-tested': 'flow-test',
    'marked-off': 'return-to-service',
    'dispatch-told': 'return-to-service',
  };

/** What can hurt somebody at a step. Words: `step-hazard.<code>`. */
export const stepHazards = [
  'traffic',
  'lines',
  'stored-pressure',
  'pinch',
  'lifting',
  'excavation',
  'chlorine',
  'cold',
] as const;
export type StepHazard = (typeof stepHazards)[number];

const hazards: Readonly<Partial<Record<ProcedureStep, readonly StepHazard[]>>> = {
  'traffic-and-protection': ['traffic'],
  'vehicle-and-lines-safe': ['lines', 'stored-pressure', 'traffic'],
  'locate-ticket': ['excavation', 'lines'],
  isolated: ['stored-pressure', 'traffic'],
  'pressure-gone': ['stored-pressure'],
  drained: ['stored-pressure', 'cold'],
  'pumped-out': ['stored-pressure', 'cold'],
  'water-lowered': ['stored-pressure', 'cold'],
  'taken-down': ['lifting', 'pinch', 'stored-pressure'],
  'stem-freed': ['pinch'],
  'top-opened': ['stored-pressure', 'pinch'],
  dug: ['excavation', 'lines'],
  'trench-protected': ['excavation'],
  'in-excavation': ['excavation', 'stored-pressure'],
  'main-opened': ['stored-pressure', 'excavation'],
  'old-hydrant-out': ['lifting', 'excavation', 'stored-pressure'],
  'lower-barrel-changed': ['lifting', 'pinch', 'excavation'],
  'main-repaired': ['excavation', 'pinch'],
  'new-hydrant-set': ['lifting', 'pinch', 'excavation'],
  'main-disinfected': ['chlorine'],
  'thrust-block-set': ['excavation'],
  'breakaway-parts-fitted': ['pinch'],
  'nozzle-section-set': ['lifting', 'pinch'],
  'tightened-to-torque': ['pinch'],
  'refilled-slowly': ['stored-pressure'],
  'leaks-looked-for': ['stored-pressure'],
  backfilled: ['excavation', 'traffic'],
  'opened-and-closed': ['stored-pressure', 'cold'],
  'drain-down-timed': ['cold'],
  flushed: ['traffic', 'chlorine', 'cold', 'lines'],
  'flow-tested': ['traffic', 'chlorine', 'cold'],
  'surface-restored': ['traffic'],
};
export const hazardsOf = (step: ProcedureStep): readonly StepHazard[] => hazards[step] ?? [];
