import { availableFlowGpm } from '../availableFlow.ts';
import { pressureDrop } from '../pressureDrop.ts';
import { warn } from '../warning.ts';
import type { Check } from './judged.ts';

const staticJumped: Check = ({ input: { staticPsi, previous }, settings: { staticJump } }) => {
  if (!previous) return [];
  const change = staticPsi - previous.staticPsi;
  const most = Math.max(staticJump.psi, staticJump.fraction * previous.staticPsi);
  return Math.abs(change) > most
    ? warn('static-jumped', {
        staticPsi,
        previousStaticPsi: previous.staticPsi,
        changePsi: Math.abs(change),
        direction: change > 0 ? 'up' : 'down',
        testedOn: previous.testedOn,
      })
    : [];
};

/** What the last test says could flow with no pressure left; more than that needs a reason or is a slip. */
const flowAboveLastTest: Check = ({ input: { previous }, measuredFlowGpm, settings }) => {
  if (!previous || previous.residualPsi >= previous.staticPsi) return [];
  if (!pressureDrop(previous, settings.minimumDropFraction).sufficient) return [];
  const mostFlowGpm = availableFlowGpm({
    staticPsi: previous.staticPsi,
    residualPsi: previous.residualPsi,
    flowGpm: previous.measuredFlowGpm,
    targetResidualPsi: 0,
  });
  return measuredFlowGpm > mostFlowGpm
    ? warn('flow-above-last-test', { measuredFlowGpm, mostFlowGpm, testedOn: previous.testedOn })
    : [];
};

export const comparisonChecks: readonly Check[] = [staticJumped, flowAboveLastTest];
