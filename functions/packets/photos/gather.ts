import type { CaptureData } from '../../../shared/evidence/displayCopy.ts';
import { MOST_DISPLAYED_BYTES } from '../../../shared/evidence/limits.ts';
import type { PhotoReason } from '../../../shared/packet/exhibitSchema.ts';
import type { PhotoFound } from '../../../shared/packet/photos.ts';
import type { Exhibit } from '../../../shared/submissions/fields.ts';
import { copyFrom, displayCopyOf, displayOf } from '../../evidence/displayCopies.ts';
import { shrinkCopy } from '../../evidence/pictures/copy.ts';
import type { CopyStore, KeptCopy } from '../../stores/evidence/copies.ts';

/** Where the bytes come from; null while they have not arrived. */
export interface PhotoSource {
  get(sha256: string): Promise<Uint8Array | null>;
  /** Where copies are kept; without it, each is made for the moment. */
  readonly copies?: CopyStore;
}

/** One photo: what a phone makes, with room. */
export const MOST_PHOTO_BYTES = MOST_DISPLAYED_BYTES;
export const MOST_PHOTOS = 200;
/** Whole packet, for a mail box: photos get what papers and pages leave. */
export const MOST_PDF_BYTES = 20_000_000;
/** More than this does no picture any good in print. */
const MOST_SHARE_BYTES = 600_000;
/** Two at a time: where a copy has to be made yet, that is some 300 MB with the originals at the very worst. */
const AT_ONCE = 2;

export interface Gathered {
  readonly found: ReadonlyMap<string, PhotoFound>;
  /** The copies that are shown, by the hash of their original. */
  readonly shown: ReadonlyMap<string, Uint8Array>;
}

export interface GatherOptions {
  /** What all copies together may come to, bytes. */
  readonly mostBytes?: number;
  readonly onDone?: (done: number, total: number) => void;
}

/**
 * Reads a packet's photos and says of each whether it can be shown, and if not, why. What cannot be shown never fails
 * the packet; a store that does not answer does, because the packet would be wrong by silence. Of a photo its display copy
 * is read; the original only where none was made when it arrived.
 */
export async function gatherPhotos(
  exhibits: readonly Exhibit[],
  source: PhotoSource,
  { mostBytes = MOST_PDF_BYTES - 2_000_000, onDone }: GatherOptions = {},
): Promise<Gathered> {
  const found = new Map<string, PhotoFound>();
  const shown = new Map<string, Uint8Array>();
  const candidates = exhibits.filter((exhibit) => unreadable(exhibit) === null).length;
  const share = Math.min(
    MOST_SHARE_BYTES,
    Math.floor(mostBytes / Math.max(1, Math.min(candidates, MOST_PHOTOS))),
  );
  let done = 0;
  let accepted = 0;
  const look = async (exhibit: Exhibit): Promise<void> => {
    const { sha256 } = exhibit;
    const early = unreadable(exhibit);
    // The place in line is taken before anything is awaited, so it does not hang on which picture is done first.
    if (early === null) accepted += 1;
    const reason = early ?? (accepted > MOST_PHOTOS ? 'too-many' : null);
    if (reason !== null) found.set(sha256, await leftOut(sha256, reason, source));
    else {
      const seen = await showing(sha256, source, share);
      found.set(sha256, seen.found);
      if (seen.jpeg) shown.set(sha256, seen.jpeg);
    }
    done += 1;
    onDone?.(done, exhibits.length);
  };
  const waiting = exhibits.values();
  await Promise.all(
    Array.from({ length: AT_ONCE }, async () => {
      for (const exhibit of waiting) await look(exhibit);
    }),
  );
  // In the order in which they are declared, whichever was done first.
  const inOrder = exhibits.flatMap(({ sha256 }) => {
    const seen = found.get(sha256);
    return seen ? [[sha256, seen] as const] : [];
  });
  return { found: new Map(inOrder), shown };
}

const notIncluded = (reason: PhotoReason, said: CaptureData | null = null): PhotoFound => ({
  state: { code: 'not-included', reason },
  ...captured(said),
});

const captured = (said: CaptureData | null): Omit<PhotoFound, 'state'> => ({
  cameraTime: said?.cameraTime ?? null,
  cameraPosition: said?.cameraPosition ?? null,
  camera:
    said === null ? null : { place: said.place, device: said.device, satelliteTime: said.satelliteTime },
});

/** One that is not shown whatever it holds: its bytes are not fetched, but whether they came is said. */
async function leftOut(sha256: string, reason: PhotoReason, source: PhotoSource): Promise<PhotoFound> {
  if (reason !== 'document') return notIncluded(reason);
  return (await source.get(sha256)) === null
    ? { ...notIncluded(reason), state: { code: 'awaited' } }
    : notIncluded(reason);
}

/** Why a photo is not shown, as far as its declaration says. */
function unreadable({ mediaType, bytes }: Exhibit): PhotoReason | null {
  if (mediaType === 'application/pdf') return 'document';
  return bytes > MOST_PHOTO_BYTES ? 'too-large' : null;
}

/** A picture with its copy of at most `mostBytes`, or why there is none. */
export async function showing(
  sha256: string,
  source: PhotoSource,
  mostBytes: number,
): Promise<{ readonly found: PhotoFound; readonly jpeg: Uint8Array | null }> {
  const kept = await copyIn(source, sha256);
  if (kept === null) return { found: { ...notIncluded('corrupt'), state: { code: 'awaited' } }, jpeg: null };
  const { picture, said } = kept.record;
  if (picture.code === 'none') return { found: notIncluded(picture.reason, said), jpeg: null };
  if (kept.jpeg === null) throw new Error(`a display copy without bytes: ${sha256}`);
  const { code: _, ...size } = picture;
  const within = { display: picture.display, jpeg: kept.jpeg };
  const fitting = picture.display.bytes <= mostBytes ? within : await smaller(within, mostBytes);
  return {
    found: { state: { ...size, code: 'included', display: fitting.display }, ...captured(said) },
    jpeg: fitting.jpeg,
  };
}

async function copyIn(source: PhotoSource, sha256: string): Promise<KeptCopy | null> {
  const { copies } = source;
  if (copies) return displayCopyOf({ get: (hash) => source.get(hash), copies }, sha256);
  const bytes = await source.get(sha256);
  return bytes && copyFrom(sha256, bytes);
}

type Fitting = Pick<Extract<PhotoFound['state'], { code: 'included' }>, 'display'> & {
  readonly jpeg: Uint8Array;
};

/** A copy that is too large for its share of the packet, made smaller; as it is, where that fails. */
async function smaller(copy: Fitting, mostBytes: number): Promise<Fitting> {
  const shrunk = await shrinkCopy(copy.jpeg, mostBytes);
  return typeof shrunk === 'string' ? copy : { display: displayOf(shrunk), jpeg: shrunk.jpeg };
}
