import { hiddenDamages } from '../../../../shared/procedure/ground.ts';
import { neededBefore } from '../../../../shared/procedure/holdPoints.ts';
import { modelAtStep } from '../../../../shared/procedure/modelAtStep.ts';
import type { PlannedStep } from '../../../../shared/procedure/procedureFor.ts';
import { hazardsOf, type ProcedureStep } from '../../../../shared/procedure/steps.ts';
import type { Hydrant } from '../../../../shared/inventory/hydrant.ts';
import { useWords } from '../core/words.ts';
import type { KnownModel } from '../form/view/useModel.ts';
import { Box } from './Box.tsx';

interface Props {
  readonly steps: readonly PlannedStep[];
  readonly type: Hydrant['type'];
  readonly model: KnownModel['model'];
  /** Repeated at the head of every printed page. */
  readonly running: string;
}

/** Every step with a box for its time and name; before a hold point a line that stops. */
export function SheetSteps({ steps, type, model, running }: Props) {
  const words = useWords();
  const numberOf = (step: ProcedureStep): number => steps.findIndex((each) => each.step === step) + 1;
  const stopAt = (step: ProcedureStep): string =>
    neededBefore(step, type)
      .map((needed) => {
        const alternative = needed === 'drained' ? numberOf('pumped-out') : 0;
        return `${numberOf(needed)}${alternative > 0 ? `/${alternative}` : ''}`;
      })
      .join(', ');
  return (
    <table class="sheet-steps">
      <thead>
        <tr class="running">
          <td colSpan={4}>{running}</td>
        </tr>
        <tr>
          <th scope="col" colSpan={2}>
            {words.t('sheet.step')}
          </th>
          <th scope="col" class="for-paper">
            {words.t('sheet.time')}
          </th>
          <th scope="col" class="for-paper">
            {words.t('sheet.name')}
          </th>
        </tr>
      </thead>
      {steps.map(({ step, ifNeeded }, index) => {
        const stop = stopAt(step);
        const phase = steps[index]?.phase;
        const first = steps[index - 1]?.phase !== phase;
        return (
          <tbody key={step}>
            {first && (
              <tr class="phase">
                <th scope="rowgroup" colSpan={4}>
                  {words.t(`phase.${phase}`)}
                </th>
              </tr>
            )}
            {stop !== '' && (
              <tr class="stop">
                <td colSpan={4}>{words.t('sheet.stop', { steps: stop })}</td>
              </tr>
            )}
            <tr>
              <td class="number">{index + 1}</td>
              <th scope="row">
                <span class="step-name">{words.t(`step.${step}`)}</span>
                {ifNeeded && <span class="sheet-soft"> ({words.t('procedure.if-needed')})</span>}
                {hazardsOf(step).length > 0 && (
                  <span class="sheet-hazards">
                    {' '}
                    {hazardsOf(step)
                      .map((hazard) => words.t(`step-hazard.${hazard}`))
                      .join(' · ')}
                  </span>
                )}
                <span class="sheet-caution">{words.t(`step.${step}.caution`)}</span>
                {model &&
                  step !== 'tightened-to-torque' &&
                  modelAtStep(step, model, words).map((line) => (
                    <span class="sheet-model" key={line}>
                      {line}
                    </span>
                  ))}
                {model && step === 'tightened-to-torque' && (
                  <span class="sheet-model">{words.t('sheet.see-joints')}</span>
                )}
                {step === 'hidden-damage-checked' && <Found />}
              </th>
              <td class="box" />
              <td class="box name" />
            </tr>
          </tbody>
        );
      })}
    </table>
  );
}

/** What was found, and whether it needs a dig, to be ticked with a pencil. */
function Found() {
  const words = useWords();
  return (
    <span class="sheet-model">
      {hiddenDamages.map((each) => (
        <Box key={each}>{words.t(`value.hiddenDamage.${each}`)}</Box>
      ))}
      <br />
      {words.t('field.repair.needsDig')} <Box>{words.t('value.seen.yes')}</Box>
      <Box>{words.t('value.seen.no')}</Box> {words.t('sheet.if-dig')}
    </span>
  );
}
