import type { Block } from './blocks.ts';
import { exhibitTimes } from './exhibitTimes.ts';
import type { PacketPaper } from './exhibitSchema.ts';
import type { PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

/** Police report, invoices and other papers: a list of them, then each page of those that could be included. */
export function paperBlocks({ papers }: PacketContent, reader: PacketReader): Block[] {
  if (papers.length === 0) return [];
  const { say } = reader;
  const left = papers.filter(({ state }) => state.code === 'not-included' || state.code === 'awaited');
  const shown = papers.filter((paper) => !left.includes(paper));
  return [
    { type: 'heading', level: 1, text: say('packet.papers.title'), newPage: true },
    { type: 'paragraph', look: 'small', text: say('packet.papers.how') },
    ...(shown.length === 0 ? [] : [listed(shown, reader)]),
    ...(left.length === 0
      ? []
      : [
          { type: 'heading', level: 2, text: say('packet.papers.not-included') } as const,
          { type: 'list', items: left.map((paper) => notIncluded(paper, reader)) } as const,
        ]),
    ...shown.flatMap((paper) => pagesOf(paper, reader)),
  ];
}

export const paperTitle = ({ what, title, number }: PacketPaper, { say }: PacketReader): string =>
  say('packet.paper.title', {
    what: say(`value.document.${what}`),
    title,
    number: number ?? '',
    hasNumber: number === null ? 'no' : 'yes',
  });

function listed(papers: readonly PacketPaper[], reader: PacketReader): Block {
  const { say } = reader;
  return {
    type: 'table',
    dense: true,
    summary: say('packet.papers.list'),
    columns: [
      { label: say('packet.papers.exhibit'), align: 'left', share: 0.13 },
      { label: say('packet.papers.what'), align: 'left', share: 0.5 },
      { label: say('packet.papers.recorded'), align: 'left', share: 0.23 },
      { label: say('packet.papers.here'), align: 'left', share: 0.14 },
    ],
    rows: papers.map((paper) => ({
      cells: [
        paper.exhibitId,
        [{ text: paperTitle(paper, reader) }, { text: `SHA-256 ${paper.sha256}`, look: 'small' }],
        [
          { text: reader.dateTime(paper.hashRecordedAt) },
          ...(paper.bytesArrivedAt === null
            ? []
            : [
                {
                  text: say('packet.papers.arrived', { at: reader.dateTime(paper.bytesArrivedAt) }),
                  look: 'small' as const,
                },
              ]),
        ],
        say('packet.papers.pages', { pages: paper.state.code === 'pages' ? paper.state.pages : 1 }),
      ],
    })),
  };
}

function notIncluded(paper: PacketPaper, reader: PacketReader): string {
  const { state, mediaType } = paper;
  const reason = state.code === 'not-included' ? state.reason : 'awaited';
  return [
    `${paper.exhibitId}. ${paperTitle(paper, reader)}.`,
    reader.say(`packet.paper.${reason}`, { mediaType }),
    `SHA-256 ${paper.sha256}`,
  ].join(' ');
}

function pagesOf(paper: PacketPaper, reader: PacketReader): Block[] {
  const { say } = reader;
  const { state, exhibitId, sha256 } = paper;
  const title = paperTitle(paper, reader);
  const named = `${exhibitId}. ${title}`;
  if (state.code === 'included')
    return [
      { type: 'heading', level: 2, text: named, inOutline: true, newPage: true },
      {
        type: 'photo',
        sha256,
        widthPx: state.display.widthPx,
        heightPx: state.display.heightPx,
        large: true,
        alt: title,
        title,
        lines: [
          exhibitTimes(paper, reader),
          say('packet.photo.original-hash', { sha256 }),
          say('packet.photo.display-hash', {
            sha256: state.display.sha256,
            width: state.display.widthPx,
            height: state.display.heightPx,
          }),
        ],
      },
    ];
  if (state.code !== 'pages') return [];
  const { pages } = state;
  return Array.from({ length: pages }, (_, page): Block => ({
    type: 'paper-page',
    sha256,
    page,
    line: say('packet.papers.page', { exhibitId, title, page: page + 1, pages }),
    begins: page === 0 ? named : null,
    alt: say('packet.papers.page-alt', { title, page: page + 1, pages }),
  }));
}
