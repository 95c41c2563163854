import type { FactKind } from '../submissions/kinds.ts';

/** What bears on how far the damage goes, and what can be said of each. Nothing in this list is ever "unknown". */
export const known = {
  type: ['dry-barrel', 'wet-barrel', 'underground', 'wall', 'standpipe'],
  barrelStands: ['upright', 'leans', 'out-of-place'],
  ground: ['firm', 'washed-out', 'water-rising'],
  breakawayFlangeParted: ['yes', 'no'],
  stemCouplingParted: ['yes', 'no'],
  nozzleSection: ['sound', 'damaged'],
  lowerBarrel: ['sound', 'damaged'],
  belowGrade: ['no-sign', 'suspected', 'found'],
  main: ['no-sign', 'suspected', 'found'],
  mainValve: ['holds', 'does-not-hold'],
  checkValve: ['holds', 'does-not-hold', 'none-fitted'],
  isolationValve: ['holds', 'does-not-hold', 'none-fitted'],
  /** Seen once the top is open: see `repairFindings`. */
  stem: ['straight', 'bent'],
  seat: ['sound', 'scored'],
  drain: ['clear', 'blocked'],
  /** A crew says that what it found is not mended from the top. */
  dig: ['needed'],
} as const;

export type FindingKey = keyof typeof known;
export type ValueOf<K extends FindingKey> = (typeof known)[K][number];
export const findingKeys = Object.keys(known) as FindingKey[];

/** Where a finding is from: a record, or the inventory (the type). */
export type FindingSource =
  | {
      readonly kind: FactKind;
      readonly submissionId: string;
      readonly at: string;
      /** Who wrote the record. */
      readonly personId: string;
    }
  | { readonly kind: 'inventory' };

/** One thing that somebody saw, in the words of its record. */
export interface Finding<K extends FindingKey = FindingKey> {
  readonly key: K;
  readonly value: ValueOf<K>;
  readonly source: FindingSource;
}

/** What stands for each thing that was seen; what nobody has seen is not there. */
export type Findings = { readonly [K in FindingKey]?: Finding<K> };
