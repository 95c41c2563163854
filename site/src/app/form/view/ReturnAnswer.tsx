import { returnSoFar } from '../returnSoFar.ts';
import type { ExtraProps } from './props.ts';
import { sayHold } from './sayHold.ts';
import { useScope } from './scope.ts';

/** Says before it is sent whether this return would take effect, and what still holds it. */
export function ReturnAnswer({ values }: ExtraProps) {
  const { spec, job, words, submissionId } = useScope();
  const effect = returnSoFar(spec, job, values, submissionId);
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
