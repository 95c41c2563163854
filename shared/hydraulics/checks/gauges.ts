import { gaugeReads, type GaugeRead, type TestGauge } from '../testGauge.ts';
import type { FlowTestInput } from '../flowTestInput.ts';
import { warn, type FlowTestWarning } from '../warning.ts';
import type { Check } from './judged.ts';

const DAY_MS = 86_400_000;

/** Whole days from one date to another, both `2026-03-04`. */
const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);

function calibration(
  { gaugeId, calibratedOn }: TestGauge,
  testedOn: string | undefined,
  mostDays: number,
): FlowTestWarning[] {
  if (calibratedOn === undefined) return [];
  if (calibratedOn === null) return warn('gauge-calibration-unknown', { gaugeId });
  if (testedOn === undefined) return [];
  const days = daysBetween(calibratedOn, testedOn);
  if (days < 0) return warn('gauge-calibrated-after-test', { gaugeId, calibratedOn, testedOn });
  return days > mostDays ? warn('gauge-out-of-calibration', { gaugeId, calibratedOn, days, mostDays }) : [];
}

/** The greatest value that a kind of reading had in this test, psi; null when nothing was read. */
function greatest(
  what: GaugeRead,
  { staticPsi, residualPsi, outlets }: FlowTestInput,
  gauge: TestGauge,
): number | null {
  if (what === 'static') return staticPsi;
  if (what === 'residual') return residualPsi;
  const read = (outlets ?? []).flatMap((one) =>
    one.kind !== 'meter' && (one.gaugeId === undefined || one.gaugeId === gauge.gaugeId)
      ? [one.pitotPsi]
      : [],
  );
  return read.length > 0 ? Math.max(...read) : null;
}

/** A needle past the end of its scale reads nothing: the reading or the gauge was written down wrong. */
const readingAboveGauge: Check = ({ input }) =>
  (input.gauges ?? []).flatMap((gauge) =>
    gaugeReads
      .filter((what) => gauge.reads?.includes(what))
      .flatMap((what) => {
        const readPsi = greatest(what, input, gauge);
        return readPsi !== null && readPsi > gauge.rangePsi
          ? warn('reading-above-gauge', { gaugeId: gauge.gaugeId, what, readPsi, rangePsi: gauge.rangePsi })
          : [];
      }),
  );

const calibrations: Check = ({ input: { gauges, testedOn }, settings }) =>
  (gauges ?? []).flatMap((gauge) => calibration(gauge, testedOn, settings.calibrationDays));

export const gaugeChecks: readonly Check[] = [calibrations, readingAboveGauge];
