import { availableFlow } from './availableFlow.ts';
import type { Computation } from './computation.ts';
import { convertUnits } from './convertUnits.ts';
import { flowTest } from './flowTest.ts';
import { history } from './flowTestHistory.ts';
import { formula } from './formula.ts';
import { hydrantClass } from './hydrantClass.ts';
import { outletFlow } from './outletFlow.ts';
import { statement } from './statement.ts';
import { supplyCurveDrawing } from './supplyCurve.ts';
import { tightening } from './tightening.ts';
import { waterChallenge, waterLost } from './waterLost.ts';

/** Everything that can be computed by name, in the order in which it is listed. One line each. */
const list = [
  flowTest,
  outletFlow,
  supplyCurveDrawing,
  history,
  availableFlow,
  hydrantClass,
  waterLost,
  waterChallenge,
  tightening,
  formula,
  convertUnits,
  statement,
] as const;

// The schema and `run` of one entry fit each other; the list as a whole forgets how.
export const computations: ReadonlyMap<string, Computation> = new Map(
  list.map((entry) => [entry.name, entry as unknown as Computation]),
);
