import { formatQuantity } from '../units/format.ts';
import { sayPercent, sayQuantityProblem } from '../water/say.ts';
import type { Block } from './blocks.ts';
import { sayWorker, type PacketReader } from './reader.ts';
import type { PacketWater } from './repairSchema.ts';
import type { PacketContent } from './schema.ts';

type Water = NonNullable<PacketWater>;

/**
 * The water lost: the figures, which is claimed and why, the method with its stated accuracy, what the duration stands
 * on, and apart from it the water that the repair used. Without a record: why none is billed, as the statement has it.
 */
export function waterBlocks({ waterLost, statement }: PacketContent, reader: PacketReader): Block[] {
  const { say } = reader;
  const title: Block = { type: 'heading', level: 2, text: say('packet.water.title') };
  if (waterLost === null)
    return [
      title,
      {
        type: 'paragraph',
        text: `${say('packet.water.no-record')} ${say(`packet.water.${statement.water.state}`)}`,
      },
    ];
  const pairs = [
    ...figures(waterLost, reader),
    ...method(waterLost, reader),
    ...duration(waterLost, reader),
    ...apart(waterLost, reader),
    [say('packet.water.by'), sayWorker(waterLost.by)] as const,
  ].map(([label, value]) => ({ label, value }));
  return [
    title,
    { type: 'paragraph', text: waterLost.basis },
    { type: 'pairs', pairs },
    ...challenges(waterLost, reader),
  ];
}

type Pair = readonly [string, string];

function figures({ claimedGal, estimate, choice }: Water, reader: PacketReader): Pair[] {
  const { say } = reader;
  const gal = (value: number): string => formatQuantity(value, 'gal', reader);
  const claimed: Pair = [say('packet.water.claimed'), gal(claimedGal)];
  if (!estimate) return [claimed];
  // Beside a figure of somebody's own there is nothing computed to set.
  const computed: Pair[] =
    estimate.by === 'own-figure'
      ? []
      : [
          [say('packet.water.low'), gal(estimate.lowGal)],
          [say('packet.water.best'), gal(estimate.bestGal)],
          [
            say('packet.water.high'),
            estimate.highGal === null ? say('packet.water.high-unknown') : gal(estimate.highGal),
          ],
        ];
  const why: Pair[] = choice
    ? [
        [
          say('packet.water.chosen'),
          choice.figure === 'low'
            ? say('packet.water.chosen-low')
            : say('packet.water.chosen-other', {
                figure: say(`water.figure.${choice.figure}`),
                reason: choice.reason ?? say('packet.not-recorded'),
              }),
        ],
      ]
    : [];
  return [claimed, ...computed, ...why];
}

function method({ method: by, estimate }: Water, reader: PacketReader): Pair[] {
  const { say } = reader;
  const named: Pair = [
    say('packet.water.method'),
    estimate?.flowMethod
      ? say('packet.water.method.flow-by', { method: say(`water.method.${estimate.flowMethod}`) })
      : say(`packet.water.method.${by}`),
  ];
  if (!estimate || by === 'none-lost' || by === 'other') return [named];
  const { accuracyFraction, limitedBy } = estimate;
  return [
    named,
    [
      say('packet.water.accuracy'),
      accuracyFraction === null
        ? say('packet.water.accuracy-ends')
        : `±${sayPercent(accuracyFraction, reader)}`,
    ],
    ...(limitedBy === null ? [] : [[say('packet.water.limited'), say(`water.limit.${limitedBy}`)] as const]),
  ];
}

/** Its start and end, each with how it is known; a record of before has two times at the most. */
function duration({ times, flowingFrom, flowingTo, method: by }: Water, reader: PacketReader): Pair[] {
  const { say, dateTime } = reader;
  if (by === 'none-lost') return [];
  const at = (instant: string | null | undefined): string => (instant ? dateTime(instant) : '');
  if (!times)
    return flowingFrom !== null && flowingTo !== null
      ? [
          [
            say('packet.water.duration'),
            say('packet.water.from-to', { from: at(flowingFrom), to: at(flowingTo) }),
          ],
        ]
      : [];
  const {
    struckAt,
    struckAtBasis,
    lastSeenSoundAt,
    firstCallAt,
    waterShutAt,
    lastSeenFlowingAt,
    firstSeenShutAt,
  } = times;
  const known = struckAtBasis === 'witnessed' || struckAtBasis === 'reported';
  const start =
    struckAt && known
      ? say(`packet.water.start.${struckAtBasis}`, { at: at(struckAt) })
      : lastSeenSoundAt && firstCallAt
        ? say('packet.water.start.between', { from: at(lastSeenSoundAt), to: at(firstCallAt) })
        : firstCallAt
          ? say('packet.water.start.before', { to: at(firstCallAt) })
          : say('packet.water.start.unknown');
  const end = waterShutAt
    ? say('packet.water.end.shut', { at: at(waterShutAt) })
    : lastSeenFlowingAt && firstSeenShutAt
      ? say('packet.water.end.between', { from: at(lastSeenFlowingAt), to: at(firstSeenShutAt) })
      : say('packet.water.end.unknown');
  return [
    [say('packet.water.start'), start],
    [say('packet.water.end'), end],
  ];
}

function apart({ estimate }: Water, reader: PacketReader): Pair[] {
  const { say } = reader;
  if (!estimate || estimate.flushingGal + estimate.flowTestGal === 0) return [];
  return [
    [
      say('packet.water.apart'),
      say('packet.water.apart-figures', {
        flushing: formatQuantity(estimate.flushingGal, 'gal', reader),
        flowTest: formatQuantity(estimate.flowTestGal, 'gal', reader),
      }),
    ],
  ];
}

/** What was doubted about the figure, and who stands for it all the same. */
function challenges({ challenges: doubts, challengeAnswer }: Water, reader: PacketReader): Block[] {
  const { say } = reader;
  if (doubts.length === 0) return [];
  const caution = (text: string): Block => ({ type: 'paragraph', look: 'caution', text });
  const by = challengeAnswer?.by;
  return [
    ...doubts.map((doubt) => caution(sayQuantityProblem(doubt, reader))),
    ...(challengeAnswer && by
      ? [
          caution(
            say('packet.water.challenge-answer', {
              by: by.name === null ? sayWorker(by) : `${by.name} (${sayWorker(by)})`,
              text: challengeAnswer.text,
            }),
          ),
        ]
      : []),
  ];
}
