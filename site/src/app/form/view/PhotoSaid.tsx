import { compareClocks, sayClock } from '../../../../../shared/evidence/clocks.ts';
import type { PictureRead } from '../../outbox/readPicture.ts';
import { textOf, type Values } from '../nodes.ts';
import { useScope } from './scope.ts';

/** What was read of this file when it was chosen; null for a photo of a record that is put right. */
function readOf(row: Values): PictureRead | null {
  const kept = textOf(row['_read']);
  return kept === '' ? null : (JSON.parse(kept) as PictureRead);
}

/** What a file says of its capture, the clocks beside each other, and what a packet will make of it: said while another can still be had. */
export function PhotoSaid({ row }: { readonly row: Values }) {
  const { words } = useScope();
  const mediaType = textOf(row['mediaType']);
  const isPicture = mediaType.startsWith('image/');
  const read = readOf(row);
  const chosen = textOf(row['chosenAt']) !== '';
  const warnings = [
    ...(read && isPicture && read.isA === null
      ? ['form.photo-not-readable']
      : mediaType === 'image/heic' || mediaType === 'image/heif'
        ? ['form.photo-heic']
        : []),
    ...(read && !isPicture && read.isA !== 'application/pdf' ? ['form.pdf-not-pdf'] : []),
    ...(read?.locked ? ['form.pdf-locked'] : []),
    ...(isPicture && chosen && !read ? ['form.photo-data-unread'] : []),
    ...(isPicture && textOf(row['takenAt']) === '' && !read?.exif.cameraTime
      ? ['form.photo-time-unknown']
      : []),
  ];
  return (
    <>
      {warnings.map((key) => (
        <p class="small" key={key}>
          {words.t(key)}
        </p>
      ))}
      {read && isPicture && read.isA !== null && <Capture row={row} read={read} />}
    </>
  );
}

function Capture({ row, read }: { readonly row: Values; readonly read: PictureRead }) {
  const { words } = useScope();
  const { exif, place } = read;
  if (place === null) return <p class="small soft">{words.t('evidence.source-none')}</p>;
  const clocks = compareClocks(
    {
      cameraTime: exif.cameraTime,
      satelliteTime: exif.satelliteTime,
      fileWrittenAt: textOf(row['fileWrittenAt']) || null,
      chosenAt: textOf(row['chosenAt']) || null,
    },
    words.zone,
  );
  const position = exif.cameraPosition;
  return (
    <>
      {clocks
        .filter(({ code }) => code !== 'no-camera-time' && code !== 'no-phone-time')
        .map((finding) => (
          <p class="small" key={finding.code}>
            {sayClock(finding, words.t)}
          </p>
        ))}
      <p class="small soft">
        {[
          exif.device === null
            ? words.t('evidence.device-unknown')
            : words.t('evidence.device', { device: exif.device }),
          position === null
            ? words.t('evidence.place-unknown')
            : words.t('evidence.place', {
                latitude: position.latitudeDeg.toFixed(5),
                longitude: position.longitudeDeg.toFixed(5),
              }),
          words.t('evidence.source', { place }),
        ].join(' ')}
      </p>
    </>
  );
}
