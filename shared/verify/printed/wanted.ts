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
  /** Texts of one number begin on one line, and numbers go down the page; null: it stands anywhere. */
  readonly row: number | null;
}

interface Text extends Pick<WantedText, 'text' | 'of' | 'mayEnd'> {
  /** Begins a line of its own, or goes on in the one that the text before it began. */
  readonly line?: 'new' | 'same';
}
const text = (words: string, of = '', mayEnd = false): Text => ({ text: words, of, mayEnd });
const begins = (piece: Text): Text => ({ ...piece, line: 'new' });
const goesOn = (piece: Text): Text => ({ ...piece, line: 'same' });

/** Every text of a packet in the order in which its pages draw it, heads and feet of pages left out. */
export function wantedTexts({ blocks }: PacketDocument): WantedText[] {
  let under = '';
  let row = 0;
  return blocks.flatMap((block) => {
    if (block.type === 'heading') under = block.text;
    return textsOf(block).flatMap(({ line, ...piece }) => {
      if (line === 'new') row += 1;
      return piece.text === '' ? [] : [{ ...piece, under, row: line === undefined ? null : row }];
    });
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
      return [begins(text(block.text))];
    case 'list':
      return block.items.flatMap((item) => [begins(text('–')), goesOn(text(item))]);
    case 'pairs':
      return block.pairs.flatMap(({ label, value }) => [begins(text(label)), goesOn(text(value, label))]);
    case 'table':
      return [
        ...block.columns.map(({ label }) => text(label)),
        ...block.rows.flatMap(({ cells }) => {
          const name = piecesOf(cells[0] ?? '')[0] ?? '';
          return cells.flatMap((cell, index) =>
            piecesOf(cell)
              .filter((piece) => piece !== '')
              .map((piece, nth) => {
                const said = text(piece, index === 0 && piece === name ? '' : name);
                // The first text of each cell stands on the row's line; what is under it stands anywhere below.
                return nth > 0 ? said : index === 0 ? begins(said) : goesOn(said);
              }),
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
      return [begins(text(block.title)), ...block.lines.map((line) => begins(text(line, block.title)))];
  }
}

const piecesOf = (cell: Cell): readonly string[] =>
  typeof cell === 'string' ? [cell] : cell.map((piece) => piece.text);

/** What the head of each table says: it is repeated where a table goes on. */
export const tableHeads = ({ blocks }: PacketDocument): string[] =>
  blocks.flatMap((block) =>
    block.type === 'table' ? [block.columns.map(({ label }) => label).join('')] : [],
  );
