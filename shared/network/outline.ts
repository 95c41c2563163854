import type { NetworkWarning } from './answer.ts';
import type { ModelLink, PlainModel } from './plainModel.ts';

/** A pipe, pump or valve, as far as a person needs it to choose what to close. */
export interface OutlineLink extends ModelLink {
  readonly kind: 'pipe' | 'pump' | 'valve';
  /** Null for a pump. */
  readonly diameterIn: number | null;
  /** Null for what is not a pipe. */
  readonly lengthFt: number | null;
  /** As the file has it at the start of its clock. */
  readonly open: boolean;
}

/** What a network file holds, read once when it is loaded, with what its own solution looks like at the hour asked for. */
export interface ModelOutline extends PlainModel {
  readonly links: readonly OutlineLink[];
  /** How the file has losses computed. */
  readonly headloss: 'hazen-williams' | 'darcy-weisbach' | 'chezy-manning';
  /** Hour of the model's clock at which it was solved; less than was asked for where its run ends before. */
  readonly hour: number;
  /** What all customers together take at that hour, gpm. */
  readonly demandGpm: number;
  /** Junctions whose pressure is below zero at that hour: the model cannot be right there. */
  readonly negativeNodes: number;
  /** Junctions that no reservoir or tank reaches with what the file has closed. */
  readonly unfedNodes: number;
  readonly warnings: readonly NetworkWarning[];
}
