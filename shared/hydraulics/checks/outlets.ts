import { isOutlet, type FlowReading, type TestOutlet } from '../flowReadings.ts';
import type { Judged } from './judged.ts';
import { PUMPER_TABLE_FROM_PSI } from '../pumperOutlet.ts';
import { warn, type FlowTestWarning } from '../warning.ts';

type OutletCheck = (outlet: TestOutlet, number: number, judged: Judged) => FlowTestWarning[];

const pitotRange: OutletCheck = ({ pitotPsi, kind }, outlet, { settings }) => {
  const outletKind = kind ?? 'hose';
  const { minimumPsi, maximumPsi } = settings.pitot[outletKind];
  const params = { outlet, outletKind, pitotPsi, minimumPsi, maximumPsi };
  if (pitotPsi < minimumPsi) return warn('pitot-too-low', params);
  return pitotPsi > maximumPsi ? warn('pitot-too-high', params) : [];
};

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

/** Also of a diffuser: its gauge too reads what the stream has left. */
const pitotAboveStatic = (
  reading: FlowReading,
  outlet: number,
  { input: { staticPsi } }: Judged,
): FlowTestWarning[] =>
  reading.kind !== 'meter' && reading.pitotPsi > staticPsi
    ? warn('pitot-above-static', { outlet, pitotPsi: reading.pitotPsi, staticPsi })
    : [];

/** Every warning about a test's outlets, outlet by outlet. */
export const outletWarnings = (judged: Judged): FlowTestWarning[] =>
  (judged.input.outlets ?? []).flatMap((reading, index) => {
    const number = index + 1;
    const above = pitotAboveStatic(reading, number, judged);
    if (!isOutlet(reading)) return above;
    return [
      ...pitotRange(reading, number, judged),
      ...above,
      ...[pumperBelowTable, mayBePumper, coefficientUnusual].flatMap((check) =>
        check(reading, number, judged),
      ),
    ];
  });
