import type { Hydrant } from '../inventory/hydrant.ts';
import type { DamageClass } from '../strikes/damage.ts';
import { procedureSteps, type ProcedureStep } from './steps.ts';

/** How far the work goes. Words: `scope.<code>`. */
export const scopes = ['breakaway', 'dig', 'main', 'replace'] as const;
export type Scope = (typeof scopes)[number];

/**
 * `dry`: the water stands below ground at a main valve, and the barrel drains. `wet`: water stands to the outlets, each
 * of which has its valve. An unknown type is held to the dry barrel's rules, the longer ones, so that not knowing never
 * lowers the bar.
 */
export type Barrel = 'dry' | 'wet';
export function barrelOf(type: Hydrant['type']): Barrel {
  switch (type) {
    case 'wet-barrel':
    case 'standpipe':
    case 'wall':
      return 'wet';
    case 'dry-barrel':
    case 'underground':
    case 'unknown':
      return 'dry';
  }
}

const scopeOfDamage: Readonly<Record<DamageClass, Scope>> = {
  'breakaway-kit': 'breakaway',
  'nozzle-section': 'breakaway',
  'lower-barrel': 'dig',
  'below-grade': 'dig',
  main: 'main',
  'replace-whole': 'replace',
};

/**
 * Which procedure the damage asks for. Hidden damage that needs a dig makes a dig of a breakaway repair; it never makes
 * less of a wider job.
 */
export function scopeFor(damage: DamageClass | null, needsDig: boolean): Scope {
  const scope = damage === null ? 'breakaway' : scopeOfDamage[damage];
  return scope === 'breakaway' && needsDig ? 'dig' : scope;
}

/** Parts of the work, in order, under whose heading steps stand. Words: `phase.<code>`. */
export const phases = ['safe', 'open', 'ground', 'rebuild', 'prove', 'back'] as const;
export type Phase = (typeof phases)[number];

interface Place {
  readonly phase: Phase;
  /** Left out: every procedure. */
  readonly scopes?: readonly Scope[];
  /** Left out: both. */
  readonly barrel?: Barrel;
  /** Only where it applies (a plugged drain, a main that was opened): never the next thing to do by itself. */
  readonly where?: true | readonly Scope[];
}

const ground = { scopes: ['dig', 'main', 'replace'] } as const;
const rebuilt = { scopes: ['breakaway', 'dig', 'main'] } as const;

const places: Readonly<Record<ProcedureStep, Place>> = {
  'traffic-and-protection': { phase: 'safe' },
  'vehicle-and-lines-safe': { phase: 'safe' },
  'locate-ticket': { phase: 'safe', ...ground },
  isolated: { phase: 'safe' },
  'pressure-gone': { phase: 'safe' },
  drained: { phase: 'safe', barrel: 'dry' },
  'pumped-out': { phase: 'safe', barrel: 'dry', where: true },
  'water-lowered': { phase: 'safe', barrel: 'wet' },
  'taken-down': { phase: 'open', ...rebuilt },
  'stem-freed': { phase: 'open', ...rebuilt, barrel: 'dry' },
  'top-opened': { phase: 'open', ...rebuilt, barrel: 'dry' },
  'hidden-damage-checked': { phase: 'open', ...rebuilt },
  dug: { phase: 'ground', ...ground },
  'trench-protected': { phase: 'ground', ...ground },
  'in-excavation': { phase: 'ground', ...ground },
  'main-opened': { phase: 'ground', scopes: ['main', 'replace'], where: ['replace'] },
  'old-hydrant-out': { phase: 'ground', scopes: ['replace'] },
  'lower-barrel-changed': { phase: 'ground', scopes: ['dig', 'main'], where: ['main'] },
  'main-repaired': { phase: 'ground', scopes: ['main'] },
  'new-hydrant-set': { phase: 'ground', scopes: ['replace'] },
  'main-disinfected': { phase: 'ground', scopes: ['main', 'replace'], where: ['replace'] },
  'thrust-block-set': { phase: 'ground', ...ground },
  'drain-bed-laid': { phase: 'ground', ...ground, barrel: 'dry' },
  'faces-cleaned-gaskets-new': { phase: 'rebuild' },
  'breakaway-parts-fitted': { phase: 'rebuild', ...rebuilt },
  'nozzle-section-set': { phase: 'rebuild', ...rebuilt },
  'tightened-to-torque': { phase: 'rebuild' },
  'outlet-valves-checked': { phase: 'rebuild', barrel: 'wet' },
  'thrust-nut-set': { phase: 'rebuild', ...rebuilt, barrel: 'dry' },
  'top-closed': { phase: 'rebuild', ...rebuilt, barrel: 'dry' },
  'refilled-slowly': { phase: 'prove' },
  'leaks-looked-for': { phase: 'prove' },
  backfilled: { phase: 'prove', ...ground },
  'opened-and-closed': { phase: 'prove' },
  'drain-down-timed': { phase: 'prove', barrel: 'dry' },
  flushed: { phase: 'prove' },
  'flow-tested': { phase: 'prove' },
  'caps-on': { phase: 'back' },
  'height-checked': { phase: 'back' },
  'surface-restored': { phase: 'back', ...ground },
  'marked-off': { phase: 'back' },
  'dispatch-told': { phase: 'back' },
};

/** One step of the procedure at hand. */
export interface PlannedStep {
  readonly step: ProcedureStep;
  readonly phase: Phase;
  /** Only where it applies. */
  readonly ifNeeded: boolean;
}

/** The steps of this job in their usual order: for this type of hydrant, as far as the damage goes. */
export function procedureFor(type: Hydrant['type'], scope: Scope): PlannedStep[] {
  const here = barrelOf(type);
  return procedureSteps
    .filter((step) => {
      const { scopes: among, barrel } = places[step];
      return (among === undefined || among.includes(scope)) && (barrel === undefined || barrel === here);
    })
    .map((step) => planned(step, scope));
}

/** Where a step stands when it is recorded though this procedure does not ask for it. */
export function planned(step: ProcedureStep, scope: Scope): PlannedStep {
  const { phase, where } = places[step];
  return { step, phase, ifNeeded: where === true || (where?.includes(scope) ?? false) };
}
