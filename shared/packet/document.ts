import type { PacketDocument } from './blocks.ts';
import { changeBlocks } from './changeBlocks.ts';
import { photoBlocks, manifestBlocks } from './evidenceBlocks.ts';
import { flowTestBlocks } from './flowTestBlocks.ts';
import { letterBlocks } from './letter.ts';
import { readerOf } from './reader.ts';
import { summaryBlocks } from './summaryBlocks.ts';
import { paperBlocks } from './paperBlocks.ts';
import type { PacketContent } from './schema.ts';
import { statementBlocks } from './statementBlocks.ts';
import { accountBlocks, timelineBlocks } from './storyBlocks.ts';
import { tighteningBlocks } from './tighteningBlocks.ts';
import { waterBlocks } from './waterBlocks.ts';
import { WORDING_NAME, wordingOf } from './wording.ts';

/** The packet in the reader's language, in the order in which an adjuster reads it. Pure. */
export function packetDocument(content: PacketContent): PacketDocument {
  const reader = readerOf(content);
  const { claim, issue, utility } = content;
  const { say } = reader;
  const { claimNumber } = claim;
  const title =
    issue.state === 'frozen'
      ? say('packet.title', { claimNumber, revision: issue.revision })
      : say('packet.title-preview', { claimNumber });
  const blocks = [
    ...letterBlocks(content, reader),
    ...changeBlocks(content, reader),
    ...summaryBlocks(content, reader),
    ...statementBlocks(content, reader),
    ...accountBlocks(content, reader),
    ...tighteningBlocks(content, reader),
    ...waterBlocks(content, reader),
    ...timelineBlocks(content, reader),
    ...flowTestBlocks(content, reader),
    ...photoBlocks(content, reader),
    ...paperBlocks(content, reader),
    ...manifestBlocks(content, reader),
  ];
  return {
    language: content.locale,
    title,
    subject: say('packet.subject'),
    issuedAt: issue.asOf,
    banner: issue.state === 'preview' ? say('packet.preview.banner') : null,
    runningHead: utility.name,
    runningFoot: `${title}, ${reader.date(issue.asOf)}`,
    pageOf: (page, pages) => say('packet.page-of', { page, pages }),
    blocks,
    attachments: [
      {
        name: 'packet.json',
        mediaType: 'application/json',
        description: say('packet.manifest.content'),
        text: `${JSON.stringify(content, null, 1)}\n`,
      },
      {
        name: 'statement.json',
        mediaType: 'application/json',
        description: say('packet.statement.title'),
        text: `${JSON.stringify({ claimNumber, issue, statement: content.statement }, null, 2)}\n`,
      },
      {
        name: WORDING_NAME,
        mediaType: 'application/json',
        description: say('packet.manifest.wording'),
        text: `${JSON.stringify(wordingOf(blocks), null, 1)}\n`,
      },
    ],
  };
}
