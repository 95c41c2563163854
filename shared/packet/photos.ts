import type { Effective } from '../submissions/effective.ts';
import type { Exhibit } from '../submissions/fields.ts';
import type { PacketContent } from './schema.ts';

export type Photo = PacketContent['photos'][number];

/** What was found on reading the bytes of a photo, or that there are none yet. */
export interface PhotoFound {
  readonly state: Photo['state'];
  readonly cameraTime: string | null;
}

const photosOf = ({ fact }: Effective): readonly Exhibit[] => ('photos' in fact.body ? fact.body.photos : []);

/** Every exhibit that the facts declare, each hash once, in the order in which they were taken. */
export function declaredPhotos(
  facts: readonly Effective[],
): { readonly exhibit: Exhibit; readonly submissionId: string; readonly recordedAt: string }[] {
  const byHash = new Map<string, { exhibit: Exhibit; submissionId: string; recordedAt: string }>();
  for (const item of facts)
    for (const exhibit of photosOf(item)) {
      const known = byHash.get(exhibit.sha256);
      // The hash was fixed when it was first recorded, whichever submission comes first in reading order.
      if (known && known.recordedAt <= item.recordedAt) continue;
      byHash.set(exhibit.sha256, {
        exhibit,
        submissionId: item.fact.submissionId,
        recordedAt: item.recordedAt,
      });
    }
  const at = (exhibit: Exhibit, recordedAt: string): number => Date.parse(exhibit.takenAt ?? recordedAt);
  return [...byHash.values()].sort(
    (a, b) =>
      at(a.exhibit, a.recordedAt) - at(b.exhibit, b.recordedAt) ||
      (a.exhibit.sha256 < b.exhibit.sha256 ? -1 : 1),
  );
}

/** The photos as the packet lists them; what was not looked for is awaited. */
export function packetPhotos(facts: readonly Effective[], found: ReadonlyMap<string, PhotoFound>): Photo[] {
  return declaredPhotos(facts).map(({ exhibit, submissionId, recordedAt }) => {
    const { sha256, bytes, mediaType, view, caption, takenAt } = exhibit;
    const seen = found.get(sha256);
    return {
      sha256,
      bytes,
      mediaType,
      view,
      caption: caption === '' ? null : caption,
      takenAt,
      cameraTime: seen?.cameraTime ?? null,
      hashRecordedAt: recordedAt,
      submissionId,
      state: seen?.state ?? { code: 'awaited' },
    };
  });
}
