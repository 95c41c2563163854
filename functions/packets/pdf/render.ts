import type { Block, PacketDocument } from '../../../shared/packet/blocks.ts';
import { countPage, withPages } from '../../../shared/packet/pageMarks.ts';
import { CURVE_HEIGHT, drawCurve } from './drawCurve.ts';
import { placePapers, type Placement } from '../papers/place.ts';
import type { ReadPaper } from '../papers/read.ts';
import { drawPaperPage } from './drawPaper.ts';
import { drawMap, MAP_HEIGHT } from './drawMap.ts';
import { drawPhoto, PHOTO_START } from './drawPhoto.ts';
import { drawRings } from './drawRings.ts';
import { drawTable, TABLE_START } from './drawTable.ts';
import { drawAddress, drawHeading, drawLetterhead, drawList, drawPairs, drawParagraph } from './drawText.ts';
import { closeSheet, MARGIN, openSheet, PAGE, styles, WIDTH, type Sheet } from './sheet.ts';

/** Copy of a photo that the packet shows, by its original's hash. */
export type PhotoBytes = (sha256: string) => Uint8Array;

/**
 * A packet as a PDF: US Letter, tagged, with its faces embedded. The same document and photos give the same bytes.
 * It draws what it is given and decides nothing about it.
 */
export async function renderPacket(
  packet: PacketDocument,
  photoBytes: PhotoBytes,
  papers: ReadonlyMap<string, ReadPaper> = new Map(),
): Promise<Uint8Array> {
  const sheet = openSheet(packet);
  const placements: Placement[] = [];
  const pages = new Map<string, readonly [first: number, last: number]>();
  const page = (): number => {
    const { start, count } = sheet.doc.bufferedPageRange();
    return start + count;
  };
  packet.blocks.forEach((block, index) => {
    if (block.type === 'paper-page') {
      const paper = papers.get(block.sha256);
      if (!paper) throw new Error(`no paper was read for a page that is shown: ${block.sha256}`);
      placements.push(drawPaperPage(sheet, block, paper, placements.length + 1));
      countPage(pages, block.sha256, page());
    } else {
      drawBlock(sheet, withPages(block, pages), packet.blocks[index + 1], photoBytes);
      if (block.type === 'photo') countPage(pages, block.sha256, page());
    }
  });
  sheet.root.end();
  for (const { name, mediaType, description, text } of packet.attachments) {
    const at = new Date(packet.issuedAt);
    const options = {
      name,
      type: mediaType,
      description,
      creationDate: at,
      modifiedDate: at,
      relationship: 'Data',
    };
    sheet.doc.file(Buffer.from(text, 'utf8'), options);
  }
  drawRunning(sheet, packet);
  return placePapers(await closeSheet(sheet), placements);
}

function drawBlock(
  sheet: Sheet,
  block: Exclude<Block, { type: 'paper-page' }>,
  next: Block | undefined,
  photoBytes: PhotoBytes,
): void {
  switch (block.type) {
    case 'letterhead':
      return drawLetterhead(sheet, block);
    case 'address':
      return drawAddress(sheet, block);
    case 'heading':
      return drawHeading(sheet, block, startOf(next));
    case 'paragraph':
      return drawParagraph(sheet, block);
    case 'list':
      return drawList(sheet, block);
    case 'pairs':
      return drawPairs(sheet, block);
    case 'table':
      return drawTable(sheet, block);
    case 'supply-curve':
      return drawCurve(sheet, block);
    case 'rings':
      return drawRings(sheet, block);
    case 'map':
      return drawMap(sheet, block);
    case 'photo':
      return drawPhoto(sheet, block, photoBytes(block.sha256));
  }
}

/** How much of what follows a heading must stand on the heading's page. */
function startOf(block: Block | undefined): number {
  switch (block?.type) {
    case 'supply-curve':
      return CURVE_HEIGHT;
    case 'map':
      return MAP_HEIGHT;
    case 'photo':
      return PHOTO_START;
    case 'table':
      return TABLE_START;
    case 'list':
      return 3 * styles.body.leading;
    default:
      return 2 * styles.body.leading;
  }
}

/** Head and foot of every page, once it is known how many there are. */
function drawRunning(sheet: Sheet, packet: PacketDocument): void {
  const { start, count } = sheet.doc.bufferedPageRange();
  for (let index = 0; index < count; index += 1) {
    sheet.doc.switchToPage(start + index);
    sheet.artifact(() => {
      const style = styles.running;
      const line = (text: string): ReturnType<Sheet['lines']> => sheet.lines(text, style, WIDTH).slice(0, 1);
      if (index > 0) sheet.column(line(packet.runningHead), style, MARGIN.left, 40, WIDTH);
      if (packet.banner !== null) {
        const [banner] = sheet.lines(packet.banner, styles.banner, WIDTH);
        if (banner) sheet.draw(banner, MARGIN.left + WIDTH - banner.width, 36, styles.banner);
      }
      sheet.column(line(packet.runningFoot), style, MARGIN.left, PAGE.height - 46, WIDTH);
      sheet.column(
        line(packet.pageOf(index + 1, count)),
        style,
        MARGIN.left,
        PAGE.height - 46,
        WIDTH,
        'right',
      );
    }, 'Pagination');
  }
}
