import { comparisonChecks } from './checks/comparison.ts';
import { gaugeChecks } from './checks/gauges.ts';
import type { Judged } from './checks/judged.ts';
import { outletWarnings } from './checks/outlets.ts';
import { testChecks } from './checks/wholeTest.ts';
import type { FlowTestWarning } from './warning.ts';

export { warningCodes, type FlowTestWarning, type WarningCode } from './warning.ts';

const checks = [...testChecks, ...gaugeChecks, ...comparisonChecks];

/** Every warning about a test: on the whole test, on its gauges, against the last test, then outlet by outlet. */
export function flowTestWarnings(judged: Judged): FlowTestWarning[] {
  return [...checks.flatMap((check) => check(judged)), ...outletWarnings(judged)];
}
