import type { FlowTestResult } from '../../../../shared/hydraulics/evaluateFlowTest.ts';
import { supplyCurve } from '../../../../shared/hydraulics/supplyCurve.ts';
import { supplyCurveSvg } from '../../../../shared/hydraulics/supplyCurveSvg.ts';
import { useFlowTestSettings } from '../core/utility.ts';
import { useWords } from '../core/words.ts';

interface Props {
  readonly staticPsi: number;
  readonly residualPsi: number;
  readonly result: FlowTestResult;
  readonly idPrefix: string;
  readonly subject?: string | undefined;
}

/** The supply curve of a test with the band of its readings. */
export function SupplyCurve({ staticPsi, residualPsi, result, idPrefix, subject }: Props) {
  const words = useWords();
  const { minimumDropFraction } = useFlowTestSettings();
  const { measuredFlowGpm: flowGpm, targetResidualPsi, spread } = result;
  const curve = supplyCurve(
    { staticPsi, residualPsi, flowGpm, targetResidualPsi, minimumDropFraction, spread },
    words.system,
  );
  // Our own drawing from numbers and catalogue words, escaped where it is made.
  const svg = supplyCurveSvg(curve, { ...words, idPrefix, subject: subject || undefined });
  return <div class="curve" dangerouslySetInnerHTML={{ __html: svg }} />;
}
