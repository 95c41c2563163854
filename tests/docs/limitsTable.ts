import { usualThrottles } from '../../infra/aws/service/throttles.ts';
import { MOST_BODY_BYTES, MOST_JSON_DEPTH } from '../../functions/http/json.ts';
import { MOST_BYTES as MOST_MODEL_BYTES } from '../../functions/network/solve.ts';
import { MOST_ARCHIVE_BYTES as MOST_MADE_ARCHIVE_BYTES } from '../../functions/packets/archive.ts';
import { MOST_PAGES, MOST_PAPERS_BYTES } from '../../functions/packets/papers/gather.ts';
import { MOST_PAPER_BYTES, MOST_PAPER_PAGES } from '../../functions/packets/papers/read.ts';
import { MOST_PDF_BYTES as MOST_PACKET_BYTES, MOST_PHOTOS } from '../../functions/packets/photos/gather.ts';
import { DOWNLOAD_SECONDS, UPLOAD_SECONDS } from '../../functions/stores/evidence/byHash.ts';
import { rowLimitBytes } from '../../functions/stores/dynamodb/table.ts';
import { MOST_ROWS as MOST_SCHEDULE_ROWS } from '../../shared/costs/schedule/readSchedule.ts';
import {
  MOST_DISPLAYED_BYTES,
  MOST_EXHIBIT_BYTES,
  MOST_HEIF_PIXELS,
  MOST_PIXELS,
  PICTURE_LIMIT_MS,
} from '../../shared/evidence/limits.ts';
import { usualUploadBudget } from '../../shared/evidence/uploadBudget.ts';
import { MOST_SHEET_BYTES } from '../../shared/models/sheet.ts';
import { MOST_STATIONS } from '../../shared/stations/stations.ts';
import { MOST_ARCHIVE_BYTES } from '../../shared/verify/file/readArchive.ts';
import { MOST_PDF_BYTES } from '../../shared/verify/file/readPdf.ts';

const grouped = new Intl.NumberFormat('en-US');
const count = (number: number): string => grouped.format(number);
const mb = (bytes: number): string => `${count(bytes / 1e6)} MB`;
const kb = (bytes: number): string => `${count(bytes / 1024)} KB`;
const megapixels = (pixels: number): string => `${count(pixels / 1e6)} megapixels`;

/** What, how much, and what happens beyond; from the constants themselves. */
const rows: readonly (readonly [what: string, most: string, beyond: string])[] = [
  ['body of a request', kb(MOST_BODY_BYTES), '413, `body-too-large`'],
  ['nesting of JSON', `${count(MOST_JSON_DEPTH)} levels`, '422, `nested-too-deep`, with the place'],
  ['one fact as it is stored', kb(rowLimitBytes), '413, `item-too-large`; nothing is written'],
  ['one photo or document', mb(MOST_EXHIBIT_BYTES), '422; the form says so when it is chosen'],
  [
    'photos and documents of one sign-in in a day',
    `${count(usualUploadBudget.files)} and ${mb(usualUploadBudget.megabytes * 1e6)} (a setting)`,
    '429 until midnight; the device keeps them',
  ],
  [
    'an address to send to',
    `${UPLOAD_SECONDS / 60} minutes, one object, once`,
    '403; the device asks for another',
  ],
  ['an address to read at', `${DOWNLOAD_SECONDS / 60} minutes`, '403'],
  [
    'a picture that gets a display copy',
    `${mb(MOST_DISPLAYED_BYTES)}, ${megapixels(MOST_PIXELS)} (HEIC: ${megapixels(MOST_HEIF_PIXELS)})`,
    'kept as it came; the desk and the packet say why it is not shown',
  ],
  ['unpacking one picture', `${PICTURE_LIMIT_MS / 1000} s`, 'tried again, then a queue with an alarm'],
  ['photos in a packet', count(MOST_PHOTOS), 'listed with why'],
  ['a paper in a packet', `${mb(MOST_PAPER_BYTES)}, ${count(MOST_PAPER_PAGES)} pages`, 'listed with why'],
  ['all papers of a packet', `${mb(MOST_PAPERS_BYTES)}, ${count(MOST_PAGES)} pages`, 'listed with why'],
  ['a packet', mb(MOST_PACKET_BYTES), 'photos get smaller'],
  ['an archive of a packet', mb(MOST_MADE_ARCHIVE_BYTES), 'none is made, and that is said'],
  [
    'a file that is verified',
    `PDF ${mb(MOST_PDF_BYTES)}, archive ${mb(MOST_ARCHIVE_BYTES)} unpacked`,
    'refused before it is unpacked',
  ],
  ['a network model', mb(MOST_MODEL_BYTES), 'refused with what would be right'],
  ['a sheet of models', mb(MOST_SHEET_BYTES), 'refused with what would be right'],
  ['rows of a machine schedule', count(MOST_SCHEDULE_ROWS), 'refused with what would be right'],
  ['stations of a layer', count(MOST_STATIONS), 'refused with what would be right'],
];

export const limitsTable = (): string =>
  ['| what | at most | beyond that |', '|---|---|---|', ...rows.map((row) => `| ${row.join(' | ')} |`)].join(
    '\n',
  );

export const throttleTable = (): string =>
  [
    '| route | a second | at once |',
    '|---|---|---|',
    ...Object.entries(usualThrottles).map(
      ([route, { perSecond, burst }]) => `| \`${route}\` | ${perSecond} | ${burst} |`,
    ),
  ].join('\n');
