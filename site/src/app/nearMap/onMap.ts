import type { Hydrant } from '../../../../shared/inventory/hydrant.ts';
import type { Position } from '../../../../shared/nearest/sphere.ts';

export interface MapHydrant {
  readonly hydrant: Hydrant;
  /** Null: not known now. */
  readonly inService: boolean | null;
  readonly distanceFt: number;
  readonly bearing: string;
}
export interface Here extends Position {
  /** Metres; null for a place that is only remembered. */
  readonly accuracyM: number | null;
}
