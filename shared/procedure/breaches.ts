import type { Effective } from '../submissions/effective.ts';
import { beforeTakeDown, type ProcedureStep } from './procedure.ts';

/** A hold point that the record shows was passed without its condition. It is kept and shown, never refused. */
export interface Breach {
  readonly code: 'take-down-before-safe';
  /** The repair submission that shows it. */
  readonly submissionId: string;
  readonly at: string;
  readonly byWorkerId: string;
  readonly missing: readonly ProcedureStep[];
}

/** Take-down with no confirmed isolation, loss of pressure and drain, each by a named person and before it. */
export function takeDownBreaches(repairs: readonly Effective<'repair'>[]): Breach[] {
  const steps = repairs.flatMap(({ fact }) =>
    fact.body.steps.map((step) => ({ ...step, submissionId: fact.submissionId })),
  );
  return steps
    .filter(({ step }) => step === 'taken-down')
    .flatMap((takeDown) => {
      const missing = beforeTakeDown.filter(
        (needed) =>
          !steps.some(
            ({ step, doneAt }) => step === needed && Date.parse(doneAt) <= Date.parse(takeDown.doneAt),
          ),
      );
      return missing.length === 0
        ? []
        : [
            {
              code: 'take-down-before-safe' as const,
              submissionId: takeDown.submissionId,
              at: takeDown.doneAt,
              byWorkerId: takeDown.byWorkerId,
              missing,
            },
          ];
    });
}
