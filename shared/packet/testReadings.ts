import type { HistoryEntry } from '../hydraulics/flowTestHistory.ts';
import type { FlowTestSettings } from '../hydraulics/flowTestSettings.ts';
import { formatNumber, formatQuantity } from '../units/format.ts';
import type { Block, Cell, Row } from './blocks.ts';
import { sayWorker, type PacketReader } from './reader.ts';
import type { PacketOutlet, PacketTest } from './testSchema.ts';

export const percentOf = (fraction: number, { locale }: PacketReader): string =>
  formatNumber(fraction * 100, locale, 1);

type Pairs = Extract<Block, { type: 'pairs' }>['pairs'];

/** The readings of a test as they were taken: pressures and who took them, every outlet, every gauge. */
export function readingBlocks(
  test: PacketTest,
  { result }: Pick<HistoryEntry, 'result'>,
  settings: FlowTestSettings,
  reader: PacketReader,
): Block[] {
  const { say } = reader;
  const { staticPsi, residualPsi, meteredFlowGpm } = test;
  const psi = (value: number): string => formatQuantity(value, 'psi', reader);
  const pairs: [string, string | null][] = [
    [
      say('packet.flow-test.method'),
      say(test.oneHydrant ? 'packet.flow-test.one-hydrant' : 'packet.flow-test.several'),
    ],
    [say('packet.flow-test.static'), psi(staticPsi)],
    [say('packet.flow-test.residual'), psi(residualPsi)],
    [
      say('packet.flow-test.drop'),
      residualPsi < staticPsi
        ? say('packet.flow-test.drop-share', {
            drop: psi(staticPsi - residualPsi),
            percent: percentOf((staticPsi - residualPsi) / staticPsi, reader),
            needed: percentOf(settings.minimumDropFraction, reader),
          })
        : null,
    ],
    [
      say('packet.flow-test.metered'),
      meteredFlowGpm === null ? null : formatQuantity(meteredFlowGpm, 'gpm', reader),
    ],
    [
      say('packet.flow-test.minutes'),
      test.flowedMinutes === null ? null : formatNumber(test.flowedMinutes, reader.locale, 1),
    ],
    [say('packet.flow-test.tested-by'), test.testedBy.map(sayWorker).join(', ')],
  ];
  const shown: Pairs = pairs.flatMap(([label, value]) =>
    value === null || value === '' ? [] : [{ label, value }],
  );
  return [
    { type: 'pairs', pairs: shown },
    ...outletTable(test, result, settings, reader),
    ...gaugeTable(test, settings, reader),
  ];
}

function outletTable(
  { outlets }: PacketTest,
  result: HistoryEntry['result'],
  settings: FlowTestSettings,
  reader: PacketReader,
): Block[] {
  if (outlets.length === 0) return [];
  const { say } = reader;
  const rows = outlets.map((outlet, index): Row => {
    const flow = result?.outlets[index];
    return {
      cells: [
        outletName(outlet, index, reader),
        outletSize(outlet, reader),
        outletConstant(outlet, settings, reader),
        outlet.pitotPsi === null ? '' : formatQuantity(outlet.pitotPsi, 'psi', reader),
        outlet.kind === 'pumper' && flow ? formatNumber(flow.pumperFactor, reader.locale, 3) : '',
        flow ? formatQuantity(flow.flowGpm, 'gpm', reader) : '',
      ],
    };
  });
  return [
    {
      type: 'table',
      dense: true,
      summary: say('packet.flow-test.outlets'),
      columns: [
        { label: say('packet.flow-test.outlet-number'), align: 'left', share: 0.31 },
        { label: say('packet.flow-test.size'), align: 'left', share: 0.16 },
        { label: say('packet.flow-test.coefficient'), align: 'left', share: 0.18 },
        { label: say('packet.flow-test.pitot'), align: 'right', share: 0.1 },
        { label: say('packet.flow-test.factor'), align: 'right', share: 0.1 },
        { label: say('packet.flow-test.flow'), align: 'right', share: 0.15 },
      ],
      rows: [
        ...rows,
        ...(result
          ? [
              {
                role: 'total' as const,
                cells: [
                  say('packet.flow-test.measured'),
                  formatQuantity(result.measuredFlowGpm, 'gpm', reader),
                ],
              },
            ]
          : []),
      ],
    },
  ];
}

