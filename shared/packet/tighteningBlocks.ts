import { MOST_BOLTS, passes } from '../tightening/order.ts';
import { torqueOf } from '../tightening/fromModel.ts';
import { tighteningRing } from '../tightening/ring.ts';
import { ringDescription } from '../tightening/ringSvg.ts';
import { sayBackOff, sayOrder, sayPrinted, sayTorque } from '../tightening/say.ts';
import { bothUnits } from '../tightening/torqueUnits.ts';
import { formatNumber } from '../units/format.ts';
import type { Block, Cell, Piece } from './blocks.ts';
import type { PacketTightening } from './repairSchema.ts';
import { sayWorker, type PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

type Joint = PacketTightening['joints'][number];

/** Every joint: the maker's torque with manual and page beside what was used, and the order as numbers and as rings. */
export function tighteningBlocks({ tightening, strike }: PacketContent, reader: PacketReader): Block[] {
  const { say } = reader;
  const { joints } = tightening;
  const title: Block = { type: 'heading', level: 2, text: say('packet.tightening.title') };
  const blocks: Block[] = [title];
  if (joints.every(({ used }) => used === null)) {
    const step = strike.steps.find((one) => one.step === 'tightened-to-torque');
    blocks.push({
      type: 'paragraph',
      text: say('packet.tightening.none', {
        step: step ? 'yes' : 'no',
        words: say('step.tightened-to-torque'),
        at: step ? reader.dateTime(step.doneAt) : '',
        by: step ? sayWorker(step.by) : '',
      }),
    });
  }
  if (joints.every(({ printed }) => printed === null))
    blocks.push({ type: 'paragraph', text: say('packet.tightening.no-model') });
  // A table of joints with nothing in it, and rings that nobody followed, would only cast doubt on the repair.
  if (joints.every(({ used }) => used === null)) return blocks;
  blocks.push({
    type: 'table',
    dense: true,
    summary: say('packet.tightening.title'),
    columns: [
      { label: say('packet.tightening.joint'), align: 'left', share: 0.18 },
      { label: say('packet.tightening.printed'), align: 'left', share: 0.31 },
      { label: say('packet.tightening.used'), align: 'left', share: 0.31 },
      { label: say('packet.tightening.by'), align: 'left', share: 0.2 },
    ],
    rows: joints.map((joint) => ({
      cells: [
        jointCell(joint, reader),
        printedCell(joint, reader),
        usedCell(joint, reader),
        joint.used === null
          ? ''
          : [{ text: sayWorker(joint.used.by) }, { look: 'small', text: reader.dateTime(joint.used.doneAt) }],
      ],
    })),
  });
  return [...blocks, ...orderBlocks(joints, reader)];
}

const boltsOf = ({ printed, used }: Joint): number | null =>
  used?.bolts ?? (printed?.kind === 'bolts' ? printed.bolts : null);

function jointCell(joint: Joint, { say }: PacketReader): Cell {
  const bolts = boltsOf(joint);
  return [
    { text: joint.joint },
    ...(bolts === null ? [] : [{ look: 'small' as const, text: say('packet.tightening.bolts', { bolts }) }]),
  ];
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const small = (text: string): Piece => ({ look: 'small', text });

function printedCell({ printed }: Joint, reader: PacketReader): Cell {
  const { say, locale } = reader;
  if (printed?.kind === 'back-off') return sayBackOff(printed, locale);
  const record = printed && torqueOf(printed);
  if (!record) return say('packet.tightening.no-torque');
  const torque = (value: number): string => sayTorque(bothUnits(value, record.unit), reader);
  return [
    {
      text:
        record.torqueTo === null
          ? torque(record.torque)
          : say('packet.tightening.to', { from: torque(record.torque), to: torque(record.torqueTo) }),
    },
    small(say('packet.tightening.cited', { manual: record.manual, page: record.page })),
    small(
      [say(`tightening.condition.${printed.condition ?? 'unknown'}`), sayPrinted(record, locale)]
        .filter((text) => text !== '')
        .join(' '),
    ),
  ];
}

function usedCell({ used, printed }: Joint, reader: PacketReader): Cell {
  const { say, locale } = reader;
  if (used === null) return say('packet.not-recorded');
  const cited =
    used.manual !== null && used.page !== null
      ? [small(say('packet.tightening.cited', { manual: used.manual, page: used.page }))]
      : [];
  const isNut = used.turns !== null || used.lockLinedUp !== null || printed?.kind === 'back-off';
  if (isNut)
    return [
      {
        text:
          used.turns === null
            ? say('packet.tightening.turns-not-recorded')
            : say('packet.tightening.turns', { turns: formatNumber(used.turns, locale, 3) }),
      },
      small(
        say('packet.tightening.lock', {
          lock: used.lockLinedUp === null ? 'unknown' : used.lockLinedUp ? 'yes' : 'no',
        }),
      ),
      ...cited,
    ];
  return [
    {
      text:
        used.torqueLbfFt === null
          ? say('packet.tightening.torque-not-recorded')
          : sayTorque(bothUnits(used.torqueLbfFt, 'lbf.ft'), reader),
    },
    ...(used.passes.length === 0
      ? []
      : [
          small(
            say('packet.tightening.passes', {
              passes: used.passes.map((pass) => lowerFirst(say(`value.tighteningPass.${pass}`))).join(', '),
            }),
          ),
        ]),
    ...(used.wrenchId === null
      ? []
      : [
          small(
            say('packet.tightening.wrench', {
              wrenchId: used.wrenchId,
              known: used.wrenchCalibratedOn === null ? 'no' : 'yes',
              on: used.wrenchCalibratedOn === null ? '' : reader.day(used.wrenchCalibratedOn),
            }),
          ),
        ]),
    ...cited,
  ];
}

/** The order of each joint whose bolts have one; an odd count, or one nobody counted, has none. */
function orderBlocks(joints: readonly Joint[], reader: PacketReader): Block[] {
  const { say, locale } = reader;
  const ordered = joints.flatMap((joint) => {
    const bolts = boltsOf(joint);
    return bolts !== null && bolts >= 2 && bolts <= MOST_BOLTS && bolts % 2 === 0
      ? [{ joint: joint.joint, bolts, ring: tighteningRing(bolts) }]
      : [];
  });
  if (ordered.length === 0) return [];
  const inPasses = passes
    .map(({ share, pattern }) =>
      say(`packet.tightening.pass-${pattern}`, { percent: formatNumber(share * 100, locale, 0) }),
    )
    .join(', ');
  return [
    {
      type: 'list',
      items: ordered.map(({ joint, ring }) =>
        say('packet.tightening.order', { joint, order: sayOrder(ring) }),
      ),
    },
    {
      type: 'rings',
      rings: ordered.map(({ joint, bolts, ring }) => ({
        ring,
        caption: say('packet.tightening.ring', { joint, bolts }),
        alt: `${joint}. ${ringDescription(ring, locale)}`,
      })),
    },
    { type: 'paragraph', look: 'small', text: say('packet.tightening.ring-key', { passes: inPasses }) },
  ];
}
