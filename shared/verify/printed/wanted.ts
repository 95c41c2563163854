import type { Block, Cell, PacketDocument } from '../../packet/blocks.ts';

/** A piece of text that a page must show. */
export interface WantedText {
  readonly text: string;
  /** The heading under which it stands; for a heading, itself. */
  readonly under: string;
  /** What its row or pair is called, so that a figure can be named; '' for text that stands alone. */
  readonly of: string;
  /** It may be cut where its room ends. */
  readonly mayEnd: boolean;
}

type Text = Pick<WantedText, 'text' | 'of' | 'mayEnd'>;
const text = (words: string, of = '', mayEnd = false): Text => ({ text: words, of, mayEnd });

/** Every text of a packet in the order in which its pages draw it, heads and feet of pages left out. */
export function wantedTexts({ blocks }: PacketDocument): WantedText[] {
  let under = '';
  return blocks.flatMap((block) => {
    if (block.type === 'heading') under = block.text;
    return textsOf(block)
      .filter((piece) => piece.text !== '')
      .map((piece) => ({ ...piece, under }));
  });
}

function textsOf(block: Block): Text[] {
  switch (block.type) {
    case 'letterhead':
      return [block.name, ...block.lines].map((line) => text(line));
    case 'address':
      return [...(block.closing === undefined ? [] : [block.closing]), ...block.lines].map((line) =>
        text(line),
      );
    case 'heading':
    case 'paragraph':
      return [text(block.text)];
    case 'list':
      return block.items.flatMap((item) => [text('–'), text(item)]);
    case 'pairs':
      return block.pairs.flatMap(({ label, value }) => [text(label), text(value, label)]);
    case 'table':
      return [
        ...block.columns.map(({ label }) => text(label)),
        ...block.rows.flatMap(({ cells }) => {
          const name = piecesOf(cells[0] ?? '')[0] ?? '';
          return cells.flatMap((cell, index) =>
            piecesOf(cell).map((piece) => text(piece, index === 0 && piece === name ? '' : name)),
          );
        }),
      ];
    case 'supply-curve': {
      const { curve, words } = block;
      const ticks = [...curve.pressure.ticks, ...curve.flow.ticks].filter(({ labelled }) => labelled);
      return [
        ...ticks.map(({ value }) => words.number(value)),
        words.flowAxis,
        words.pressureAxis,
        words.target,
        words.staticMark,
        words.testMark,
        ...(curve.targetMark && words.targetMark !== null ? [words.targetMark] : []),
      ].map((line) => text(line));
    }
    case 'rings':
      return block.rings.flatMap(({ ring, caption }) => [
        ...ring.bolts.flatMap(({ turn, place }) => [
          text(String(turn), caption),
          text(String(place), caption),
        ]),
        text(caption, '', true),
      ]);
    case 'map':
      return block.labels.map(({ text: label }) => text(label));
    case 'paper-page':
      return [text(block.line)];
    case 'photo':
      return [text(block.title), ...block.lines.map((line) => text(line, block.title))];
  }
}

const piecesOf = (cell: Cell): readonly string[] =>
  typeof cell === 'string' ? [cell] : cell.map((piece) => piece.text);

/** What the head of each table says: it is repeated where a table goes on. */
export const tableHeads = ({ blocks }: PacketDocument): string[] =>
  blocks.flatMap((block) =>
    block.type === 'table' ? [block.columns.map(({ label }) => label).join('')] : [],
  );
