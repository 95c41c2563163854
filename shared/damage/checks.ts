import type { DamageClass } from '../strikes/damage.ts';
import type { Findings } from './finding.ts';

/** What to look at to be sure, before anything is opened. Words: `damage.check.<code>`. */
export const sureChecks = [
  'sight-plumb',
  'flange-face',
  'no-water-rises',
  'break-off-face',
  'nozzle-threads',
  'bury-depth',
  'valve-shut-watch',
  'marks-of-others',
  'which-valves',
  'gauge-nearby',
  'spare-on-shelf',
] as const;
export type SureCheck = (typeof sureChecks)[number];

/** Common practice, no source. Nothing here opens a hydrant or steps onto ground that may be washed out. */
const checks: Readonly<Record<DamageClass, readonly SureCheck[]>> = {
  'breakaway-kit': ['sight-plumb', 'flange-face', 'no-water-rises'],
  'nozzle-section': ['nozzle-threads', 'sight-plumb', 'flange-face'],
  'lower-barrel': ['bury-depth', 'valve-shut-watch', 'marks-of-others'],
  'below-grade': ['valve-shut-watch', 'marks-of-others', 'bury-depth'],
  main: ['which-valves', 'gauge-nearby', 'valve-shut-watch', 'marks-of-others'],
  'replace-whole': ['bury-depth', 'spare-on-shelf', 'marks-of-others'],
};

/** The checks for an answer; a wet barrel breaks at bolts or a spool and holds no water back by itself. */
export function checksFor(damage: DamageClass, findings: Findings): readonly SureCheck[] {
  if (damage !== 'breakaway-kit' || findings.type?.value !== 'wet-barrel') return checks[damage];
  return ['sight-plumb', 'break-off-face', 'no-water-rises'];
}
