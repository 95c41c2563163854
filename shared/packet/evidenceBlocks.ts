import { formatNumber } from '../units/format.ts';
import type { Block } from './blocks.ts';
import { photoCamera, photoPlace, photoTimes } from './exhibitTimes.ts';
import { pageMark } from './pageMarks.ts';
import type { Photo } from './photos.ts';
import type { PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

/** Photos with when, by which clock, and the hash that fixes their bytes; those that could not be shown, and why. */
export function photoBlocks(content: PacketContent, reader: PacketReader): Block[] {
  const { say } = reader;
  const { photos } = content;
  const title: Block = { type: 'heading', level: 1, text: say('packet.photos.title'), newPage: true };
  if (photos.length === 0) return [title, { type: 'paragraph', text: say('packet.photos.none') }];
  const shown = photos.flatMap((photo, index): Block[] => {
    if (photo.state.code !== 'included') return [];
    const { display } = photo.state;
    const name = photoTitle(photo, index, reader);
    const place = photoPlace(photo, content, reader);
    return [
      {
        type: 'photo',
        sha256: photo.sha256,
        widthPx: display.widthPx,
        heightPx: display.heightPx,
        alt: name,
        title: name,
        lines: [
          photoTimes(photo, content, reader),
          ...(place === null ? [] : [place]),
          ...photoCamera(photo, content, reader),
          say('packet.photo.original-hash', { sha256: photo.sha256 }),
          // A packet of before is made again, word for word, when it is verified.
          say(photo.camera === null ? 'packet.photo.display-hash' : 'packet.photo.display-of', {
            exhibit: photo.exhibitId,
            sha256: display.sha256,
            width: display.widthPx,
            height: display.heightPx,
          }),
        ],
      },
    ];
  });
  const missing = photos.flatMap((photo, index) => {
    if (photo.state.code === 'included') return [];
    const why =
      photo.state.code === 'awaited'
        ? say('packet.photo.awaited')
        : say(`packet.photo.${photo.state.reason}`, { mediaType: photo.mediaType });
    return [`${photoTitle(photo, index, reader)}. ${why} SHA-256 ${photo.sha256}`];
  });
  const notShown: Block[] =
    missing.length === 0
      ? []
      : [
          { type: 'heading', level: 2, text: say('packet.photos.not-included') },
          { type: 'list', items: missing },
        ];
  return [
    title,
    { type: 'paragraph', look: 'small', text: say('packet.photos.clocks') },
    ...shown,
    ...notShown,
  ];
}

function photoTitle({ view, caption }: Photo, index: number, { say }: PacketReader): string {
  return say('packet.photo.title', {
    number: index + 1,
    view: say(`value.view.${view}`),
    caption: caption ?? '',
    hasCaption: caption === null ? 'no' : 'yes',
  });
}

/** What the packet was built from: every submission, every exhibit, every edition of rates. */
export function manifestBlocks(
  { manifest, photos, papers, issue, schemaVersion, statement, utility }: PacketContent,
  reader: PacketReader,
): Block[] {
  const { say } = reader;
  const editions = [
    ...new Set(statement.lines.flatMap(({ editionId }) => (editionId === null ? [] : [editionId]))),
  ];
  const blocks: Block[] = [
    { type: 'heading', level: 1, text: say('packet.manifest.title'), newPage: true },
    { type: 'paragraph', text: say('packet.manifest.how') },
    { type: 'paragraph', text: sayCheck(utility, reader) },
    {
      type: 'pairs',
      pairs: [
        {
          label: say('packet.manifest.as-of'),
          value: `${reader.dateTime(issue.asOf)} (${reader.utc(issue.asOf)})`,
        },
        { label: say('packet.manifest.schema'), value: String(schemaVersion) },
        { label: say('packet.manifest.editions'), value: editions.join(', ') || say('packet.not-recorded') },
        { label: say('packet.manifest.attachment'), value: 'statement.json' },
      ],
    },
    {
      type: 'heading',
      level: 2,
      text: say('packet.manifest.submissions', { count: manifest.submissions.length }),
    },
    {
      type: 'table',
      dense: true,
      summary: say('packet.manifest.submissions', { count: manifest.submissions.length }),
      columns: [
        { label: say('packet.manifest.id'), align: 'left', share: 0.4 },
        { label: say('packet.manifest.kind'), align: 'left', share: 0.3 },
        { label: say('packet.manifest.recorded'), align: 'left', share: 0.3 },
      ],
      rows: manifest.submissions.map(({ submissionId, kind, recordedAt, standing }) => ({
        cells: [
          submissionId,
          standing === 'stands'
            ? say(`kind.${kind}`)
            : say('packet.manifest.standing', { kind: say(`kind.${kind}`), standing }),
          reader.utc(recordedAt),
        ],
      })),
    },
  ];
  const exhibits = [...papers, ...photos];
  if (exhibits.length === 0) return blocks;
  return [
    ...blocks,
    { type: 'heading', level: 2, text: say('packet.manifest.exhibits', { count: exhibits.length }) },
    {
      type: 'table',
      dense: true,
      summary: say('packet.manifest.exhibits', { count: exhibits.length }),
      columns: [
        { label: say('packet.manifest.exhibit'), align: 'left', share: 0.09 },
        { label: say('packet.manifest.hash'), align: 'left', share: 0.64 },
        { label: say('packet.manifest.bytes'), align: 'right', share: 0.1 },
        { label: say('packet.manifest.state'), align: 'left', share: 0.1 },
        { label: say('packet.manifest.pages'), align: 'right', share: 0.07 },
      ],
      rows: exhibits.map(({ exhibitId, sha256, bytes, state }) => ({
        cells: [
          exhibitId,
          sha256,
          formatNumber(bytes, reader.locale, 0),
          say(`packet.state.${state.code}`),
          pageMark(sha256),
        ],
      })),
    },
  ];
}

/** Where the file can be checked and what the two answers mean: by the utility's page, or with the program's command. */
export const sayCheck = (
  { checkUrl }: Pick<PacketContent['utility'], 'checkUrl'>,
  { say }: PacketReader,
): string =>
  checkUrl === null ? say('packet.check.command') : say('packet.check.site', { address: checkUrl });
