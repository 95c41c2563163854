import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Exhibit } from '../../../shared/submissions/fields.ts';

/** The demo's photos: drawn for the purpose (`tests/support/drawDemoPhotos.ts`), kept as JPEG. No photograph of any place or person. */
export const photoNames = [
  'sailmaker-overall',
  'sailmaker-mid',
  'sailmaker-scale',
  'sailmaker-repaired',
  'quince-overall',
  'quince-mid',
  'quince-scale',
  'quince-repaired',
  'millpond-overall',
  'millpond-scale',
  'gullpoint-overall',
] as const;
export type PhotoName = (typeof photoNames)[number];

export const photoBytes = (name: PhotoName): Uint8Array =>
  readFileSync(new URL(`./photos/${name}.jpg`, import.meta.url));

/** The photo as a submission declares it. */
export function declared(name: PhotoName, takenAt: string, caption: string): Exhibit {
  const bytes = photoBytes(name);
  const view = name.endsWith('overall')
    ? 'overall'
    : name.endsWith('mid')
      ? 'mid'
      : name.endsWith('scale')
        ? 'scale'
        : 'other';
  return {
    sha256: createHash('sha256').update(bytes).digest('hex'),
    bytes: bytes.length,
    mediaType: 'image/jpeg',
    takenAt,
    view,
    caption,
  };
}
