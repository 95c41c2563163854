import { to } from '../core/router.ts';
import { useWords } from '../core/words.ts';
import type { FormContext, FormSpec } from '../form/spec.ts';

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
