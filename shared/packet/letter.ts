import { formatCents } from '../costs/money.ts';
import type { Block } from './blocks.ts';
import { sayHydrant, type PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

/** The cover letter: who, what, where, when, how much, and where to pay. */
export function letterBlocks(content: PacketContent, reader: PacketReader): Block[] {
  const { utility, claim, issue } = content;
  const { say } = reader;
  const contact = [utility.phone, utility.email].filter((part) => part !== null).join('  ·  ');
  const paragraph = (text: string): Block => ({ type: 'paragraph', text });
  return [
    { type: 'letterhead', name: utility.name, lines: [...utility.addressLines, contact] },
    paragraph(reader.date(issue.asOf)),
    { type: 'address', lines: payerLines(content, reader) },
    {
      type: 'heading',
      level: 1,
      text: say('packet.letter.subject', {
        claimNumber: claim.claimNumber,
        hydrant: sayHydrant(content, reader),
      }),
    },
    { type: 'pairs', pairs: references(content, reader) },
    paragraph(say('packet.letter.greeting')),
    paragraph(incident(content, reader)),
    ...costs(content, reader).map(paragraph),
    paragraph(say('packet.letter.pay', { claimNumber: claim.claimNumber })),
    { type: 'address', lines: utility.remitTo },
    paragraph(say('packet.letter.enclosed', { attachment: 'statement.json' })),
    paragraph(say('packet.letter.originals')),
    ...signature(content, reader),
  ];
}

function payerLines({ claim: { payer, payerKind } }: PacketContent, { say }: PacketReader): string[] {
  const name = payer.name ?? say(`value.payerKind.${payerKind}`);
  return [name, payer.attention, ...(payer.address?.split(/\s*\n\s*/) ?? [])].filter((line) => line !== null);
}

function references(content: PacketContent, reader: PacketReader): { label: string; value: string }[] {
  const { claim, party, issue } = content;
  const { say } = reader;
  const revision =
    issue.state === 'frozen'
      ? say('packet.letter.revision', { revision: issue.revision })
      : say('packet.preview.short');
  const police = [party?.police.reportNumber, party?.police.agency].filter(Boolean).join(', ');
  const vehicle = (party?.vehicles ?? [])
    .map(({ kind, plate, plateRegion, description }) =>
      [say(`value.vehicle.${kind}`), [plate, plateRegion].filter(Boolean).join(' '), description]
        .filter((part) => part !== null && part !== '')
        .join(', '),
    )
    .join('; ');
  const pairs: [string, string | null | undefined][] = [
    [say('packet.letter.our-claim'), `${claim.claimNumber}, ${revision}`],
    [say('packet.letter.your-file'), claim.payer.reference],
    [say('packet.letter.policy'), party?.policyNumber],
    [say('packet.letter.police-report'), police],
    [say('packet.letter.crash-report'), crashReport(party)],
    [say('packet.letter.vehicle'), vehicle],
  ];
  return pairs.flatMap(([label, value]) =>
    value === null || value === undefined || value === '' ? [] : [{ label, value }],
  );
}

function crashReport(party: PacketContent['party']): string {
  const { codeSystem, code, text } = party?.crashReport ?? {};
  return [[codeSystem, code].filter(Boolean).join(': '), text].filter(Boolean).join(', ');
}

function incident(content: PacketContent, reader: PacketReader): string {
  const { hydrant, strike } = content;
  const { say } = reader;
  const at = strike.struckAt ?? strike.since;
  const told = say('packet.letter.incident', {
    hydrant: sayHydrant(content, reader),
    place: hydrant.place ?? '',
    hasPlace: hydrant.place === null ? 'no' : 'yes',
    at: reader.dateTime(at),
    known: strike.struckAt === null ? 'no' : 'yes',
  });
  const back = strike.returnedAt
    ? say('packet.letter.returned', { at: reader.dateTime(strike.returnedAt) })
    : say('packet.letter.not-returned');
  return `${told} ${back}`;
}

function costs({ statement, claim }: PacketContent, { say }: PacketReader): string[] {
  const total = formatCents(statement.totalCents);
  const demand = formatCents(claim.demandCents);
  const sentences = [
    claim.demandCents === statement.totalCents
      ? say('packet.letter.demand-all', { total })
      : say('packet.letter.demand-part', { total, demand }),
  ];
  if (claim.otherDemandsCents > 0)
    sentences.push(say('packet.letter.other-demands', { others: formatCents(claim.otherDemandsCents) }));
  if (!statement.complete) sentences.push(say('packet.statement.incomplete'));
  return sentences;
}

function signature({ utility }: PacketContent, { say }: PacketReader): Block[] {
  const lines = utility.signedBy
    ? [utility.signedBy.name, utility.signedBy.trade, utility.name].filter((line) => line !== null)
    : [utility.name];
  return [{ type: 'address', lines, closing: say('packet.letter.closing') }];
}
