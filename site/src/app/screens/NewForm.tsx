import { useEffect } from 'preact/hooks';
import { keepDraft, type Draft } from '../core/drafts.ts';
import { newId } from '../core/device.ts';
import { useObservable } from '../core/observable.ts';
import { replaceWith, route, to } from '../core/router.ts';
import { useWords } from '../core/words.ts';
import { subjectFor } from '../form/build.ts';
import { formOfKind, formsRead } from '../form/specs/byKind.ts';
import { useFormContext } from './formContext.ts';
import { NotFound } from './NotFound.tsx';

/** Opens a new form: makes its id, fills in what is known, and goes to it. `#/new/<kind>?hydrant=…&strike=…&claim=…` */
export function NewForm() {
  const words = useWords();
  const { parts, query } = useObservable(route);
  const kind = parts[1] ?? '';
  useObservable(formsRead);
  const spec = formOfKind(kind);
  const about = {
    hydrantId: query.get('hydrant'),
    strikeId: query.get('strike'),
    claimId: query.get('claim'),
  };
  const { context, settled } = useFormContext(about, kind === 'claim-opened', Object.fromEntries(query));

  useEffect(() => {
    if (!spec || !settled) return;
    const known = { ...about, hydrantId: context.hydrantId };
    const subject = subjectFor(spec.kind, known, newId);
    if (!subject) {
      replaceWith(to(['find'], { then: kind }));
      return;
    }
    const draft: Draft = {
      submissionId: newId(),
      kind,
      subject,
      authorId: context.personId,
      openedAt: context.now.toISOString(),
      touched: false,
      values: spec.blank(context),
      about: {
        hydrantId: context.hydrantId,
        strikeId: about.strikeId,
        ...(about.claimId === null ? {} : { claimId: about.claimId }),
      },
    };
    keepDraft(draft);
    replaceWith(to(['form', draft.submissionId]));
  }, [settled, kind, spec]);

  return spec !== null ? <p role="status">{words.t('form.opening')}</p> : <NotFound />;
}
