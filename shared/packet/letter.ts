import { sayCrashReport, sayVehicles } from '../letters/values.ts';
import type { Block } from './blocks.ts';
import { sayHydrant, type PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

/** The letter that a packet opens with: to whom, by what numbers it is found, its text, and who signs. */
export function letterBlocks(content: PacketContent, reader: PacketReader): Block[] {
  const { claim, issue, letter, statement } = content;
  const { say } = reader;
  return [
    letterhead(content),
    { type: 'paragraph', text: reader.date(issue.asOf) },
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
    ...letter.paragraphs.map(letterParagraph),
    ...(statement.complete ? [] : [{ type: 'paragraph', text: say('packet.statement.incomplete') } as const]),
    // Before the signature, so that no page holds it alone.
    { type: 'paragraph', text: say('letter.footer'), look: 'small' },
    signature(content, say('packet.letter.closing')),
  ];
}

/** Several lines are an address or a list of sums and stay lines. */
export function letterParagraph(text: string): Block {
  const lines = text.split('\n');
  return lines.length === 1 ? { type: 'paragraph', text } : { type: 'address', lines };
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
  const pairs: [string, string | null | undefined][] = [
    [say('packet.letter.our-claim'), `${claim.claimNumber}, ${revision}`],
    [say('packet.letter.your-file'), claim.payer.reference],
    [say('packet.letter.policy'), party?.policyNumber],
    [say('packet.letter.police-report'), police],
    [say('packet.letter.crash-report'), sayCrashReport(content)],
    [say('packet.letter.vehicle'), sayVehicles(content, reader)],
  ];
  return pairs.flatMap(([label, value]) =>
    value === null || value === undefined || value === '' ? [] : [{ label, value }],
  );
}

/** The utility's own head of a letter: name, address, and how it is reached. */
export const letterhead = ({ utility }: Pick<PacketContent, 'utility'>): Block => ({
  type: 'letterhead',
  name: utility.name,
  lines: [
    ...utility.addressLines,
    [utility.phone, utility.email].filter((part) => part !== null).join('  ·  '),
  ],
});

/** Who signs, under the words that close a letter. */
export function signature({ utility }: Pick<PacketContent, 'utility'>, closing: string): Block {
  const lines = utility.signedBy
    ? [utility.signedBy.name, utility.signedBy.trade, utility.name].filter((line) => line !== null)
    : [utility.name];
  return { type: 'address', lines, closing };
}
