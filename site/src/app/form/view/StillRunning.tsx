import { useMemo, useRef, useState } from 'preact/hooks';
import { newId } from '../../core/device.ts';
import { keepDraft, readDraft } from '../../core/drafts.ts';
import { checkForm } from '../check.ts';
import { cut, runningRows, stopAll } from '../running.ts';
import type { ExtraProps } from './props.ts';
import { useScope } from './scope.ts';
import { useMinute } from './useMinute.ts';

/** What still runs, said before somebody tries to send it; and the two ways on. */
export function StillRunning({ values, change }: ExtraProps) {
  const { spec, job, words, submissionId } = useScope();
  const now = useMinute();
  const box = useRef<HTMLDivElement>(null);
  const [said, setSaid] = useState<string | null>(null);
  // A correction tells what was; it has no clock to stop.
  const corrects = useMemo(() => readDraft(submissionId)?.corrects !== undefined, [submissionId]);
  const count = runningRows(values, words.zone, now).length;

  const stop = (): void => {
    const result = stopAll(values, words.zone, new Date());
    setSaid(result.ok ? null : 'running.clock-back');
    if (result.ok) change(result.values);
  };
  /** The form is sent once the stopped times stand in it. */
  const submitSoon = (): void => {
    const form = box.current?.closest('form');
    setTimeout(() => form?.requestSubmit(), 0);
  };
  const sendSoFar = (): void => {
    const result = cut(values, words.zone, new Date());
    if (!result.ok) {
      setSaid('running.clock-back');
      return;
    }
    if (!checkForm(spec, result.done, words.zone).ok) {
      // Nothing is divided before what is here can go: two half forms would be worse than one.
      setSaid('running.so-far-problems');
      submitSoon();
      return;
    }
    const draft = readDraft(submissionId);
    if (!draft) return;
    const kept = keepDraft({
      ...draft,
      submissionId: newId(),
      openedAt: new Date().toISOString(),
      touched: true,
      values: { ...spec.blank({ ...job, now: new Date() }), ...result.next },
    });
    // A device that keeps nothing more would lose the time from here on: then it goes on in this form.
    if (!kept) {
      setSaid('form.not-kept');
      return;
    }
    setSaid('running.so-far-kept');
    change({ crew: result.done['crew'] ?? [], machines: result.done['machines'] ?? [] });
    submitSoon();
  };

  if (corrects) return null;
  return (
    <div ref={box}>
      {count > 0 && (
        <div class="still-running notice">
          <p>
            <strong>{words.t('running.open.title', { count })}</strong> {words.t('running.open.more')}
          </p>
          <p class="actions">
            <button type="button" class="plain" onClick={stop}>
              {words.t('running.stop-everything')}
            </button>
            <button type="button" class="plain" onClick={sendSoFar}>
              {words.t('running.send-so-far')}
            </button>
          </p>
        </div>
      )}
      <p role="status">{said === null ? '' : words.t(said)}</p>
    </div>
  );
}
