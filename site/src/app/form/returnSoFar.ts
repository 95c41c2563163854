import { returnAsKnown } from '../../../../shared/outages/returnAsKnown.ts';
import type { ReturnEffect } from '../../../../shared/outages/returnEffect.ts';
import { effectiveFacts, type Effective } from '../../../../shared/submissions/effective.ts';
import { forms } from '../../../../shared/submissions/kinds.ts';
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
  const subject = job.strike
    ? { type: 'strike', strikeId: job.strike.strikeId }
    : { type: 'hydrant', hydrantId: job.hydrantId };
  // As if it were recorded now: what is dated later than that has no effect.
  const returned = {
    fact: {
      kind: 'return-to-service',
      submissionId,
      subject,
      occurredAt: parsed.data.returnedAt,
      body: parsed.data,
    },
    recordedAt: new Date().toISOString(),
    corrections: [],
  } as unknown as Effective<'return-to-service'>;
  const open = job.status?.open ?? [];
  return returnAsKnown(returned, {
    hydrantType: job.hydrant?.type ?? 'unknown',
    facts: effectiveFacts([...job.history, ...job.around]).facts,
    told: job.strike
      ? [...open, { outageId: job.strike.strikeId, cause: 'strike', since: job.strike.since }]
      : open,
  });
}
