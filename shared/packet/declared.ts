import type { Effective } from '../submissions/effective.ts';
import type { Exhibit } from '../submissions/fields.ts';

export interface DeclaredExhibit {
  readonly exhibit: Exhibit;
  readonly submissionId: string;
  readonly recordedAt: string;
}

const photosOf = ({ fact }: Effective): readonly Exhibit[] => ('photos' in fact.body ? fact.body.photos : []);

/** Each hash once, as it was first recorded: from then on its bytes could not change. */
export function firstRecorded<T extends DeclaredExhibit>(items: readonly T[]): T[] {
  const byHash = new Map<string, T>();
  for (const item of items) {
    const known = byHash.get(item.exhibit.sha256);
    if (!known || known.recordedAt > item.recordedAt) byHash.set(item.exhibit.sha256, item);
  }
  return [...byHash.values()];
}

/** Every exhibit that the facts declare among their photos, each hash once, in the order in which they were taken. */
export function declaredPhotos(facts: readonly Effective[]): DeclaredExhibit[] {
  const declared = facts.flatMap((item) =>
    photosOf(item).map((exhibit) => ({
      exhibit,
      submissionId: item.fact.submissionId,
      recordedAt: item.recordedAt,
    })),
  );
  const at = ({ exhibit, recordedAt }: DeclaredExhibit): number => Date.parse(exhibit.takenAt ?? recordedAt);
  return firstRecorded(declared).sort(
    (a, b) => at(a) - at(b) || (a.exhibit.sha256 < b.exhibit.sha256 ? -1 : 1),
  );
}

/** `photo-01`: as the packet, its archive and its manifest call it. */
export const exhibitId = (kind: 'photo' | 'paper', index: number): string =>
  `${kind}-${String(index + 1).padStart(2, '0')}`;
