import { greatCircleMetres } from '../../nearest/sphere.ts';
import type { Draft, SayOfDraft as Say } from './draft.ts';
import {
  foldId,
  generatedId,
  isPlaceholderGroup,
  isPlaceholderWord,
  isUsableId,
  numberThenWords,
  placeId,
  qualifiedId,
} from './ids.ts';

/** Two records of one hydrant stand no farther apart than this; two hydrants do. */
const onePlaceMetres = 3;

export interface SettledIds {
  /** Rejected: another row already stands for the hydrant. */
  readonly dropped: ReadonlySet<Draft>;
  /** Ids other than the source's own. */
  readonly renamed: ReadonlyMap<Draft, string>;
}

/** Gives every hydrant an id of its own, the same at every import of the same rows in whatever order. */
export function settleIds(drafts: readonly Draft[], say: Say): SettledIds {
  const dropped = new Set<Draft>();
  const renamed = new Map<Draft, string>();
  // Nearly every id stands alone; only those that do not get a list.
  const groups = new Map<string, Draft | Draft[]>();
  const without: Draft[] = [];
  const wordless = mostIdsHaveNoSpace(drafts);
  for (const draft of drafts) {
    const id = draft.hydrant.hydrantId;
    if (!ownId(draft, say)) {
      without.push(draft);
      continue;
    }
    if ((wordless && id.includes(' ')) || numberThenWords.test(id)) say(draft, 'inventory-odd-id');
    const key = foldId(id);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, draft);
    else if (Array.isArray(group)) group.push(draft);
    else groups.set(key, [group, draft]);
  }
  for (const group of groups.values()) {
    if (!Array.isArray(group)) continue;
    if (isPlaceholderGroup(group)) {
      for (const draft of group)
        say(draft, 'inventory-placeholder-id', { given: generatedId(draft), rows: group.length });
      without.push(...group);
    } else {
      settleClash(group, say, dropped, renamed);
    }
  }
  nameTheRest(without, groups, say, dropped, renamed);
  return { dropped, renamed };
}

/** True when the source's id can stand; says why where it cannot. */
function ownId(draft: Draft, say: Say): boolean {
  const id = draft.hydrant.hydrantId;
  if (id === '')
    say(draft, draft.featureId === null ? 'inventory-id-from-place' : 'inventory-id-from-source');
  else if (!isUsableId(id)) say(draft, 'inventory-id-not-usable', { given: generatedId(draft) });
  else if (isPlaceholderWord(id))
    say(draft, 'inventory-placeholder-id', { given: generatedId(draft), rows: 1 });
  else return true;
  return false;
}

/** Rows with one id: at one place they are one hydrant, of which the first row is kept; at several, each is kept under an id of its own. */
function settleClash(
  group: readonly Draft[],
  say: Say,
  dropped: Set<Draft>,
  renamed: Map<Draft, string>,
): void {
  const kept: Draft[] = [];
  for (const draft of group) {
    const twin = kept.find((each) => greatCircleMetres(each.hydrant, draft.hydrant) <= onePlaceMetres);
    if (!twin) {
      kept.push(draft);
      continue;
    }
    say(draft, 'inventory-duplicate-id-same-place', { first: twin.hydrant.source.row });
    dropped.add(draft);
  }
  const [only] = kept;
  if (only && kept.length === 1) {
    say(only, 'inventory-duplicate-id-first', { rows: group.length });
    return;
  }
  for (const draft of kept) {
    const given = qualifiedId(draft.hydrant.hydrantId, draft);
    say(draft, 'inventory-duplicate-id', { rows: group.length, given });
    renamed.set(draft, given);
  }
}

/** Rows without an id take the source's name for the record, or their place where that is taken. */
function nameTheRest(
  without: readonly Draft[],
  taken: ReadonlyMap<string, unknown>,
  say: Say,
  dropped: Set<Draft>,
  renamed: Map<Draft, string>,
): void {
  const named = new Map<string, Draft>();
  const told = new Set<Draft>();
  for (const draft of without) {
    let id = generatedId(draft);
    if (named.has(id) || taken.has(foldId(id))) id = placeId(draft.hydrant);
    const first = named.get(id);
    if (!first) {
      named.set(id, draft);
      renamed.set(draft, id);
      continue;
    }
    say(draft, 'inventory-duplicate-place', { first: first.hydrant.source.row });
    dropped.add(draft);
    if (!told.has(first)) say(first, 'inventory-duplicate-place-first', { other: draft.hydrant.source.row });
    told.add(first);
  }
}

/** True when most ids of the file are single words, so that one with a space holds something else besides. */
function mostIdsHaveNoSpace(drafts: readonly Draft[]): boolean {
  let ids = 0;
  let spaced = 0;
  for (const { hydrant } of drafts) {
    if (hydrant.hydrantId === '') continue;
    ids += 1;
    if (hydrant.hydrantId.includes(' ')) spaced += 1;
  }
  return ids >= 10 && spaced * 2 < ids;
}
