import { keptClaim } from '../claims/kept.ts';
import { namedDocuments, type ListedDocument } from '../evidence/declared.ts';
import type { Hydrant } from '../inventory/hydrant.ts';
import type { Stream } from '../submissions/envelope.ts';
import { correctionKind } from '../submissions/kinds.ts';
import type { Recorded } from '../submissions/recorded.ts';
import { streamOfSubmission } from '../submissions/submission.ts';
import { mentionedStreams } from './mentions.ts';
import { usesOf, type StockUse } from '../stock/uses.ts';
import { project } from './project.ts';
import { foldUtility } from './utilityRecords.ts';

/** Partitions of what is kept for reading, and what a key and a value in each is. */
export const partitions = {
  /** Strike id it goes by → `StrikeState`. */
  strike: 'strike',
  /** Id of a strike that a link joined into another → `{ strikeId }` of the one it goes by. */
  joined: 'joined',
  /** Hydrant id → `HydrantStatus`. */
  hydrant: 'hydrant',
  /** Claim id → `ClaimState`. */
  claim: 'claim',
  /** `rate-book:<edition>`, `hydrant-model:<model>` or `inventory-loaded` → the body that stands. */
  utility: 'utility',
  /** Stream that is named, a line feed, stream that names it → `{}`: how a hydrant's strikes are found. */
  mention: 'mention',
  /** SHA-256 → `ListedDocument`: what a document is and who may read it. */
  exhibits: 'exhibits',
  /** Strike id → `StockUse[]`: what its own repairs took from stock. */
  stockUses: 'stock-uses',
} as const;
export type Partition = (typeof partitions)[keyof typeof partitions];

export interface Item {
  readonly partition: Partition;
  readonly key: string;
  readonly value: unknown;
}

/** No id holds a control character, so a line feed ends the one stream and begins the other. */
export const mentionPrefix = (mentioned: Stream): string => `${mentioned}\n`;
export const mentionKey = (mentioned: Stream, by: Stream): string => `${mentionPrefix(mentioned)}${by}`;
export const mentioningStream = (key: string): Stream => key.slice(key.indexOf('\n') + 1);

/**
 * Everything that is kept for reading, of these facts: all of them for a rebuild, or one closed neighbourhood, of which
 * the items are then the same.
 */
export function projectionItems(
  recorded: readonly Recorded[],
  hydrantType: (hydrantId: string) => Hydrant['type'],
): Item[] {
  const { strikes, hydrants, claims } = project(recorded, hydrantType);
  return [
    ...strikes.map((value) => ({ partition: partitions.strike, key: value.strikeId, value })),
    ...strikes.flatMap(({ strikeId, memberIds }) =>
      memberIds
        .filter((id) => id !== strikeId)
        .map((key) => ({ partition: partitions.joined, key, value: { strikeId } })),
    ),
    ...hydrants.map((value) => ({ partition: partitions.hydrant, key: value.hydrantId, value })),
    ...claims.map((claim) => ({ partition: partitions.claim, key: claim.claimId, value: keptClaim(claim) })),
    ...utilityItems(recorded),
    ...mentionItems(recorded),
    ...exhibitItems(recorded),
    ...stockUseItems(recorded),
  ];
}

/** Strikes with a repair have an entry; of those alone can anything ever have been taken from stock. */
export const hasRepairs = (recorded: readonly Recorded[]): boolean =>
  recorded.some(({ submission }) => submission.kind === 'repair');

/** Of each strike's own stream, so that it is the same whichever neighbourhood is read. */
function stockUseItems(recorded: readonly Recorded[]): Item[] {
  const own = recorded.filter(({ submission }) => submission.subject.type === 'strike');
  return [...Map.groupBy(own, ({ submission }) => streamOfSubmission(submission))].flatMap(
    ([stream, facts]): Item[] => {
      if (!hasRepairs(facts)) return [];
      const value: readonly StockUse[] = usesOf(facts);
      return [{ partition: partitions.stockUses, key: stream.slice('strike:'.length), value }];
    },
  );
}

export const inventoryKey = 'inventory-loaded';
const rateBookKey = (editionId: string): string => `rate-book:${editionId}`;
const modelKey = (modelId: string): string => `hydrant-model:${modelId}`;

export function utilityItems(recorded: readonly Recorded[]): Item[] {
  const { rateBooks, models, inventory } = foldUtility(recorded);
  const partition = partitions.utility;
  return [
    ...[...rateBooks].map(([id, value]) => ({ partition, key: rateBookKey(id), value })),
    ...[...models].map(([id, value]) => ({ partition, key: modelKey(id), value })),
    ...(inventory === null ? [] : [{ partition, key: inventoryKey, value: inventory }]),
  ];
}

/** Every key that utility facts have ever named, also those that a correction took back. */
export function utilityKeys(recorded: readonly Recorded[]): string[] {
  return recorded.flatMap(({ submission }) => {
    const body: Readonly<Record<string, unknown>> =
      submission.kind === correctionKind ? (submission.body.replacement ?? {}) : submission.body;
    const named = (field: string, key: (id: string) => string): string[] =>
      typeof body[field] === 'string' ? [key(body[field])] : [];
    return [
      ...named('editionId', rateBookKey),
      ...named('modelId', modelKey),
      ...named('manifestSha256', () => inventoryKey),
    ];
  });
}

export function mentionItems(recorded: readonly Recorded[]): Item[] {
  return [...Map.groupBy(recorded, ({ submission }) => streamOfSubmission(submission))].flatMap(
    ([stream, own]) =>
      mentionedStreams(own).map((mentioned) => ({
        partition: partitions.mention,
        key: mentionKey(mentioned, stream),
        value: {},
      })),
  );
}

/** Also of withdrawn facts and of trials: they declared what they declared, and it must have a way in and out. */
export function exhibitItems(recorded: readonly Recorded[]): Item[] {
  const documents = new Map<string, ListedDocument>();
  for (const { submission, recordedAt } of recorded)
    for (const document of namedDocuments(submission))
      documents.set(
        document.sha256,
        mergeDocuments(documents.get(document.sha256), { ...document, declaredAt: recordedAt }),
      );
  return [...documents].map(([key, value]) => ({ partition: partitions.exhibits, key, value }));
}

/**
 * One document named by two submissions: whoever may read the one that was recorded first. Naming a hash again shows
 * nobody what was not theirs to see, so a paper of the desk stays the desk's. The same whichever is projected first; of
 * two recorded in the same instant both must let somebody read, and the type is the first by name.
 */
export function mergeDocuments(a: ListedDocument | undefined, b: ListedDocument): ListedDocument {
  const one = { ...b, readers: [...b.readers].sort() };
  // One that was kept before this rule does not say when it was named: what is projected now does.
  if (a?.declaredAt === undefined || b.declaredAt === undefined) return one;
  const apart = Date.parse(a.declaredAt) - Date.parse(b.declaredAt);
  if (apart !== 0) return apart < 0 ? a : one;
  return {
    ...one,
    mediaType: a.mediaType < b.mediaType ? a.mediaType : b.mediaType,
    readers: one.readers.filter((role) => a.readers.includes(role)),
  };
}
