import { decimal, formatCents, groupedDollars } from '../costs/money.ts';
import { sections } from '../costs/line.ts';
import { formatNumber } from '../units/format.ts';
import { sayProblem } from '../words/index.ts';
import type { Block, Cell, Piece, Row } from './blocks.ts';
import type { PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

type Line = PacketContent['statement']['lines'][number];

/** The statement of costs, line by line, each with its time or quantity, rate, authority and sum. */
export function statementBlocks({ statement, claim }: PacketContent, reader: PacketReader): Block[] {
  const { say } = reader;
  const rows: Row[] = [];
  for (const section of sections) {
    const lines = statement.lines.filter((line) => line.section === section);
    const subtotal = statement.sections.find((item) => item.section === section);
    if (!subtotal || lines.length === 0) continue;
    const name = say(`packet.section.${section}`);
    rows.push({ role: 'group', cells: [name] });
    rows.push(...lines.map((line): Row => ({ cells: lineCells(line, reader) })));
    rows.push({
      role: 'subtotal',
      cells: [say('packet.statement.subtotal', { section: name }), formatCents(subtotal.subtotalCents)],
    });
  }
  rows.push({
    role: 'total',
    cells: [
      say(statement.complete ? 'packet.statement.total' : 'packet.statement.total-incomplete'),
      formatCents(statement.totalCents),
    ],
  });
  const blocks: Block[] = [
    { type: 'heading', level: 1, text: say('packet.statement.title'), newPage: true },
    { type: 'paragraph', text: say('packet.statement.how') },
    {
      type: 'table',
      summary: say('packet.statement.title'),
      columns: [
        { label: say('packet.statement.item'), align: 'left', share: 0.56 },
        { label: say('packet.statement.quantity'), align: 'right', share: 0.14 },
        { label: say('packet.statement.rate'), align: 'right', share: 0.15 },
        { label: say('packet.statement.amount'), align: 'right', share: 0.15 },
      ],
      rows,
    },
  ];
  if (!statement.complete)
    blocks.push({ type: 'paragraph', look: 'caution', text: say('packet.statement.incomplete') });
  if (claim.demandCents !== statement.totalCents)
    blocks.push({
      type: 'paragraph',
      look: 'strong',
      text: say('packet.statement.demanded', { demand: formatCents(claim.demandCents) }),
    });
  const notes = [
    say(`packet.water.${statement.water.state}`),
    ...[...statement.problems, ...statement.notes].map((note) => sayProblem(reader.locale, note)),
  ];
  return [
    ...blocks,
    { type: 'heading', level: 2, text: say('packet.statement.notes') },
    { type: 'list', items: [...new Set(notes)] },
  ];
}

function lineCells(line: Line, reader: PacketReader): Cell[] {
  return [
    [
      { text: lineTitle(line, reader) },
      {
        text: [dated(line, reader), groupedDollars(line.arithmetic)].filter(Boolean).join(': '),
        look: 'small',
      },
      { text: authority(line, reader), look: 'small' },
      ...payRules(line, reader),
    ],
    quantityCell(line, reader),
    rate(line, reader),
    line.amountCents === null
      ? [{ text: reader.say('packet.statement.no-rate'), look: 'caution' }]
      : formatCents(line.amountCents),
  ];
}

/** What a line is, in words: `Crew lead, w-101`; `Service truck TRK-1, standing by`; `Handling on $470.10 of materials`. */
export function lineTitle(line: Line, { say }: PacketReader): string {
  return say(`packet.line.${line.kind}`, {
    description: line.description,
    item: line.item,
    quantity:
      line.kind === 'handling' ? formatCents(Number(decimal(line.quantity).times(100))) : line.quantity,
  });
}

function dated({ days, dateBasis }: Line, reader: PacketReader): string {
  const dates = days.length > 0 ? days.map(({ date }) => date) : dateBasis.dates;
  return dates.map(reader.day).join(' + ');
}

/** Hours paid, and beside them what they were worked as and how many were, where that is not the same. */
function quantityCell(line: Line, reader: PacketReader): Cell {
  const { say } = reader;
  const { hoursWorked, time } = line;
  const pieces: Piece[] = [{ text: quantity(line, reader) }];
  if (hoursWorked !== null && hoursWorked !== line.quantity)
    pieces.push({
      text: say('packet.time.worked', { worked: formatNumber(Number(hoursWorked), reader.locale, 4) }),
      look: 'small',
    });
  if (time !== null)
    pieces.push({
      text: say('packet.time.class', { time: say(`packet.time.${time.as}`), multiplier: time.multiplier }),
      look: 'small',
    });
  return pieces;
}

function quantity({ quantity: value, unit, fraction }: Line, reader: PacketReader): string {
  if (unit === 'usd') return percent(fraction ?? '0');
  return reader.say(`packet.unit.${unit}`, {
    quantity: formatNumber(Number(value), reader.locale, 4),
    count: Number(value),
  });
}

function rate({ rateUsd, fraction, unit, kind, amountCents }: Line, { say }: PacketReader): Cell {
  // A credit, and a share of other lines, has an amount without a rate of its own: nothing was looked for.
  if (rateUsd === null)
    return amountCents === null && unit !== 'usd' ? say('packet.statement.no-rate-short') : '';
  const each = say(`packet.per.${unit}`, {
    rate: groupedDollars(`$${rateUsd}`),
  });
  const fringe = kind === 'labor' && fraction !== null && Number(fraction) > 0;
  return fringe
    ? [
        { text: each },
        { text: say('packet.statement.fringe', { percent: percent(fraction) }), look: 'small' },
      ]
    : each;
}

/** A share as per cent, with the digits it has: `0.3940` is `39.40%`. */
export function percent(fraction: string): string {
  const digits = Math.max(0, (fraction.split('.')[1]?.length ?? 0) - 2);
  return `${decimal(fraction).times(100).toFixed(digits)}%`;
}

const paperOf = (
  { title, edition, page }: { title: string; edition: string | null; page: string | null },
  { say }: PacketReader,
): string =>
  [title, edition, page === null ? null : say('packet.authority.page', { page })].filter(Boolean).join(', ');

/** The paper behind premiums, steps and minimums, for labour that has any. */
const payRules = ({ payAuthority }: Line, reader: PacketReader): Piece[] =>
  payAuthority
    ? [
        {
          text: reader.say('packet.authority.pay-rules', { paper: paperOf(payAuthority, reader) }),
          look: 'small',
        },
      ]
    : [];

function authority(line: Line, reader: PacketReader): string {
  const { say } = reader;
  if (line.authority === null) return line.amountCents === null ? say('packet.statement.no-rate-long') : '';
  const { kind, title, edition, page } = line.authority;
  if (kind === 'invoice') return say('packet.authority.invoice', { title, edition: edition ?? '' });
  const paper = paperOf({ title, edition, page }, reader);
  return say('packet.authority.by', {
    paper,
    edition: line.editionId ?? '',
    rule: say(`packet.date-rule.${line.dateBasis.rule}`),
  });
}
