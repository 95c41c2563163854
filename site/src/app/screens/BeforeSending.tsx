import { returnSoFar } from '../form/returnSoFar.ts';
import type { FormContext, FormSpec } from '../form/spec.ts';
import type { Values } from '../form/nodes.ts';
import { sayHold } from '../form/view/sayHold.ts';
import { useFocusOnMount } from '../core/focus.ts';
import { to } from '../core/router.ts';
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

interface AskProps {
  readonly spec: FormSpec;
  readonly job: FormContext;
  readonly values: Values;
  readonly submissionId: string;
  readonly onSure: () => void;
  readonly onNot: () => void;
}

/** Asks once: the hydrant stays out of service, and why. */
export function AskReturn({ spec, job, values, submissionId, onSure, onNot }: AskProps) {
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

/** A strike is open on this hydrant already: the same event is added to, a second strike is reported. */
export function AlreadyStruck({ spec, job }: { readonly spec: FormSpec; readonly job: FormContext }) {
  const words = useWords();
  const open = spec.kind === 'strike' ? job.status?.open.find(({ cause }) => cause === 'strike') : undefined;
  if (!open) return null;
  return (
    <div class="warning" role="status">
      <p>{words.t('strike-open.notice', { since: words.when(open.since) })}</p>
      <p>
        <a class="button" href={to(['strike', open.outageId])}>
          {words.t('strike-open.add')}
        </a>
      </p>
    </div>
  );
}
