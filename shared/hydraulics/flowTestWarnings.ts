import type { FlowTestInput, TestOutlet } from './flowTestInput.ts';
import type { FlowTestSettings } from './flowTestSettings.ts';
import type { PressureDrop } from './pressureDrop.ts';
import { PUMPER_TABLE_FROM_PSI } from './pumperOutlet.ts';
import type { Rating } from './ratingResidual.ts';

/** Codes of the catalogue (`hydraulics.warning.<code>`); each sentence says what to do in the field. */
export const warningCodes = [
  'drop-too-small',
  'residual-below-rating',
  'static-below-rating',
  'static-weak',
  'rated-at-half-static',
  'class-not-at-target',
  'pitot-too-low',
  'pitot-too-high',
  'pitot-above-static',
  'pumper-pitot-below-table',
  'outlet-may-be-pumper',
  'coefficient-unusual',
  'flow-implausible',
] as const;
export type WarningCode = (typeof warningCodes)[number];

/**
 * Something about a test that a person should know before relying on it. `outlet` counts from 1. Quantities keep their
 * unit in the name; `sayWarning` writes them out in the reader's units.
 */
export interface FlowTestWarning {
  readonly code: WarningCode;
  readonly params: Readonly<Record<string, string | number>>;
}

export interface Judged {
  readonly input: FlowTestInput;
  readonly measuredFlowGpm: number;
  readonly drop: PressureDrop;
  readonly rating: Rating;
  readonly targetResidualPsi: number;
  readonly settings: FlowTestSettings;
}

type Check = (judged: Judged) => FlowTestWarning[];

const warn = (code: WarningCode, params: FlowTestWarning['params']): FlowTestWarning[] => [{ code, params }];

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

type OutletCheck = (outlet: TestOutlet, number: number, judged: Judged) => FlowTestWarning[];

const pitotRange: OutletCheck = ({ pitotPsi, kind }, outlet, { settings }) => {
  const outletKind = kind ?? 'hose';
  const { minimumPsi, maximumPsi } = settings.pitot[outletKind];
  const params = { outlet, outletKind, pitotPsi, minimumPsi, maximumPsi };
  if (pitotPsi < minimumPsi) return warn('pitot-too-low', params);
  return pitotPsi > maximumPsi ? warn('pitot-too-high', params) : [];
};

const pitotAboveStatic: OutletCheck = ({ pitotPsi }, outlet, { input: { staticPsi } }) =>
  pitotPsi > staticPsi ? warn('pitot-above-static', { outlet, pitotPsi, staticPsi }) : [];

const pumperBelowTable: OutletCheck = ({ pitotPsi, kind }, outlet) =>
  kind === 'pumper' && pitotPsi < PUMPER_TABLE_FROM_PSI
    ? warn('pumper-pitot-below-table', { outlet, pitotPsi, tablePsi: PUMPER_TABLE_FROM_PSI })
    : [];

const mayBePumper: OutletCheck = ({ diameterIn, kind }, outlet, { settings }) =>
  kind === undefined && diameterIn >= settings.pumperFromIn
    ? warn('outlet-may-be-pumper', { outlet, diameterIn })
    : [];

const coefficientUnusual: OutletCheck = ({ coefficient }, outlet, { settings: { usualCoefficient } }) =>
  coefficient < usualCoefficient.minimum || coefficient > usualCoefficient.maximum
    ? warn('coefficient-unusual', { outlet, coefficient })
    : [];

const testChecks: readonly Check[] = [
  dropTooSmall,
  residualBelowRating,
  staticBelowRating,
  staticWeak,
  classNotAtTarget,
  flowImplausible,
];
const outletChecks: readonly OutletCheck[] = [
  pitotRange,
  pitotAboveStatic,
  pumperBelowTable,
  mayBePumper,
  coefficientUnusual,
];

/** Every warning about a test, those on the whole test first, then outlet by outlet. */
export function flowTestWarnings(judged: Judged): FlowTestWarning[] {
  return [
    ...testChecks.flatMap((check) => check(judged)),
    ...(judged.input.outlets ?? []).flatMap((outlet, index) =>
      outletChecks.flatMap((check) => check(outlet, index + 1, judged)),
    ),
  ];
}
