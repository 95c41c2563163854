import { evaluateFlowTest, type FlowTestResult } from '../../../../../shared/hydraulics/evaluateFlowTest.ts';
import type { FlowTestInput, TestOutlet } from '../../../../../shared/hydraulics/flowTestInput.ts';
import { sayCapacity } from '../../../../../shared/hydraulics/sayCapacity.ts';
import { sayWarning } from '../../../../../shared/hydraulics/sayWarning.ts';
import { supplyCurve } from '../../../../../shared/hydraulics/supplyCurve.ts';
import { supplyCurveSvg } from '../../../../../shared/hydraulics/supplyCurveSvg.ts';
import { formatQuantity } from '../../../../../shared/units/format.ts';
import { encode } from '../encode.ts';
import type { ExtraProps } from './props.ts';
import { useScope } from './scope.ts';

interface Typed {
  readonly residualHydrantId?: string;
  readonly staticPsi?: number;
  readonly residualPsi?: number;
  readonly targetResidualPsi?: number;
  readonly measuredFlowGpm?: number | null;
  readonly flowHydrants?: readonly {
    readonly hydrantId?: string;
    readonly outlets?: readonly Partial<TestOutlet>[];
  }[];
}

const isOutlet = (outlet: Partial<TestOutlet>): outlet is TestOutlet =>
  [outlet.diameterIn, outlet.coefficient, outlet.pitotPsi].every((value) => typeof value === 'number');

/** The readings so far as the engine takes them, or null while some are missing. */
function inputOf(typed: Typed): FlowTestInput | null {
  const { staticPsi, residualPsi, targetResidualPsi, measuredFlowGpm, flowHydrants = [] } = typed;
  if (staticPsi === undefined || residualPsi === undefined) return null;
  const pressures = { staticPsi, residualPsi, targetResidualPsi };
  if (typeof measuredFlowGpm === 'number') return { ...pressures, measuredFlowGpm };
  const outlets = flowHydrants.flatMap((hydrant) => hydrant.outlets ?? []);
  return outlets.length > 0 && outlets.every(isOutlet) ? { ...pressures, outlets } : null;
}

function evaluate(input: FlowTestInput): FlowTestResult | null {
  try {
    return evaluateFlowTest(input);
  } catch {
    // Readings that cannot be a test; the fields say why when the form is sent.
    return null;
  }
}

/** The answer and the supply curve while the readings are typed, with every doubt and what to do about it. */
export function FlowTestAnswer({ values }: ExtraProps) {
  const { spec, words } = useScope();
  const typed = encode(spec.nodes, values, { zone: words.zone, nullable: spec.nullable }).body as Typed;
  const input = inputOf(typed);
  const result = input ? evaluate(input) : null;
  const flowed = (typed.flowHydrants ?? []).map(({ hydrantId }) => hydrantId);
  const oneHydrant = flowed.length === 1 && flowed[0] !== undefined && flowed[0] === typed.residualHydrantId;
  return (
    <div class="answer">
      <h3>{words.t('flow-answer.title')}</h3>
      {oneHydrant && <p class="label-note">{words.t('flow-answer.one-hydrant')}</p>}
      <div role="status">
        {result === null ? (
          <p class="soft">{words.t(input ? 'flow-answer.not-a-test' : 'flow-answer.more-readings')}</p>
        ) : (
          <Answer result={result} />
        )}
      </div>
      {input && result && (
        // Our own drawing from numbers and catalogue words, escaped where it is made.
        <div
          class="curve"
          dangerouslySetInnerHTML={{
            __html: supplyCurveSvg(
              supplyCurve(
                {
                  staticPsi: input.staticPsi,
                  residualPsi: input.residualPsi,
                  flowGpm: result.measuredFlowGpm,
                  targetResidualPsi: result.targetResidualPsi,
                  spread: result.spread,
                },
                words.system,
              ),
              { ...words, idPrefix: 'live-curve', subject: typed.residualHydrantId },
            ),
          }}
        />
      )}
    </div>
  );
}

function Answer({ result }: { readonly result: FlowTestResult }) {
  const { words } = useScope();
  const gpm = (value: number): string => formatQuantity(value, 'gpm', words);
  return (
    <>
      {result.interval && <p class="answer-line">{sayCapacity(result, words)}</p>}
      <dl class="figures">
        <div>
          <dt>{words.t('flow-answer.measured')}</dt>
          <dd>{gpm(result.measuredFlowGpm)}</dd>
        </div>
        <div>
          <dt>
            {words.t('flow-answer.available', {
              residual: formatQuantity(result.targetResidualPsi, 'psi', words),
            })}
          </dt>
          <dd>
            {result.availableFlowGpm === null
              ? words.t('flow-answer.no-answer')
              : gpm(result.availableFlowGpm)}
          </dd>
        </div>
        <div>
          <dt>{words.t('flow-answer.class')}</dt>
          <dd>
            {result.hydrantClass === null ? (
              words.t('flow-answer.no-answer')
            ) : (
              <span class={`class-mark class-${result.hydrantClass.toLowerCase()}`}>
                {result.hydrantClass}
              </span>
            )}
          </dd>
        </div>
        <div>
          <dt>{words.t('flow-answer.drop')}</dt>
          <dd>
            {words.t('flow-answer.drop-of', {
              drop: formatQuantity(result.drop.psi, 'psi', words),
              percent: Math.round(result.drop.fraction * 100),
            })}
          </dd>
        </div>
      </dl>
      {result.warnings.length > 0 && (
        <ul class="doubts">
          {result.warnings.map((warning, index) => (
            <li key={index}>{sayWarning(warning, words)}</li>
          ))}
        </ul>
      )}
    </>
  );
}
