import { latestReport } from '../../../../shared/strikes/state.ts';
import { effectiveFacts, ofKind, type Effective } from '../../../../shared/submissions/effective.ts';
import { forms } from '../../../../shared/submissions/kinds.ts';
import { returnEffect, valveTurns, type ReturnEffect } from '../../../../shared/outages/returnEffect.ts';
import { encode } from './encode.ts';
import type { FormContext, FormSpec } from './spec.ts';
import type { Values } from './nodes.ts';

/** What the record would make of this return as it is filled in; null while it cannot be read as one. */
export function returnSoFar(
  spec: FormSpec,
  job: FormContext,
  values: Values,
  submissionId: string,
): ReturnEffect | null {
  const { body } = encode(spec.nodes, values, { zone: job.zone, nullable: spec.nullable });
  const parsed = forms['return-to-service'].body.safeParse(body);
  if (!parsed.success) return null;
  const { facts } = effectiveFacts(
    job.history.filter(({ submission }) => submission.submissionId !== submissionId),
  );
  // As if it were recorded now: what is dated later than that has no effect.
  const returned = {
    fact: { submissionId, body: parsed.data },
    recordedAt: new Date().toISOString(),
    corrections: [],
  } as unknown as Effective<'return-to-service'>;
  const began =
    job.status?.open.find(({ outageId }) => parsed.data.closes.includes(outageId))?.since ??
    parsed.data.returnedAt;
  return returnEffect(returned, {
    hydrantType: job.hydrant?.type ?? 'unknown',
    cause: job.strike ? 'strike' : 'other',
    began: latestReport(facts) ?? job.strike?.since ?? began,
    hydrantsDiffer: (job.strike?.hydrantIds.length ?? 0) > 1,
    repairs: ofKind(facts, 'repair'),
    valveTurns: [
      ...valveTurns(facts),
      ...parsed.data.valvesReopened.map(({ valveId, at }) => ({
        valveId,
        at,
        closed: false,
        isolation: false,
        submissionId,
      })),
    ],
  });
}
