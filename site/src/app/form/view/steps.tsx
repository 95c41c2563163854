import { beforeTakeDown } from '../../../../../shared/procedure/holdPoints.ts';
import { procedureSteps, type ProcedureStep } from '../../../../../shared/procedure/steps.ts';
import { effectiveFacts, ofKind } from '../../../../../shared/submissions/effective.ts';
import { focusSoon } from '../../core/focus.ts';
import { localMinute } from '../localTime.ts';
import { rowsOf, textOf, type Values } from '../nodes.ts';
import type { ListProps } from './props.ts';
import { fieldId, useScope } from './scope.ts';

/**
 * The steps of the repair in their usual order, each with its caution. The take-down is a hold point: it is not
 * offered before isolation, loss of pressure and drain are recorded by a named person, here or in an earlier record.
 */
export function StepsList({ list, path, value, set }: ListProps) {
  const { Fields, job, words, submissionId } = useScope();
  const rows = rowsOf(value);
  const earlier = ofKind(effectiveFacts(job.history).facts, 'repair')
    .filter(({ fact }) => fact.submissionId !== submissionId)
    .flatMap(({ fact }) => fact.body.steps);
  const named = (step: ProcedureStep): boolean =>
    earlier.some((each) => each.step === step) ||
    rows.some(
      (row) => row['step'] === step && textOf(row['byWorkerId']) !== '' && textOf(row['doneAt']) !== '',
    );
  const missing = beforeTakeDown.filter((step) => !named(step));

  const tick = (step: ProcedureStep): void => {
    const row: Values = {
      step,
      doneAt: localMinute(new Date(), words.zone),
      byWorkerId: job.personId,
      note: '',
    };
    const order = (each: Values): number => procedureSteps.indexOf(textOf(each['step']) as ProcedureStep);
    set([...rows, row].sort((a, b) => order(a) - order(b)));
    // On to the button that takes it back: the time and the name above it are filled in.
    focusSoon(`#${fieldId(path)}-${step} .row > button`);
  };
  const untick = (step: ProcedureStep): void => {
    set(rows.filter((row) => row['step'] !== step));
    focusSoon(`#${fieldId(path)}-${step} > button`);
  };
  const list_ = (steps: readonly ProcedureStep[]): string =>
    steps.map((step) => words.t(`step.${step}`)).join('; ');

  return (
    <ol class="steps" id={fieldId(path)} tabIndex={-1}>
      {procedureSteps.map((step) => {
        const index = rows.findIndex((row) => row['step'] === step);
        const row = rows[index];
        const before = earlier.filter((each) => each.step === step).at(-1);
        const held = step === 'taken-down' && missing.length > 0;
        return (
          <li key={step} id={`${fieldId(path)}-${step}`} class={row || before ? 'done' : held ? 'held' : ''}>
            <p class="step-title">{words.t(`step.${step}`)}</p>
            <p class="caution">{words.t(`step.${step}.caution`)}</p>
            {before && (
              <p class="recorded">
                {words.t('form.step-recorded', { when: words.when(before.doneAt), who: before.byWorkerId })}
              </p>
            )}
            {row ? (
              <div class="row">
                {held && <p class="warning">{words.t('form.step-breach', { missing: list_(missing) })}</p>}
                <Fields
                  nodes={list.item}
                  values={row}
                  base={`${path}.${index}`}
                  change={(next) => set(rows.map((each, at) => (at === index ? next : each)))}
                />
                <button type="button" class="link" onClick={() => untick(step)}>
                  {words.t('form.not-done')}
                  <span class="visually-hidden"> {words.t(`step.${step}`)}</span>
                </button>
              </div>
            ) : held ? (
              <p class="held-why">{words.t('form.step-held', { missing: list_(missing) })}</p>
            ) : (
              <button type="button" class="plain" onClick={() => tick(step)}>
                {words.t(before ? 'form.done-again' : 'form.done')}
                <span class="visually-hidden"> {words.t(`step.${step}`)}</span>
              </button>
            )}
          </li>
        );
      })}
    </ol>
  );
}