/** Warnings speak of outlets by their number, so it stands first. */
function outletName({ hydrantId, kind, shape }: PacketOutlet, index: number, { say }: PacketReader): Cell {
  const words = say(`packet.flow-test.kind.${kind}`);
  return [
    { text: `${index + 1}. ${hydrantId}` },
    {
      look: 'small',
      text:
        shape === null
          ? words
          : say('packet.flow-test.kind-shape', {
              kind: words,
              shape: lowerFirst(say(`hydraulics.shape.${shape}`)),
            }),
    },
  ];
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

function outletSize({ diameterIn, diameterBasis }: PacketOutlet, reader: PacketReader): Cell {
  if (diameterIn === null) return '';
  return [
    { text: formatQuantity(diameterIn, 'in', reader) },
    { look: 'small', text: reader.say(`packet.flow-test.basis.${diameterBasis ?? 'unsaid'}`) },
  ];
}

function outletConstant(
  { kind, coefficient, kGpmPerSqrtPsi, accuracyFraction }: PacketOutlet,
  { errors }: FlowTestSettings,
  reader: PacketReader,
): Cell {
  const { say, locale } = reader;
  if (kind === 'hose' || kind === 'pumper')
    return coefficient === null ? '' : formatNumber(coefficient, locale, 3);
  const assumed = kind === 'diffuser' ? errors.diffuserFraction : errors.meterFraction;
  const accuracy = say(
    accuracyFraction === null ? 'packet.flow-test.accuracy-assumed' : 'packet.flow-test.accuracy',
    { percent: percentOf(accuracyFraction ?? assumed, reader) },
  );
  if (kGpmPerSqrtPsi === null) return [{ look: 'small', text: accuracy }];
  return [
    {
      text: say('packet.flow-test.diffuser-constant', { constant: formatNumber(kGpmPerSqrtPsi, locale, 2) }),
    },
    { look: 'small', text: say('packet.flow-test.diffuser-unit', { accuracy }) },
  ];
}

function gaugeTable({ gauges }: PacketTest, { errors }: FlowTestSettings, reader: PacketReader): Block[] {
  if (gauges.length === 0) return [];
  const { say } = reader;
  const percent = (fraction: number): { percent: string } => ({ percent: percentOf(fraction, reader) });
  return [
    {
      type: 'table',
      dense: true,
      summary: say('packet.flow-test.gauges'),
      columns: [
        { label: say('packet.flow-test.gauge-id'), align: 'left', share: 0.2 },
        { label: say('packet.flow-test.gauge-reads'), align: 'left', share: 0.2 },
        { label: say('packet.flow-test.gauge-range'), align: 'right', share: 0.12 },
        { label: say('packet.flow-test.gauge-accuracy'), align: 'right', share: 0.17 },
        { label: say('packet.flow-test.gauge-step'), align: 'right', share: 0.15 },
        { label: say('packet.flow-test.gauge-calibrated'), align: 'right', share: 0.16 },
      ],
      rows: gauges.map(({ gaugeId, reads, rangePsi, accuracyFraction, resolutionPsi, calibratedOn }) => {
        const assumed =
          reads?.includes('pitot') && reads.length === 1 ? errors.pitotGauge : errors.pressureGauge;
        const step = formatQuantity(resolutionPsi ?? assumed.resolutionPsi, 'psi', reader);
        return {
          cells: [
            gaugeId,
            reads === null
              ? say('packet.not-recorded')
              : reads.map((one) => say(`packet.flow-test.reads.${one}`)).join(', '),
            formatQuantity(rangePsi, 'psi', reader),
            accuracyFraction === null
              ? say('packet.flow-test.accuracy-assumed', percent(assumed.accuracyFraction))
              : say('packet.flow-test.accuracy', percent(accuracyFraction)),
            resolutionPsi === null ? say('packet.flow-test.step-assumed', { step }) : step,
            calibratedOn === null ? say('packet.not-recorded') : reader.day(calibratedOn),
          ],
        };
      }),
    },
  ];
}
