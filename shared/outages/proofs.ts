import type { Hydrant } from '../inventory/hydrant.ts';
import { barrelOf } from '../procedure/procedureFor.ts';

/**
 * What shows that a hydrant works again. Words in the catalogue: `proof.<code>`. `pumped-out` stands in for `drains-down`
 * where the drain is plugged; `disinfected` is asked for where the main was opened.
 */
export const proofs = [
  'no-leaks',
  'opens-and-closes-fully',
  'drains-down',
  'pumped-out',
  'flow-test',
  'disinfected',
] as const;
export type Proof = (typeof proofs)[number];

/**
 * The proofs a struck hydrant of this type needs after it was last closed up. Only a dry barrel drains down; an
 * unknown type is held to the dry barrel's list, the longer one, so that not knowing never lowers the bar. A main that
 * was opened is disinfected first (AWWA C651, from memory).
 * Source: common practice, no source; drain-down within 60 minutes is NFPA 25 §7.3.2 (second-hand).
 */
export function proofsAfterRepair(type: Hydrant['type'], mainOpened = false): readonly Proof[] {
  return [
    'no-leaks',
    'opens-and-closes-fully',
    ...(barrelOf(type) === 'dry' ? (['drains-down'] as const) : []),
    'flow-test',
    ...(mainOpened ? (['disinfected'] as const) : []),
  ];
}

/**
 * The proof that shows the same in another way. A plugged drain (ground water above it, or blocked and left so) cannot
 * drain: the barrel is pumped dry, and the hydrant is marked to be pumped after every use (NFPA 25 §7.3.2 and AWWA M17,
 * from memory).
 */
export const insteadOf: Readonly<Partial<Record<Proof, Proof>>> = { 'drains-down': 'pumped-out' };

/**
 * Proofs of a rebuilt hydrant that may be put off by name: a flow test may have to wait for daylight, weather or water.
 * One that leaks, does not open or holds its water is no hydrant, whoever says so. Common practice, no source.
 */
export const deferrableAfterRepair: readonly Proof[] = ['flow-test'];

/** An outage in which the hydrant was not opened up (a shut main, blocked access) needs it shown to work, no more. */
export const proofsAfterOtherOutage: readonly Proof[] = ['opens-and-closes-fully'];
