import type { CaptureData, DisplayRecord, Undisplayable } from '../../shared/evidence/displayCopy.ts';
import { MOST_DISPLAYED_BYTES } from '../../shared/evidence/limits.ts';
import type { CopyStore, KeptCopy } from '../stores/evidence/copies.ts';
import { makeCopy, type Shown } from './pictures/copy.ts';
import type { PictureOptions } from './pictures/heif.ts';
import { inspect } from './pictures/inspect.ts';

/** A display copy is at most this long: more does no picture any good in print. */
export const MOST_COPY_BYTES = 600_000;

/** Where originals come from and where their copies are kept. */
export interface CopyDeps {
  readonly get: (sha256: string) => Promise<Uint8Array | null>;
  readonly copies: CopyStore;
  readonly pictures?: PictureOptions;
}

/**
 * The display copy of an original: the one that was made when it arrived, or, where that event was lost, made and kept
 * now. Null while the original has not arrived. Made once: a second maker finds the first one's and takes that.
 */
export async function displayCopyOf(deps: CopyDeps, sha256: string): Promise<KeptCopy | null> {
  const kept = await deps.copies.read(sha256);
  if (kept) return kept;
  const bytes = await deps.get(sha256);
  if (bytes === null) return null;
  const made = await copyFrom(sha256, bytes, deps.pictures);
  return isOfTheFile(made) ? deps.copies.keep(made) : made;
}

/** Whether what was found is a trait of the file: time and the store's own trouble may be another on another day. */
const isOfTheFile = ({ record: { picture } }: KeptCopy): boolean =>
  picture.code === 'made' || (picture.reason !== 'too-slow' && picture.reason !== 'hash-differs');

/** Makes the copy and the record of what was found; keeps nothing. */
export async function copyFrom(
  sha256: string,
  bytes: Uint8Array,
  options: PictureOptions = {},
): Promise<KeptCopy> {
  const none = (reason: Undisplayable, said: CaptureData | null = null): KeptCopy =>
    noCopy(sha256, reason, said);
  if (bytes.byteLength > MOST_DISPLAYED_BYTES) return none('too-large');
  const head = await inspect({ sha256 }, bytes);
  if (typeof head === 'string') return none(head);
  const { place, exif } = head.said;
  const { orientation, cameraTime, cameraPosition, device, satelliteTime } = exif;
  const said: CaptureData = { place, cameraTime, cameraPosition, device, satelliteTime };
  const copy = await makeCopy(bytes, MOST_COPY_BYTES, options);
  if (typeof copy === 'string') return none(copy, said);
  const lying = orientation > 4;
  const picture: DisplayRecord['picture'] = {
    code: 'made',
    widthPx: lying ? head.heightPx : head.widthPx,
    heightPx: lying ? head.widthPx : head.heightPx,
    orientation,
    display: displayOf(copy),
  };
  return { record: { schemaVersion: 1, original: sha256, picture, said }, jpeg: copy.jpeg };
}

const noCopy = (original: string, reason: Undisplayable, said: CaptureData | null = null): KeptCopy => ({
  record: { schemaVersion: 1, original, picture: { code: 'none', reason }, said },
  jpeg: null,
});

/** What is kept of an original that is too large to be read for a copy: that there is none, and why. */
export const noteTooLarge = (copies: CopyStore, sha256: string): Promise<KeptCopy> =>
  copies.keep(noCopy(sha256, 'too-large'));

/** A copy without its bytes. */
export const displayOf = ({ sha256, bytes, widthPx, heightPx }: Shown) => ({
  sha256,
  bytes,
  widthPx,
  heightPx,
});
