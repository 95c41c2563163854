import type { CapacityInterval } from '../capacityInterval.ts';
import type { FlowTestInput } from '../flowTestInput.ts';
import type { FlowTestSettings } from '../flowTestSettings.ts';
import type { PressureDrop } from '../pressureDrop.ts';
import type { Rating } from '../ratingResidual.ts';
import type { FlowTestWarning } from '../warning.ts';

/** A test and what was made of it, for the checks. */
export interface Judged {
  readonly input: FlowTestInput;
  readonly measuredFlowGpm: number;
  readonly drop: PressureDrop;
  readonly rating: Rating;
  readonly targetResidualPsi: number;
  readonly interval: CapacityInterval | null;
  readonly settings: FlowTestSettings;
}

export type Check = (judged: Judged) => FlowTestWarning[];
