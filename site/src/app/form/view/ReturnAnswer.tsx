import { forms } from '../../../../../shared/submissions/kinds.ts';
import { effectiveFacts, ofKind, type Effective } from '../../../../../shared/submissions/effective.ts';
import { returnEffect, valveTurns, type ReturnEffect } from '../../../../../shared/outages/returnEffect.ts';
import { latestReport } from '../../../../../shared/strikes/state.ts';
import { encode } from '../encode.ts';
import type { FormContext, FormSpec } from '../spec.ts';
import type { Values } from '../nodes.ts';
import type { ExtraProps } from './props.ts';
import { sayHold } from './sayHold.ts';
import { useScope } from './scope.ts';

/** What the record would make of this return as it is filled in; null while it cannot be read as one. */
function effectSoFar(
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

/** Says before it is sent whether this return would take effect, and what still holds it. */
export function ReturnAnswer({ values }: ExtraProps) {
  const { spec, job, words, submissionId } = useScope();
  const effect = effectSoFar(spec, job, values, submissionId);
  return (
    <div class="answer" role="status">
      {effect === null ? (
        <p class="soft">{words.t('return-answer.more')}</p>
      ) : effect.takesEffect ? (
        <>
          <p class="good">{words.t('return-answer.takes-effect')}</p>
          {effect.deferred.length > 0 && (
            <p>
              {words.t('return-answer.deferred', {
                proofs: effect.deferred.map(({ proof }) => words.t(`proof.${proof}`)).join(', '),
              })}
            </p>
          )}
        </>
      ) : (
        <div class="warning">
          <p>
            <strong>{words.t('return-answer.held')}</strong>
          </p>
          <ul>
            {effect.holds.map((hold, index) => (
              <li key={index}>{sayHold(hold, words)}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}
