import type { HistoryEntry } from '../hydraulics/flowTestHistory.ts';
import type { FlowTestSettings } from '../hydraulics/flowTestSettings.ts';
import { sayCapacity, sayChance } from '../hydraulics/sayCapacity.ts';
import type { FlowTestWarning } from '../hydraulics/flowTestWarnings.ts';
import { supplyCurve } from '../hydraulics/supplyCurve.ts';
import { supplyCurveDescription } from '../hydraulics/supplyCurveSvg.ts';
import { formatNumber, formatParams, formatQuantity } from '../units/format.ts';
import { sayPercent } from '../water/say.ts';
import type { Block } from './blocks.ts';
import { curveWords } from './curveWords.ts';
import { formulaBlocks } from './formulaBlocks.ts';
import type { PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';
import { beforeAfterBlocks, historyBlocks, sayBetween } from './testHistoryBlocks.ts';
import { percentOf, readingBlocks } from './testReadings.ts';
import { testResults } from './testResults.ts';
import type { PacketTest } from './testSchema.ts';

type Result = NonNullable<HistoryEntry['result']>;

/**
 * The flow tests: of each of the strike's the answer, how sure it is, readings, doubts and curve; then before and after
 * the repair, all tests of the hydrant, and the formulas that were used.
 */
export function flowTestBlocks(content: PacketContent, reader: PacketReader): Block[] {
  const { say } = reader;
  const { flowTests, earlierTests, flowTestRules, utility } = content;
  const title: Block = { type: 'heading', level: 1, text: say('packet.flow-test.title'), newPage: true };
  const results = testResults(content);
  const { settings } = results;
  const none: Block[] =
    flowTests.length === 0 ? [{ type: 'paragraph', text: say('packet.flow-test.none') }] : [];
  const tests = [...earlierTests, ...flowTests];
  if (tests.length === 0) return [title, ...none];
  return [
    title,
    ...none,
    ...flowTests.flatMap((test) => testBlocks(test, results.entryOf(test), settings, reader)),
    ...beforeAfterBlocks(results, reader),
    ...historyBlocks(results, reader),
    ...formulaBlocks(
      {
        tests,
        rated: tests.some((test) => (results.entryOf(test)?.result?.hydrantClass ?? null) !== null),
        settings,
        own: {
          classBands: flowTestRules.classBands !== undefined,
          minimumDrop: flowTestRules.minimumDropFraction !== undefined,
        },
        utility: utility.name,
      },
      reader,
    ),
  ];
}

function testBlocks(
  test: PacketTest,
  entry: HistoryEntry | null,
  settings: FlowTestSettings,
  reader: PacketReader,
): Block[] {
  const { say } = reader;
  const result = entry?.result ?? null;
  const head: Block = {
    type: 'heading',
    level: 2,
    text: say('packet.flow-test.of', {
      hydrantId: test.residualHydrantId,
      at: reader.dateTime(test.testedAt),
    }),
  };
  const readings = readingBlocks(test, { result }, settings, reader);
  if (!result)
    return [
      head,
      { type: 'paragraph', look: 'caution', text: say('packet.flow-test.not-a-test') },
      ...readings,
    ];
  return [
    head,
    ...answer(result, settings, reader),
    ...readings,
    ...doubts(result, reader),
    ...curve(test, result, settings, reader),
  ];
}

/** The answer in a line, the figures one by one, and what the interval holds. Without a class: why there is none. */
function answer(result: Result, settings: FlowTestSettings, reader: PacketReader): Block[] {
  const { say } = reader;
  const { rating, hydrantClass, className, interval } = result;
  if (rating.capacityGpm === null || hydrantClass === null) {
    const why = result.warnings.find(({ code }) => code === 'drop-too-small');
    return [
      { type: 'paragraph', look: 'strong', text: `${sayCapacity(result, reader)}.` },
      ...(why
        ? [{ type: 'paragraph' as const, look: 'caution' as const, text: sayWarning(why, reader) }]
        : []),
    ];
  }
  const residual = formatQuantity(rating.residualPsi, 'psi', reader);
  const named = className ?? hydrantClass;
  const color = settings.classBands.find((band) => band.hydrantClass === hydrantClass)?.color;
  const target = formatQuantity(result.targetResidualPsi, 'psi', reader);
  const otherTarget = result.targetResidualPsi !== rating.residualPsi;
  const between = sayBetween(result, reader);
  return [
    { type: 'paragraph', look: 'strong', text: sayCapacity(result, reader) },
    {
      type: 'pairs',
      pairs: [
        { label: say('packet.flow-test.capacity'), value: formatQuantity(rating.capacityGpm, 'gpm', reader) },
        {
          label: say('packet.flow-test.rating'),
          value:
            rating.basis === 'half-static' ? say('packet.flow-test.rating-half', { residual }) : residual,
        },
        ...(interval && between !== null
          ? [{ label: say('packet.flow-test.interval', { coverage: coverageOf(interval) }), value: between }]
          : []),
        {
          label: say('packet.flow-test.class'),
          value: color
            ? say('packet.flow-test.class-color', {
                hydrantClass: named,
                color: say(`hydraulics.color.${color}`),
              })
            : named,
        },
        ...(interval
          ? [
              {
                label: say('packet.flow-test.chance', { hydrantClass: named }),
                value: sayChance(interval.classChance, reader),
              },
            ]
          : []),
        ...(otherTarget && result.availableFlowGpm !== null
          ? [
              {
                label: say('packet.flow-test.available', { target }),
                value: formatQuantity(result.availableFlowGpm, 'gpm', reader),
              },
            ]
          : []),
      ],
    },
    ...(interval
      ? [
          {
            type: 'paragraph' as const,
            look: 'small' as const,
            text: [
              say('packet.flow-test.interval-how', {
                coverage: coverageOf(interval),
                causes: interval.causes
                  .filter(({ share }) => share >= 0.005)
                  .map(
                    ({ cause, share }) => `${say(`hydraulics.cause.${cause}`)} ${sayPercent(share, reader)}`,
                  )
                  .join(', '),
              }),
              say('packet.flow-test.assumed', {
                assumed: assumedWords(interval, result, settings, reader).join('; '),
              }),
              say('hydraulics.answer.basis'),
            ].join(' '),
          },
        ]
      : []),
  ];
}

const coverageOf = ({ coverage }: { readonly coverage: number }): number => Math.round(coverage * 100);

/** What the interval stands on that no record says: the settings' errors, those only that had a part in it. */
function assumedWords(
  { assumed, causes }: NonNullable<Result['interval']>,
  { outlets }: Result,
  { errors }: FlowTestSettings,
  reader: PacketReader,
): string[] {
  const { say, locale } = reader;
  const psi = (value: number): string => formatQuantity(value, 'psi', reader);
  const percent = (fraction: number): { percent: string } => ({ percent: percentOf(fraction, reader) });
  const gauge = ({ accuracyFraction, rangePsi, resolutionPsi }: typeof errors.pressureGauge): object => ({
    ...percent(accuracyFraction),
    rangePsi: psi(rangePsi),
    stepPsi: psi(resolutionPsi),
  });
  const has = (cause: (typeof causes)[number]['cause']): boolean => causes.some((one) => one.cause === cause);
  const words: [boolean, string][] = [
    [
      assumed.includes('pressure-gauge'),
      say('packet.assumed.pressure-gauge', { ...gauge(errors.pressureGauge) }),
    ],
    [assumed.includes('pitot-gauge'), say('packet.assumed.pitot-gauge', { ...gauge(errors.pitotGauge) })],
    [
      assumed.includes('diameter-measured'),
      say('packet.assumed.diameter-measured', {
        errorIn: formatQuantity(errors.measuredDiameterIn, 'in', reader),
      }),
    ],
    [
      has('coefficient'),
      say('packet.assumed.coefficient', { error: formatNumber(errors.coefficient, locale, 3) }),
    ],
    // A meter among the outlets has its accuracy beside it in their table.
    [outlets.length === 0 && has('meter'), say('packet.assumed.meter', percent(errors.meterFraction))],
    [has('pumper-factor'), say('packet.assumed.pumper-factor', percent(errors.pumperFactorFraction))],
  ];
  return words.flatMap(([is, text]) => (is ? [text] : []));
}

/** What a warning means for the figure: the payer was not there and cannot read the gauge again. */
const sayWarning = ({ code, params }: FlowTestWarning, reader: PacketReader): string =>
  reader.say(`packet.warning.${code}`, formatParams(params, reader));

function doubts({ warnings }: Result, reader: PacketReader): Block[] {
  // Why there is no class was said at the top already.
  const rest = warnings.filter(({ code }) => code !== 'drop-too-small');
  if (rest.length === 0) return [];
  return [
    { type: 'paragraph', text: reader.say('packet.flow-test.notes') },
    { type: 'list', items: rest.map((warning) => sayWarning(warning, reader)) },
  ];
}

function curve(
  { staticPsi, residualPsi, residualHydrantId }: PacketTest,
  { measuredFlowGpm, rating, spread }: Result,
  { minimumDropFraction }: FlowTestSettings,
  reader: PacketReader,
): Block[] {
  const { say } = reader;
  const drawn = supplyCurve(
    {
      staticPsi,
      residualPsi,
      targetResidualPsi: rating.residualPsi,
      flowGpm: measuredFlowGpm,
      minimumDropFraction,
      spread,
    },
    reader.system,
  );
  const target = formatQuantity(rating.residualPsi, 'psi', reader);
  return [
    {
      type: 'supply-curve',
      curve: drawn,
      words: curveWords(drawn, reader),
      alt: `${say('hydraulics.curve.title-of', { subject: residualHydrantId })}. ${supplyCurveDescription(drawn, reader)}`,
    },
    {
      type: 'paragraph',
      look: 'small',
      text: say(drawn.targetMark ? 'packet.flow-test.curve-key' : 'packet.flow-test.curve-key-bare', {
        target,
      }),
    },
  ];
}
