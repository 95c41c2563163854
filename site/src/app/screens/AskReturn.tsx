import { returnSoFar } from '../form/returnSoFar.ts';
import type { FormContext, FormSpec } from '../form/spec.ts';
import type { Values } from '../form/nodes.ts';
import { sayHold } from '../form/view/sayHold.ts';
import { useFocusOnMount } from '../core/focus.ts';
import { useWords } from '../core/words.ts';

/**
 * True for a return that would be kept and change nothing: whoever sends it believes the hydrant to be back, so it is
 * asked for once more.
 */
export function wouldChangeNothing(
  spec: FormSpec,
  job: FormContext,
  values: Values,
  submissionId: string,
): boolean {
  if (spec.kind !== 'return-to-service') return false;
  const effect = returnSoFar(spec, job, values, submissionId);
  return effect !== null && !effect.takesEffect;
}

export interface AskReturnProps {
  readonly spec: FormSpec;
  readonly job: FormContext;
  readonly values: Values;
  readonly submissionId: string;
  readonly onSure: () => void;
  readonly onNot: () => void;
}

/** Asks once: the hydrant stays out of service, and why. */
export function AskReturn({ spec, job, values, submissionId, onSure, onNot }: AskReturnProps) {
  const words = useWords();
  const not = useFocusOnMount<HTMLButtonElement>();
  const effect = returnSoFar(spec, job, values, submissionId);
  return (
    <div class="warning" role="alertdialog" aria-label={words.t('return-ask.title')}>
      <p>
        <strong>{words.t('return-ask.title')}</strong>
      </p>
      <ul>
        {(effect?.holds ?? []).map((hold, index) => (
          <li key={index}>{sayHold(hold, words)}</li>
        ))}
      </ul>
      <p class="actions">
        <button type="button" class="primary" onClick={onNot} ref={not}>
          {words.t('return-ask.not')}
        </button>
        <button type="button" onClick={onSure}>
          {words.t('return-ask.sure')}
        </button>
      </p>
    </div>
  );
}
