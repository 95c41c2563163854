import type { SupplyCurve } from '../hydraulics/supplyCurve.ts';
import { formatNumber, formatQuantity, unitName } from '../units/format.ts';
import type { CurveWords } from './blocks.ts';
import type { PacketReader } from './reader.ts';

/** The words on a drawn curve, in the packet's language and units. */
export function curveWords(curve: SupplyCurve, reader: PacketReader): CurveWords {
  const { say } = reader;
  const psi = (value: number): string => formatQuantity(value, 'psi', reader);
  const gpm = (value: number): string => formatQuantity(value, 'gpm', reader);
  return {
    flowAxis: say('hydraulics.curve.flow-axis', { unit: unitName(curve.flow.unit, reader.locale) }),
    pressureAxis: say('hydraulics.curve.pressure-axis', {
      unit: unitName(curve.pressure.unit, reader.locale),
    }),
    staticMark: say('hydraulics.curve.static', { pressure: psi(curve.staticMark.residualPsi) }),
    testMark: say('hydraulics.curve.test', {
      flow: gpm(curve.testMark.flowGpm),
      pressure: psi(curve.testMark.residualPsi),
    }),
    targetMark:
      curve.targetMark &&
      say('hydraulics.curve.target', {
        flow: gpm(curve.targetMark.flowGpm),
        pressure: psi(curve.targetMark.residualPsi),
      }),
    target: psi(curve.target.residualPsi),
    number: (value) => formatNumber(value, reader.locale, 1),
  };
}
