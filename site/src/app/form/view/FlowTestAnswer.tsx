import type { FlowTestHistory } from '../../../../../shared/hydraulics/flowTestHistory.ts';
import { isOneHydrantTest } from '../../../../../shared/submissions/forms/flowTest.ts';
import { formatNumber, formatQuantity } from '../../../../../shared/units/format.ts';
import { sayCapacity } from '../../../../../shared/hydraulics/sayCapacity.ts';
import { sayChange } from '../../../../../shared/hydraulics/sayChange.ts';
import { useHydrant } from '../../core/records.ts';
import { useFlowTestSettings } from '../../core/utility.ts';
import { ClassMark } from '../../screens/ClassMark.tsx';
import { sayDoubt } from '../../screens/sayDoubt.ts';
import { SupplyCurve } from '../../screens/SupplyCurve.tsx';
import { encode } from '../encode.ts';
import { readingsOf, typedHistory, type Readings, type TypedTest } from '../flowTestTyped.ts';
import { FlowTestBasis } from './FlowTestBasis.tsx';
import type { ExtraProps } from './props.ts';
import { useScope } from './scope.ts';

/**
 * The answer and the supply curve while the readings are typed, with every doubt and what to do about it. The hydrant's
 * earlier tests stand beside it as far as this device has them.
 */
export function FlowTestAnswer({ values }: ExtraProps) {
  const { spec, words, job, submissionId } = useScope();
  const settings = useFlowTestSettings();
  const typed = encode(spec.nodes, values, { zone: words.zone, nullable: spec.nullable }).body as TypedTest;
  const readings = readingsOf(typed);
  const earlier = useHydrant(typed.residualHydrantId || null).value?.flowTests ?? [];
  const found =
    readings &&
    typedHistory(readings, earlier, { submissionId, now: job.now.toISOString(), zone: words.zone, settings });
  const oneHydrant = typed.flowHydrants !== undefined && isOneHydrantTest(typed);
  return (
    <div class="answer">
      <h3>{words.t('flow-answer.title')}</h3>
      {oneHydrant && <p class="label-note">{words.t('flow-answer.one-hydrant')}</p>}
      <div role="status">
        {found?.result ? (
          <Answer readings={readings as Readings} entry={{ ...found, result: found.result }} />
        ) : (
          <p class="soft">{words.t(readings ? 'flow-answer.not-a-test' : 'flow-answer.more-readings')}</p>
        )}
      </div>
      {found?.result && (
        <>
          <SupplyCurve
            staticPsi={found.staticPsi}
            residualPsi={found.residualPsi}
            result={found.result}
            idPrefix="live-curve"
            subject={typed.residualHydrantId}
          />
          <FlowTestBasis result={found.result} />
        </>
      )}
    </div>
  );
}

type Entry = FlowTestHistory['entries'][number];
interface AnswerProps {
  readonly readings: Readings;
  readonly entry: Entry & { readonly result: NonNullable<Entry['result']> };
}

function Answer({ readings, entry: { result, change } }: AnswerProps) {
  const { words } = useScope();
  const { rating, targetResidualPsi } = result;
  const gpm = (value: number | null): string =>
    value === null ? words.t('flow-answer.no-answer') : formatQuantity(value, 'gpm', words);
  const psi = (value: number): string => formatQuantity(value, 'psi', words);
  const figures = [
    [words.t('flow-answer.measured'), gpm(result.measuredFlowGpm)],
    [words.t('flow-answer.capacity', { residual: psi(rating.residualPsi) }), gpm(rating.capacityGpm)],
    ...(targetResidualPsi === rating.residualPsi
      ? []
      : [
          [
            words.t('flow-answer.available', { residual: psi(targetResidualPsi) }),
            gpm(result.availableFlowGpm),
          ],
        ]),
    [
      words.t('flow-answer.drop'),
      words.t('flow-answer.drop-of', {
        drop: psi(result.drop.psi),
        percent: Math.round(result.drop.fraction * 100),
      }),
    ],
  ];
  return (
    <>
      <p class="answer-line">{sayCapacity(result, words)}</p>
      <dl class="figures">
        <div>
          <dt>{words.t('flow-answer.class')}</dt>
          <dd>
            {result.hydrantClass === null ? (
              words.t('flow-answer.no-answer')
            ) : (
              <ClassMark hydrantClass={result.hydrantClass} />
            )}
          </dd>
        </div>
        {figures.map(([label, value]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <Outlets readings={readings} result={result} />
      {result.warnings.length > 0 && (
        <ul class="doubts">
          {result.warnings.map((warning, index) => (
            <li key={index}>{sayDoubt(warning, words)}</li>
          ))}
        </ul>
      )}
      {change && (
        <>
          <h4>{words.t('flow-answer.since-last')}</h4>
          <p>{sayChange({ ...change, fromTestedOn: words.day(change.fromTestedOn) }, words)}</p>
        </>
      )}
    </>
  );
}

/** Flow of each outlet, where there are several or a factor is in one of them. */
function Outlets({ readings, result }: Pick<AnswerProps, 'readings'> & Pick<AnswerProps['entry'], 'result'>) {
  const { words } = useScope();
  const outlets = readings.flowHydrants.flatMap(({ hydrantId, outlets: each }) =>
    each.map((outlet) => ({ hydrantId, outlet })),
  );
  const { outlets: flows } = result;
  if (flows.length !== outlets.length || (flows.length < 2 && outlets[0]?.outlet.kind !== 'pumper'))
    return null;
  return (
    <dl class="said">
      {outlets.map(({ hydrantId, outlet }, index) => {
        const { flowGpm = 0, pumperFactor = 1 } = flows[index] ?? {};
        const flow = formatQuantity(flowGpm, 'gpm', words);
        return (
          <div key={index}>
            <dt>{words.t('flow-answer.outlet', { number: index + 1, hydrantId: hydrantId || 'none' })}</dt>
            <dd>
              {outlet.kind === 'pumper'
                ? words.t('flow-answer.outlet-pumper', {
                    flow,
                    factor: formatNumber(pumperFactor, words.locale, 3),
                    pitot: formatQuantity(outlet.pitotPsi, 'psi', words),
                  })
                : flow}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}
