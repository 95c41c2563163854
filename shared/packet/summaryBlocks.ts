import { formatCents } from '../costs/money.ts';
import { formatNumber } from '../units/format.ts';
import type { Block } from './blocks.ts';
import { sayHydrant, type PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

/** The case on one page: what stood where, for how long it was out, what it cost, where to pay, what the packet holds. */
export function summaryBlocks(content: PacketContent, reader: PacketReader): Block[] {
  const { say } = reader;
  const { hydrant, strike, statement, claim, utility, photos, papers, manifest } = content;
  const pairs: [string, string | null][] = [
    [say('packet.letter.our-claim'), claim.claimNumber],
    [
      say('packet.summary.hydrant'),
      [sayHydrant(content, reader), hydrant.place].filter((part) => part !== null).join(', '),
    ],
    [say('packet.summary.struck'), strike.struckAt && reader.dateTime(strike.struckAt)],
    [say('packet.summary.since'), reader.dateTime(strike.since)],
    [say('packet.summary.returned'), strike.returnedAt && reader.dateTime(strike.returnedAt)],
    [say('packet.summary.out'), strike.returnedAt && hoursBetween(strike.since, strike.returnedAt, reader)],
    [say('packet.summary.pay-to'), utility.remitTo.join(', ')],
    ...(utility.taxFormReference === null
      ? []
      : [[say('packet.summary.tax-form'), utility.taxFormReference] as [string, string]]),
    [
      say('packet.summary.holds'),
      say('packet.summary.counts', {
        records: manifest.submissions.length,
        photos: photos.length,
        shown: photos.filter(({ state }) => state.code === 'included').length,
        papers: papers.length,
        merged: papers.filter(({ state }) => state.code === 'included' || state.code === 'pages').length,
      }),
    ],
  ];
  return [
    { type: 'heading', level: 1, text: say('packet.summary.title'), newPage: true },
    {
      type: 'pairs',
      pairs: pairs.map(([label, value]) => ({ label, value: value ?? say('packet.not-recorded') })),
    },
    {
      type: 'table',
      summary: say('packet.summary.total'),
      columns: [
        { label: say('packet.summary.total'), align: 'left', share: 0.75 },
        { label: say('packet.statement.amount'), align: 'right', share: 0.25 },
      ],
      rows: [
        ...statement.sections.map(({ section, subtotalCents }) => ({
          cells: [say(`packet.section.${section}`), formatCents(subtotalCents)],
        })),
        {
          role: 'total' as const,
          cells: [
            say(statement.complete ? 'packet.statement.total' : 'packet.statement.total-incomplete'),
            formatCents(statement.totalCents),
          ],
        },
      ],
    },
    {
      type: 'paragraph',
      look: 'strong',
      text: `${say('packet.summary.demand')}: ${formatCents(claim.demandCents)}`,
    },
  ];
}

const hoursBetween = (from: string, to: string, { say, locale }: PacketReader): string =>
  say('packet.summary.out-hours', {
    hours: formatNumber((Date.parse(to) - Date.parse(from)) / 3_600_000, locale, 1),
  });
