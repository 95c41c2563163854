import type { Hydrant } from '../inventory/hydrant.ts';

/** What shows that a hydrant works again. Words in the catalogue: `proof.<code>`. */
export const proofs = ['no-leaks', 'opens-and-closes-fully', 'drains-down', 'flow-test'] as const;
export type Proof = (typeof proofs)[number];

/**
 * The proofs a struck hydrant of this type needs after it was last closed up. Only a dry barrel drains down; an
 * unknown type is held to the dry barrel's list, the longer one, so that not knowing never lowers the bar.
 * Source: common practice, no source; drain-down within 60 minutes is NFPA 25 §7.3.2 (second-hand).
 */
export function proofsAfterRepair(type: Hydrant['type']): readonly Proof[] {
  switch (type) {
    case 'wet-barrel':
    case 'standpipe':
    case 'wall':
      return ['no-leaks', 'opens-and-closes-fully', 'flow-test'];
    case 'dry-barrel':
    case 'underground':
    case 'unknown':
      return proofs;
  }
}

/** An outage in which the hydrant was not opened up (a shut main, blocked access) needs it shown to work, no more. */
export const proofsAfterOtherOutage: readonly Proof[] = ['opens-and-closes-fully'];
