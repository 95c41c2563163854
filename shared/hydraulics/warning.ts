/** Codes of the catalogue (`hydraulics.warning.<code>`); each sentence says what to do in the field. */
export const warningCodes = [
  'drop-too-small',
  'capacity-uncertain',
  'residual-below-rating',
  'static-below-rating',
  'static-weak',
  'rated-at-half-static',
  'class-not-at-target',
  'flow-implausible',
  'flowed-at-residual-hydrant',
  'gauge-out-of-calibration',
  'gauge-calibration-unknown',
  'gauge-calibrated-after-test',
  'reading-above-gauge',
  'static-jumped',
  'flow-above-last-test',
  'pitot-too-low',
  'pitot-too-high',
  'pitot-above-static',
  'pumper-pitot-below-table',
  'outlet-may-be-pumper',
  'coefficient-unusual',
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

/** One warning, or none, of a check. */
export const warn = (code: WarningCode, params: FlowTestWarning['params']): FlowTestWarning[] => [
  { code, params },
];
