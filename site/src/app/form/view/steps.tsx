import { barrelOf, phases } from '../../../../../shared/procedure/procedureFor.ts';
import { shownBy } from '../../../../../shared/procedure/holdPoints.ts';
import { procedureSteps, type ProcedureStep } from '../../../../../shared/procedure/steps.ts';
import { focusSoon } from '../../core/focus.ts';
import { to } from '../../core/router.ts';
import { localMinute } from '../localTime.ts';
import { rowsOf, textOf, type Values } from '../nodes.ts';
import { procedureSoFar } from '../procedureSoFar.ts';
import { ListProblems } from './ListProblems.tsx';
import type { ListProps } from './props.ts';
import { fieldId, useScope } from './scope.ts';
import { StepCard } from './StepCard.tsx';
import { useModel } from './useModel.ts';

const order = (row: Values): number => procedureSteps.indexOf(textOf(row['step']) as ProcedureStep);

/**
 * The procedure of this job, a card a step: what it is, what can hurt somebody, what the model says, who did it when. A
 * hold point is not offered before what it waits for is confirmed by name, here or in an earlier record.
 */
export function StepsList({ list, path, value, set, level, changeLevel }: ListProps) {
  const { job, words, submissionId } = useScope();
  const { model } = useModel(job.hydrant?.modelId ?? null);
  const rows = rowsOf(value);
  const soFar = procedureSoFar(job, { ...level, [list.name]: rows }, submissionId, words.zone);
  const at = (step: ProcedureStep): number => rows.findIndex((row) => row['step'] === step);
  const next = soFar.steps.find(
    ({ step, ifNeeded, asked }) =>
      asked && !ifNeeded && shownBy(step).every((each) => at(each) < 0 && !soFar.recorded.has(each)),
  )?.step;

  const tick = (step: ProcedureStep): void => {
    const row: Values = {
      step,
      doneAt: localMinute(new Date(), words.zone),
      byWorkerId: job.personId,
      note: '',
    };
    set([...rows, row].sort((a, b) => order(a) - order(b)));
    // On to the button that takes it back: the time and the name above it are filled in.
    focusSoon(`#${fieldId(path)}-${step} .row > button`);
  };
  const untick = (step: ProcedureStep): void => {
    set(rows.filter((row) => row['step'] !== step));
    focusSoon(`#${fieldId(path)}-${step} > button`);
  };

  return (
    <div class="procedure" id={fieldId(path)} tabIndex={-1}>
      <ListProblems list={list} path={path} />
      <p>
        <strong>
          {words.t('procedure.title', {
            scope: words.t(`scope.${soFar.scope}`),
            barrel: words.t(`barrel.${barrelOf(soFar.type)}`),
          })}
        </strong>
      </p>
      {soFar.type === 'unknown' && <p class="label-note">{words.t('procedure.type-unknown')}</p>}
      <p>
        <a
          class="button plain"
          href={to(['sheet'], {
            strike: job.strike?.strikeId ?? null,
            hydrant: job.hydrantId,
            scope: soFar.scope,
          })}
        >
          {words.t('procedure.sheet-link')}
        </a>
      </p>
      {phases.map((phase) => {
        const steps = soFar.steps.filter((each) => each.phase === phase);
        if (steps.length === 0) return null;
        return (
          <section key={phase} aria-labelledby={`${fieldId(path)}-${phase}`}>
            <h3 id={`${fieldId(path)}-${phase}`}>{words.t(`phase.${phase}`)}</h3>
            <ol class="steps">
              {steps.map((planned) => {
                const index = at(planned.step);
                return (
                  <StepCard
                    key={planned.step}
                    id={`${fieldId(path)}-${planned.step}`}
                    planned={planned}
                    soFar={soFar}
                    model={model}
                    isNext={planned.step === next}
                    list={list}
                    path={`${path}.${index}`}
                    row={rows[index] ?? null}
                    change={(row) => set(rows.map((each, place) => (place === index ? row : each)))}
                    tick={() => tick(planned.step)}
                    untick={() => untick(planned.step)}
                    level={level}
                    changeLevel={changeLevel}
                  />
                );
              })}
            </ol>
          </section>
        );
      })}
    </div>
  );
}
