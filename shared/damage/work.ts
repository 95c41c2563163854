import type { DamageClass } from '../strikes/damage.ts';
import type { BodyOf } from '../submissions/submission.ts';
import type { Findings } from './finding.ts';

/** What must be settled before the work begins. Words: `damage.need.<code>`. */
export const needs = ['isolate', 'shut-main', 'locate', 'trench', 'disinfect', 'samples', 'lifting'] as const;
export type Need = (typeof needs)[number];

/** Machines by what they do; a rate book has its own codes. Words: `damage.machine.<code>`. */
export const workMachines = [
  'service-truck',
  'traffic-signs',
  'hoist',
  'excavator',
  'dump-truck',
  'pump',
  'compactor',
  'chlorinator',
] as const;
export type WorkMachine = (typeof workMachines)[number];

/** Parts that no model's kit holds. Words: `damage.part.<code>`. */
export const workParts = [
  'break-off-bolts',
  'nozzle-section',
  'lower-barrel',
  'lower-works',
  'gaskets',
  'lateral-pipe',
  'restraint',
  'drain-stone',
  'thrust-block',
  'main-clamp',
  'whole-hydrant',
] as const;
export type WorkPart = (typeof workParts)[number];

type Model = BodyOf<'hydrant-model'>;

export interface ExpectedWork {
  /** People, from and to. */
  readonly crew: readonly [number, number];
  readonly needs: readonly Need[];
  readonly machines: readonly WorkMachine[];
  /** The model's own kit, where it is what this damage takes. */
  readonly kit: Model['kitContents'];
  /** Why there is no kit: the hydrant's model is not on record, or its record lists none. */
  readonly kitMissing: 'no-model' | 'no-contents' | null;
  readonly parts: readonly WorkPart[];
}

interface Plan {
  readonly crew: readonly [number, number];
  readonly machines: readonly WorkMachine[];
  readonly parts: readonly WorkPart[];
  readonly needs: readonly Need[];
  readonly takesKit: boolean;
}

const road: readonly WorkMachine[] = ['service-truck', 'traffic-signs'];
const dig: readonly WorkMachine[] = [...road, 'hoist', 'excavator', 'dump-truck', 'pump', 'compactor'];

/** Common practice, no source: what a crew of a middling utility brings. The maker's manual and local rules decide. */
const plans: Readonly<Record<DamageClass, Plan>> = {
  'breakaway-kit': { crew: [2, 2], machines: road, parts: [], needs: ['isolate'], takesKit: true },
  'nozzle-section': {
    crew: [2, 3],
    machines: [...road, 'hoist'],
    parts: ['nozzle-section'],
    needs: ['isolate', 'lifting'],
    takesKit: true,
  },
  'lower-barrel': {
    crew: [3, 4],
    machines: dig,
    parts: ['lower-barrel', 'lower-works', 'gaskets'],
    needs: ['isolate', 'locate', 'trench', 'lifting', 'disinfect'],
    takesKit: true,
  },
  'below-grade': {
    crew: [3, 4],
    machines: dig,
    parts: ['lateral-pipe', 'restraint', 'gaskets', 'drain-stone', 'thrust-block'],
    needs: ['isolate', 'locate', 'trench', 'lifting', 'disinfect'],
    takesKit: false,
  },
  // A main that was opened is disinfected and sampled before it serves again: AWWA C651.
  main: {
    crew: [4, 6],
    machines: [...dig, 'chlorinator'],
    parts: ['main-clamp', 'restraint', 'thrust-block'],
    needs: ['shut-main', 'locate', 'trench', 'lifting', 'disinfect', 'samples'],
    takesKit: false,
  },
  'replace-whole': {
    crew: [3, 4],
    machines: dig,
    parts: ['whole-hydrant', 'restraint', 'drain-stone', 'thrust-block'],
    needs: ['isolate', 'locate', 'trench', 'lifting', 'disinfect'],
    takesKit: false,
  },
};

/** What mending this damage is likely to take. A plan to bring things by, not a bill. */
export function expectedWork(
  damage: DamageClass,
  findings: Findings,
  model: Pick<Model, 'kitContents'> | null,
): ExpectedWork {
  const plan = plans[damage];
  const kit = plan.takesKit ? (model?.kitContents ?? []) : [];
  const kitMissing = !plan.takesKit || kit.length > 0 ? null : model === null ? 'no-model' : 'no-contents';
  // A wet barrel breaks at bolts or a spool; it has no stem coupling, and many makers list no kit.
  const wetBreak = damage === 'breakaway-kit' && findings.type?.value === 'wet-barrel' && kit.length === 0;
  // Damage that was seen in the works below comes on top of what the answer takes by itself.
  const works =
    (findings.stem?.value === 'bent' || findings.seat?.value === 'scored') &&
    !plan.parts.some((part) => part === 'lower-works' || part === 'whole-hydrant');
  const isolation = findings.isolationValve?.value;
  const notIsolated = isolation === 'does-not-hold' || isolation === 'none-fitted';
  return {
    crew: plan.crew,
    needs: needs.filter((need) =>
      need === 'shut-main'
        ? plan.needs.includes(need) || notIsolated
        : plan.needs.includes(need) && !(need === 'isolate' && notIsolated),
    ),
    machines: plan.machines,
    kit,
    kitMissing,
    parts: [
      ...(wetBreak ? (['break-off-bolts', 'gaskets'] as const) : []),
      ...plan.parts,
      ...(works ? (['lower-works'] as const) : []),
    ],
  };
}
