import { sayWarning } from '../hydraulics/sayWarning.ts';
import { supplyCurve } from '../hydraulics/supplyCurve.ts';
import { supplyCurveDescription } from '../hydraulics/supplyCurveSvg.ts';
import { formatNumber, formatQuantity, unitName } from '../units/format.ts';
import type { Block, CurveWords } from './blocks.ts';
import { evaluateRecorded } from '../hydraulics/evaluateRecorded.ts';
import { sayWorker, type PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

type Test = PacketContent['flowTests'][number];

/** Each flow test of the strike: readings, result, every doubt, and the curve. */
export function flowTestBlocks({ flowTests }: PacketContent, reader: PacketReader): Block[] {
  const { say } = reader;
  const title: Block = { type: 'heading', level: 1, text: say('packet.flow-test.title'), newPage: true };
  if (flowTests.length === 0) return [title, { type: 'paragraph', text: say('packet.flow-test.none') }];
  return [title, ...flowTests.flatMap((test) => testBlocks(test, reader))];
}

function testBlocks(test: Test, reader: PacketReader): Block[] {
  const { say } = reader;
  const { staticPsi, residualPsi, targetResidualPsi, meteredFlowGpm } = test;
  const result = evaluateRecorded({
    staticPsi,
    residualPsi,
    targetResidualPsi,
    measuredFlowGpm: meteredFlowGpm,
    flowHydrants: [{ hydrantId: '', outlets: test.outlets.map(({ hydrantId: _of, ...outlet }) => outlet) }],
  });
  const blocks: Block[] = [
    {
      type: 'heading',
      level: 2,
      text: say('packet.flow-test.of', {
        hydrantId: test.residualHydrantId,
        at: reader.dateTime(test.testedAt),
      }),
    },
    { type: 'pairs', pairs: readings(test, reader) },
  ];
  if (!result)
    return [...blocks, { type: 'paragraph', look: 'caution', text: say('packet.flow-test.not-a-test') }];

  const target = formatQuantity(result.targetResidualPsi, 'psi', reader);
  const lines: { label: string; value: string }[] = [
    { label: say('packet.flow-test.measured'), value: formatQuantity(result.measuredFlowGpm, 'gpm', reader) },
    {
      label: say('packet.flow-test.available', { target }),
      value:
        result.availableFlowGpm === null
          ? say('packet.flow-test.no-figure')
          : formatQuantity(result.availableFlowGpm, 'gpm', reader),
    },
    {
      label: say('packet.flow-test.class'),
      value: result.hydrantClass === null ? say('packet.flow-test.no-class') : result.hydrantClass,
    },
  ];
  blocks.push({ type: 'pairs', pairs: lines });
  if (result.warnings.length > 0)
    blocks.push(
      { type: 'paragraph', text: say('packet.flow-test.notes') },
      { type: 'list', items: result.warnings.map((warning) => sayWarning(warning, reader)) },
    );

  const curve = supplyCurve(
    { staticPsi, residualPsi, targetResidualPsi, flowGpm: result.measuredFlowGpm },
    reader.system,
  );
  const psi = (value: number): string => formatQuantity(value, 'psi', reader);
  const gpm = (value: number): string => formatQuantity(value, 'gpm', reader);
  const words: CurveWords = {
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
  blocks.push({
    type: 'supply-curve',
    curve,
    words,
    alt: `${say('hydraulics.curve.title-of', { subject: test.residualHydrantId })}. ${supplyCurveDescription(curve, reader)}`,
  });
  return blocks;
}

function readings(test: Test, reader: PacketReader): { label: string; value: string }[] {
  const { say } = reader;
  const outlets = test.outlets.map(({ hydrantId, kind, diameterIn, coefficient, pitotPsi }) =>
    say('packet.flow-test.outlet', {
      hydrantId,
      kind: say(`value.outlet.${kind}`),
      diameter: formatQuantity(diameterIn, 'in', reader),
      coefficient: formatNumber(coefficient, reader.locale, 3),
      pitot: formatQuantity(pitotPsi, 'psi', reader),
    }),
  );
  const gauges = test.gauges.map(({ gaugeId, calibratedOn }) =>
    calibratedOn === null
      ? say('packet.flow-test.gauge-uncalibrated', { gaugeId })
      : say('packet.flow-test.gauge', { gaugeId, on: reader.day(calibratedOn) }),
  );
  const pairs: [string, string | null][] = [
    [
      say('packet.flow-test.method'),
      say(test.oneHydrant ? 'packet.flow-test.one-hydrant' : 'packet.flow-test.several'),
    ],
    [say('packet.flow-test.static'), formatQuantity(test.staticPsi, 'psi', reader)],
    [say('packet.flow-test.residual'), formatQuantity(test.residualPsi, 'psi', reader)],
    [say('packet.flow-test.outlets'), outlets.join('; ')],
    [
      say('packet.flow-test.metered'),
      test.meteredFlowGpm === null ? null : formatQuantity(test.meteredFlowGpm, 'gpm', reader),
    ],
    [say('packet.flow-test.gauges'), gauges.join('; ')],
    [
      say('packet.flow-test.minutes'),
      test.flowedMinutes === null ? null : formatNumber(test.flowedMinutes, reader.locale, 1),
    ],
    [say('packet.flow-test.tested-by'), test.testedBy.map(sayWorker).join(', ')],
  ];
  return pairs.flatMap(([label, value]) => (value === null || value === '' ? [] : [{ label, value }]));
}
