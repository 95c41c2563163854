import type { PaperReason } from '../../../shared/packet/exhibitSchema.ts';
import type { PaperFound } from '../../../shared/packet/papers.ts';
import type { Exhibit } from '../../../shared/submissions/fields.ts';
import { MOST_PHOTO_BYTES, showing, type PhotoSource } from '../photos/gather.ts';
import { canBePlaced } from './place.ts';
import { MOST_PAPER_BYTES, readPaper, type ReadPaper } from './read.ts';

/** All papers together, so that the packet stays within a mail box beside its photos. */
export const MOST_PAPERS_BYTES = 11_000_000;
export const MOST_PAGES = 400;
const PICTURE_BYTES = 600_000;

export interface GatheredPapers {
  readonly found: ReadonlyMap<string, PaperFound>;
  readonly papers: ReadonlyMap<string, ReadPaper>;
  /** Copies of those that are pictures, by the hash of their original. */
  readonly shown: ReadonlyMap<string, Uint8Array>;
  /** What they add to the packet, bytes. */
  readonly bytes: number;
}

/** Reads a packet's papers one after another, and says of each whether its pages or its picture can be shown. */
export async function gatherPapers(
  exhibits: readonly Exhibit[],
  source: PhotoSource,
  onDone?: (done: number, total: number) => void,
): Promise<GatheredPapers> {
  const found = new Map<string, PaperFound>();
  const papers = new Map<string, ReadPaper>();
  const shown = new Map<string, Uint8Array>();
  let bytes = 0;
  let pages = 0;
  const leftOut = (sha256: string, reason: PaperReason): void => {
    found.set(sha256, { state: { code: 'not-included', reason } });
  };
  for (const [index, exhibit] of exhibits.entries()) {
    const { sha256, mediaType } = exhibit;
    const isPdf = mediaType === 'application/pdf';
    if (exhibit.bytes > (isPdf ? MOST_PAPER_BYTES : MOST_PHOTO_BYTES)) leftOut(sha256, 'too-large');
    else if (isPdf) {
      const read = await source.get(sha256);
      const paper = read && (await readPaper(sha256, read));
      if (read === null || paper === null) found.set(sha256, { state: { code: 'awaited' } });
      else if (typeof paper === 'string') leftOut(sha256, paper);
      else if (bytes + read.byteLength > MOST_PAPERS_BYTES) leftOut(sha256, 'too-large');
      else if (pages + paper.pages.length > MOST_PAGES) leftOut(sha256, 'too-many');
      else if (!canBePlaced(paper)) leftOut(sha256, 'corrupt');
      else {
        papers.set(sha256, paper);
        bytes += read.byteLength;
        pages += paper.pages.length;
        found.set(sha256, { state: { code: 'pages', pages: paper.pages.length } });
      }
    } else {
      const { found: seen, jpeg } = await showing(sha256, source, PICTURE_BYTES);
      const { state } = seen;
      if (state.code === 'not-included')
        leftOut(sha256, state.reason === 'document' ? 'unsupported-type' : state.reason);
      else if (bytes + (jpeg?.byteLength ?? 0) > MOST_PAPERS_BYTES) leftOut(sha256, 'too-large');
      else {
        found.set(sha256, { state });
        if (jpeg) shown.set(sha256, jpeg);
        bytes += jpeg?.byteLength ?? 0;
      }
    }
    onDone?.(index + 1, exhibits.length);
  }
  return { found, papers, shown, bytes };
}
