import type { PacketDocument } from '../../packet/blocks.ts';
import { letterhead, letterParagraph, signature } from '../../packet/letter.ts';
import { readerOf, type PacketReader } from '../../packet/reader.ts';
import type { LetterFacts } from '../values.ts';
import { forTheFile, type LaterLetterKind } from './letter.ts';

export interface LaterLetter {
  readonly letter: LaterLetterKind;
  /** The day of the letter, in the utility's zone. */
  readonly on: string;
  readonly to: string;
  readonly payerReference: string | null;
  readonly paragraphs: readonly string[];
}

/** A letter as a document of its own, in the utility's letterhead: drawn by the packet's own renderer. Pure. */
export function laterDocument(
  facts: LetterFacts,
  { letter, on, to, payerReference, paragraphs }: LaterLetter,
): PacketDocument {
  const reader = readerOf(facts);
  const { say } = reader;
  const { utility, claim } = facts;
  const title = say('letter.later.title', {
    kind: say(`letter.kind.${letter}`),
    claimNumber: claim.claimNumber,
  });
  // Noon in Greenwich is the same day from Alaska to the Azores.
  const issuedAt = `${on}T12:00:00Z`;
  return {
    language: facts.locale,
    title,
    subject: say(`letter.kind.${letter}`),
    issuedAt,
    banner: null,
    runningHead: utility.name,
    runningFoot: `${title}, ${reader.date(issuedAt)}`,
    pageOf: (page, pages) => say('packet.page-of', { page, pages }),
    blocks: [
      letterhead(facts),
      { type: 'paragraph', text: reader.date(issuedAt) },
      ...(forTheFile.includes(letter) ? [] : [{ type: 'address', lines: linesOf(to) } as const]),
      { type: 'heading', level: 1, text: title },
      { type: 'pairs', pairs: referencesOf(facts, payerReference, reader) },
      ...paragraphs.map(letterParagraph),
      { type: 'paragraph', text: say('letter.footer'), look: 'small' },
      signature(facts, say(forTheFile.includes(letter) ? 'letter.later.reviewed' : 'packet.letter.closing')),
    ],
    attachments: [],
  };
}

const linesOf = (text: string): string[] => text.split(/\s*\n\s*/).filter((line) => line !== '');

function referencesOf(
  { claim, strike }: LetterFacts,
  payerReference: string | null,
  reader: PacketReader,
): { label: string; value: string }[] {
  const { say } = reader;
  return [
    { label: say('packet.letter.our-claim'), value: claim.claimNumber },
    ...(payerReference === null ? [] : [{ label: say('packet.letter.your-file'), value: payerReference }]),
    { label: say('letter.later.struck'), value: reader.date(strike.struckAt ?? strike.since) },
  ];
}
