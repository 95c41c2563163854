import { useEffect } from 'preact/hooks';
import { correctionKind } from '../../../../shared/submissions/kinds.ts';
import { formOf } from '../../../../shared/submissions/submission.ts';
import { keepDraft } from '../core/drafts.ts';
import { newId } from '../core/device.ts';
import { useObservable } from '../core/observable.ts';
import { useClaim, useStrike, useHydrant } from '../core/records.ts';
import { replaceWith, route, to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { decode } from '../form/decode.ts';
import { formOfKind, formsRead } from '../form/specs/byKind.ts';
import { NotFound } from './NotFound.tsx';
import { useStock } from './stock/stockAnswer.ts';
import { Unread } from './Unread.tsx';

/**
 * Opens a recorded submission as it was typed, to be put right: `#/correct/strike/<id>/<submissionId>`. The correction
 * names the latest in the chain, so that corrections run in a line.
 */
export function CorrectForm() {
  const words = useWords();
  const { parts } = useObservable(route);
  const [, from, ofId = '', targetId] = parts;
  const strike = useStrike(from === 'strike' ? ofId : null);
  const hydrant = useHydrant(from === 'hydrant' ? ofId : null);
  const claim = useClaim(from === 'claim' ? ofId : null);
  const stock = useStock(from === 'stock');
  const recorded = [
    ...(stock.value?.history.map((entry) => entry.recorded) ?? []),
    ...(claim.value?.history.map((entry) => entry.recorded) ?? []),
    ...(strike.value?.history.map((entry) => entry.recorded) ?? []),
    ...(hydrant.value?.flowTests ?? []),
    ...(hydrant.value?.mains?.records ?? []),
  ];
  const target = recorded.find(({ submission }) => submission.submissionId === targetId)?.submission;
  const loaded =
    strike.value !== null || hydrant.value !== null || claim.value !== null || stock.value !== null;
  useObservable(formsRead);
  const spec = target ? formOfKind(formOf(target).kind) : null;
  const personId = useObservable(session)?.personId ?? '';

  useEffect(() => {
    if (!target || !spec) return;
    const body = target.kind === correctionKind ? target.body.replacement : target.body;
    if (body === null) return;
    const submissionId = newId();
    keepDraft({
      submissionId,
      kind: spec.kind,
      subject: target.subject,
      authorId: personId,
      openedAt: new Date().toISOString(),
      touched: false,
      values: {
        ...decode(spec.nodes, body, words.zone),
        ...spec.steering?.(body),
      },
      corrects: {
        targetId: target.submissionId,
        occurredAt: target.occurredAt,
        reason: '',
        withdraw: false,
        ...('hydrantId' in body ? { hydrantId: body.hydrantId as string | null } : {}),
      },
      about: {
        hydrantId: strike.value?.strike.hydrantId ?? (from === 'hydrant' ? ofId : null),
        strikeId: target.subject.type === 'strike' ? target.subject.strikeId : null,
      },
    });
    replaceWith(to(['form', submissionId]));
  }, [target?.submissionId, spec]);

  if (!loaded)
    return (
      <Unread
        resource={from === 'strike' ? strike : from === 'claim' ? claim : from === 'stock' ? stock : hydrant}
      />
    );
  return target && spec !== null ? <p role="status">{words.t('form.opening')}</p> : <NotFound />;
}
