import type { FlowTestResult } from '../../../../../shared/hydraulics/evaluateFlowTest.ts';
import { formatNumber, formatQuantity } from '../../../../../shared/units/format.ts';
import { useFlowTestSettings } from '../../core/utility.ts';
import { useScope } from './scope.ts';

/** A cause below this share of the doubt is not worth a word. */
const WORTH_SAYING = 0.05;

/** What an interval stands on: what was taken as usual because nobody said, and what makes it uncertain. */
export function FlowTestBasis({ result: { interval } }: { readonly result: FlowTestResult }) {
  const { words } = useScope();
  const { errors } = useFlowTestSettings();
  if (!interval) return null;
  const assumed = interval.assumed.map((what) => {
    if (what === 'diameter-measured')
      return words.t('flow-answer.assumed-diameter-measured', {
        step: formatQuantity(errors.measuredDiameterIn, 'in', words),
      });
    const gauge = what === 'pitot-gauge' ? errors.pitotGauge : errors.pressureGauge;
    return words.t(`flow-answer.assumed-${what}`, {
      range: formatQuantity(gauge.rangePsi, 'psi', words),
      percent: formatNumber(gauge.accuracyFraction * 100, words.locale, 2),
      step: formatQuantity(gauge.resolutionPsi, 'psi', words),
    });
  });
  const causes = interval.causes
    .filter(({ share }) => share >= WORTH_SAYING)
    .map(({ cause, share }) =>
      words.t('flow-answer.cause', {
        cause: words.t(`hydraulics.cause.${cause}`),
        percent: Math.round(share * 100),
      }),
    );
  return (
    <>
      {interval.assumed.length > 0 && (
        <p class="small">
          {words.t('flow-answer.assumed', {
            what: interval.assumed.map((what) => words.t(`hydraulics.assumed.${what}`)).join(', '),
          })}
        </p>
      )}
      <details class="basis">
        <summary>{words.t('flow-answer.basis')}</summary>
        <p>{words.t('hydraulics.answer.basis')}</p>
        {assumed.length > 0 && <p>{words.t('flow-answer.assumed-as', { what: assumed.join('; ') })}</p>}
        {causes.length > 0 && <p>{words.t('flow-answer.causes', { what: causes.join(', ') })}</p>}
      </details>
    </>
  );
}
