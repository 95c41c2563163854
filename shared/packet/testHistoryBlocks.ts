import type { CapacityChange, RatedTest } from '../hydraulics/capacityChange.ts';
import type { HistoryEntry } from '../hydraulics/flowTestHistory.ts';
import { intervalEnds, sayChance } from '../hydraulics/sayCapacity.ts';
import { sayChange } from '../hydraulics/sayChange.ts';
import { displays, formatQuantity, unitSymbol } from '../units/format.ts';
import type { Block, Row } from './blocks.ts';
import type { PacketReader } from './reader.ts';
import type { TestResults } from './testResults.ts';

type Result = NonNullable<HistoryEntry['result']>;

export function sayBetween({ interval }: Pick<Result, 'interval'>, reader: PacketReader): string | null {
  if (!interval) return null;
  return reader.say('packet.flow-test.between', {
    ...intervalEnds(interval, reader),
    unit: unitSymbol(displays.gpm[reader.system].unit, reader.locale),
  });
}

/** A loss is what a reader must not miss; anything else is a sentence like others. */
const sayIt = (change: CapacityChange, reader: PacketReader): Block => ({
  type: 'paragraph',
  look: change.verdict === 'loss' || change.verdict === 'possible-loss' ? 'caution' : 'body',
  text: sayChange({ ...change, fromTestedOn: reader.day(change.fromTestedOn) }, reader),
});

/** The last rated test before the strike beside the first after the repair; what is missing of the two is said. */
export function beforeAfterBlocks({ repair }: TestResults, reader: PacketReader): Block[] {
  const { say } = reader;
  if (!repair || (!repair.before && !repair.after)) return [];
  const title: Block = { type: 'heading', level: 2, text: say('packet.flow-test.before-after') };
  const { before, after, change } = repair;
  if (!before) return [title, { type: 'paragraph', text: say('packet.flow-test.no-before') }];
  if (!after) return [title, { type: 'paragraph', text: say('packet.flow-test.no-after') }];
  const row = (label: string, value: (test: RatedTest) => string | null): Row => ({
    cells: [
      label,
      value(before) ?? say('packet.flow-test.history-none'),
      value(after) ?? say('packet.flow-test.history-none'),
    ],
  });
  const psi = (value: number): string => formatQuantity(value, 'psi', reader);
  return [
    title,
    {
      type: 'table',
      summary: say('packet.flow-test.before-after'),
      columns: [
        { label: '', align: 'left', share: 0.4 },
        { label: say('packet.flow-test.before'), align: 'right', share: 0.3 },
        { label: say('packet.flow-test.after'), align: 'right', share: 0.3 },
      ],
      rows: [
        row(say('packet.flow-test.day'), ({ testedOn }) => reader.day(testedOn)),
        row(say('packet.flow-test.static'), ({ staticPsi }) => psi(staticPsi)),
        row(say('packet.flow-test.residual'), ({ residualPsi }) => psi(residualPsi)),
        row(say('packet.flow-test.measured'), ({ result }) =>
          formatQuantity(result.measuredFlowGpm, 'gpm', reader),
        ),
        row(say('packet.flow-test.capacity'), ({ result }) => capacity(result, reader)),
        row(say('packet.flow-test.interval', { coverage: 95 }), ({ result }) => sayBetween(result, reader)),
        row(say('packet.flow-test.class-chance'), ({ result }) => classAndChance(result, reader)),
      ],
    },
    ...(change ? [sayIt(change, reader)] : []),
  ];
}

function classAndChance({ className, interval }: Result, reader: PacketReader): string | null {
  if (className === null) return null;
  return interval ? `${className} (${sayChance(interval.classChance, reader)})` : className;
}

const capacity = ({ rating }: Result, reader: PacketReader): string | null =>
  rating.capacityGpm === null
    ? null
    : reader.say('hydraulics.curve.target', {
        flow: formatQuantity(rating.capacityGpm, 'gpm', reader),
        pressure: formatQuantity(rating.residualPsi, 'psi', reader),
      });

/** Every recorded test of the hydrant in the order of their days, and what became of its capacity since the first. */
export function historyBlocks({ history, repair }: TestResults, reader: PacketReader): Block[] {
  const { say } = reader;
  const { entries, sinceFirst } = history;
  if (entries.length < 2) return [];
  const psi = (value: number): string => formatQuantity(value, 'psi', reader);
  const none = say('packet.flow-test.history-none');
  const told = repair?.change;
  const sameAsRepair = told?.fromTestId === sinceFirst?.fromTestId && told?.toTestId === sinceFirst?.toTestId;
  return [
    { type: 'heading', level: 2, text: say('packet.flow-test.history') },
    {
      type: 'table',
      dense: true,
      summary: say('packet.flow-test.history'),
      columns: [
        { label: say('packet.flow-test.day'), align: 'left', share: 0.15 },
        { label: say('packet.flow-test.static'), align: 'right', share: 0.11 },
        { label: say('packet.flow-test.residual'), align: 'right', share: 0.12 },
        { label: say('packet.flow-test.measured'), align: 'right', share: 0.14 },
        { label: say('packet.flow-test.capacity'), align: 'right', share: 0.15 },
        { label: say('packet.flow-test.interval', { coverage: 95 }), align: 'right', share: 0.23 },
        { label: say('packet.flow-test.class'), align: 'right', share: 0.1 },
      ],
      rows: entries.map(({ testedOn, staticPsi, residualPsi, result }) => ({
        cells: [
          reader.day(testedOn),
          psi(staticPsi),
          psi(residualPsi),
          result ? formatQuantity(result.measuredFlowGpm, 'gpm', reader) : none,
          result === null || result.rating.capacityGpm === null
            ? none
            : formatQuantity(result.rating.capacityGpm, 'gpm', reader),
          (result && sayBetween(result, reader)) ?? none,
          result?.className ?? none,
        ],
      })),
    },
    ...(sinceFirst && !sameAsRepair ? [sayIt(sinceFirst, reader)] : []),
  ];
}
