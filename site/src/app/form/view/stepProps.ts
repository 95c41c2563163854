import type { PlannedStep } from '../../../../../shared/procedure/procedureFor.ts';
import type { List, Values } from '../nodes.ts';
import type { ProcedureSoFar } from '../procedureSoFar.ts';
import type { KnownModel } from './useModel.ts';

/** What one step of the procedure is drawn from. */
export interface StepProps {
  readonly id: string;
  readonly planned: PlannedStep & { readonly asked: boolean };
  readonly soFar: ProcedureSoFar;
  readonly model: KnownModel['model'];
  readonly isNext: boolean;
  readonly list: List;
  /** Of the row, where it is ticked. */
  readonly path: string;
  readonly row: Values | null;
  readonly change: (row: Values) => void;
  readonly tick: () => void;
  readonly untick: () => void;
  readonly level: Values;
  readonly changeLevel: (more: Values) => void;
}
