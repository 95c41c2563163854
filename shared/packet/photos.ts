import type { Effective } from '../submissions/effective.ts';
import { declaredPhotos, exhibitId, type DeclaredExhibit } from './declared.ts';
import { declaredPapers } from './papers.ts';
import type { PacketContent } from './schema.ts';

export { declaredPhotos } from './declared.ts';

export type Photo = PacketContent['photos'][number];

/** What was found on reading the bytes of a photo, or that there are none yet. */
export interface PhotoFound {
  readonly state: Photo['state'];
  readonly cameraTime: string | null;
  readonly cameraPosition: Photo['cameraPosition'];
  readonly camera: Photo['camera'];
}

/** Those that the packet shows as photos: a paper among them (an invoice, a PDF) stands with the papers. */
export function shownPhotos(facts: readonly Effective[]): DeclaredExhibit[] {
  const papers = new Set(declaredPapers(facts).map(({ exhibit }) => exhibit.sha256));
  return declaredPhotos(facts).filter(({ exhibit }) => !papers.has(exhibit.sha256));
}

/** The photos as the packet lists them; what was not looked for is awaited. */
export function packetPhotos(
  facts: readonly Effective[],
  found: ReadonlyMap<string, PhotoFound>,
  arrived: ReadonlyMap<string, string> = new Map(),
): Photo[] {
  return shownPhotos(facts).map(({ exhibit, submissionId, recordedAt }, index) => {
    const { sha256, bytes, mediaType, view, caption, takenAt, fileWrittenAt, chosenAt } = exhibit;
    const seen = found.get(sha256);
    return {
      exhibitId: exhibitId('photo', index),
      sha256,
      bytes,
      mediaType,
      view,
      caption: caption === '' ? null : caption,
      takenAt,
      cameraTime: seen?.cameraTime ?? null,
      cameraPosition: seen?.cameraPosition ?? null,
      camera: seen?.camera ?? null,
      fileWrittenAt: fileWrittenAt ?? null,
      chosenAt: chosenAt ?? null,
      hashRecordedAt: recordedAt,
      bytesArrivedAt: arrived.get(sha256) ?? null,
      submissionId,
      state: seen?.state ?? { code: 'awaited' },
    };
  });
}
