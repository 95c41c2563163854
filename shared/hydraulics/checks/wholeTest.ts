import { warn } from '../warning.ts';
import type { Check } from './judged.ts';

/** Percent to one decimal, for a sentence. */
const percent = (fraction: number): number => Math.round(fraction * 1000) / 10;

const dropTooSmall: Check = ({ drop, settings }) =>
  drop.sufficient
    ? []
    : warn('drop-too-small', {
        dropPsi: drop.psi,
        dropPercent: percent(drop.fraction),
        neededPsi: drop.neededPsi,
        neededPercent: percent(settings.minimumDropFraction),
      });

const capacityUncertain: Check = ({ interval, settings }) => {
  if (!interval) return [];
  const middle = Math.sqrt(interval.highGpm * interval.lowGpm);
  if (interval.highGpm / middle - 1 <= settings.widestFraction) return [];
  return warn('capacity-uncertain', { lowGpm: interval.lowGpm, highGpm: interval.highGpm });
};

const residualBelowRating: Check = ({ input: { residualPsi }, rating }) =>
  residualPsi < rating.residualPsi
    ? warn('residual-below-rating', { residualPsi, ratingResidualPsi: rating.residualPsi })
    : [];

const staticBelowRating: Check = ({ input: { staticPsi }, rating }) =>
  staticPsi <= rating.residualPsi
    ? warn('static-below-rating', { staticPsi, ratingResidualPsi: rating.residualPsi })
    : [];

const staticWeak: Check = ({ input: { staticPsi }, rating, settings }) => {
  if (staticPsi >= settings.weakStaticPsi) return [];
  return rating.basis === 'half-static'
    ? warn('rated-at-half-static', {
        staticPsi,
        ratingResidualPsi: rating.residualPsi,
        weakStaticPsi: settings.weakStaticPsi,
      })
    : warn('static-weak', {
        staticPsi,
        weakStaticPsi: settings.weakStaticPsi,
        ratingResidualPsi: rating.residualPsi,
        halfStaticPsi: staticPsi / 2,
      });
};

const classNotAtTarget: Check = ({ drop, rating, targetResidualPsi }) =>
  drop.sufficient && targetResidualPsi !== rating.residualPsi
    ? warn('class-not-at-target', { ratingResidualPsi: rating.residualPsi, targetResidualPsi })
    : [];

const flowImplausible: Check = ({ measuredFlowGpm, settings: { mostFlowGpm } }) =>
  measuredFlowGpm > mostFlowGpm ? warn('flow-implausible', { measuredFlowGpm, mostFlowGpm }) : [];

/** At a hydrant that flows, the gauge reads what is left after its own lateral and barrel, not what the main has. */
const flowedAtResidualHydrant: Check = ({ input: { residualHydrantId, outlets } }) =>
  residualHydrantId !== undefined && outlets?.some(({ hydrantId }) => hydrantId === residualHydrantId)
    ? warn('flowed-at-residual-hydrant', { hydrantId: residualHydrantId })
    : [];

export const testChecks: readonly Check[] = [
  dropTooSmall,
  capacityUncertain,
  residualBelowRating,
  staticBelowRating,
  staticWeak,
  classNotAtTarget,
  flowImplausible,
  flowedAtResidualHydrant,
];
