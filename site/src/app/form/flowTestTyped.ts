import type { HistoryEntry } from '../../../../shared/hydraulics/flowTestHistory.ts';
import type { FlowTestSettings } from '../../../../shared/hydraulics/flowTestSettings.ts';
import { recordedHistory, type RecordedDatedTest } from '../../../../shared/hydraulics/recordedHistory.ts';
import type { Recorded } from '../../../../shared/submissions/recorded.ts';
import type { BodyOf } from '../../../../shared/submissions/submission.ts';
import { localDay } from './localTime.ts';

type Body = BodyOf<'flow-test'>;
type Outlet = Body['flowHydrants'][number]['outlets'][number];

/** A flow test while it is typed: whatever has been read so far. */
export type TypedTest = Partial<Omit<Body, 'flowHydrants' | 'gauges'>> & {
  readonly residualHydrantId?: string;
  readonly flowHydrants?: readonly {
    readonly hydrantId?: string;
    readonly outlets: readonly Partial<Outlet>[];
  }[];
  readonly gauges?: readonly Partial<Body['gauges'][number]>[];
};

export type Readings = RecordedDatedTest['body'] & Pick<Body, 'flowHydrants'>;

const needed: Readonly<Record<Outlet['kind'], readonly string[]>> = {
  hose: ['diameterIn', 'coefficient', 'pitotPsi'],
  pumper: ['diameterIn', 'coefficient', 'pitotPsi'],
  diffuser: ['kGpmPerSqrtPsi', 'pitotPsi'],
  meter: ['flowGpm'],
};

const isWhole = (outlet: Partial<Outlet>): outlet is Outlet =>
  outlet.kind !== undefined &&
  needed[outlet.kind].every((name) => typeof (outlet as Record<string, unknown>)[name] === 'number');

/** The readings as the engine takes them; null while some are missing. Half-written gauges are left out. */
export function readingsOf(typed: TypedTest): Readings | null {
  const { staticPsi, residualPsi, targetResidualPsi, measuredFlowGpm = null, flowHydrants = [] } = typed;
  if (staticPsi === undefined || residualPsi === undefined || targetResidualPsi === undefined) return null;
  const outlets = flowHydrants.flatMap((hydrant) => hydrant.outlets);
  if (measuredFlowGpm === null && (outlets.length === 0 || !outlets.every(isWhole))) return null;
  return {
    residualHydrantId: typed.residualHydrantId ?? '',
    testedAt: typed.testedAt ?? '',
    purpose: typed.purpose ?? 'other',
    staticPsi,
    residualPsi,
    targetResidualPsi,
    measuredFlowGpm,
    flowHydrants: flowHydrants.map((hydrant) => ({
      hydrantId: hydrant.hydrantId ?? '',
      outlets: hydrant.outlets.filter(isWhole),
    })),
    gauges: (typed.gauges ?? []).filter(
      (gauge): gauge is Body['gauges'][number] =>
        gauge.gaugeId !== undefined && typeof gauge.rangePsi === 'number' && gauge.calibratedOn !== undefined,
    ),
  };
}

interface Around {
  readonly submissionId: string;
  readonly now: string;
  readonly zone: string;
  readonly settings: FlowTestSettings;
}

/**
 * The typed test as the last of its hydrant's tests, so that what only a comparison shows is shown at once. Tests at
 * its own minute or later are left out: a correction finds itself among the recorded ones.
 */
export function typedHistory(
  readings: Readings,
  earlier: readonly Recorded[],
  { submissionId, now, zone, settings }: Around,
): HistoryEntry | null {
  const testedAt = readings.testedAt || now;
  const minute = Math.floor(Date.parse(testedAt) / 60_000);
  const before = earlier.flatMap(({ submission }): RecordedDatedTest[] => {
    if (submission.kind !== 'flow-test') return [];
    if (Math.floor(Date.parse(submission.body.testedAt) / 60_000) >= minute) return [];
    return [datedTest(submission.submissionId, submission.body, zone)];
  });
  const typed = datedTest(submissionId, { ...readings, testedAt }, zone);
  const { entries } = recordedHistory([...before, typed], [], settings);
  return entries.find(({ testId }) => testId === submissionId) ?? null;
}

/** A recorded test with its day in the utility's time zone. */
export const datedTest = (
  submissionId: string,
  body: RecordedDatedTest['body'],
  zone: string,
): RecordedDatedTest => ({ submissionId, testedOn: localDay(new Date(body.testedAt), zone), body });
