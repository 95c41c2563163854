import type { ImportChoices } from '../choices.ts';
import { hydrant as hydrantSchema, type Hydrant } from '../hydrant.ts';
import { greatCircleMetres } from '../../nearest/sphere.ts';
import type { Crs } from '../place/crs.ts';
import type { Draft } from './draft.ts';
import { Findings, remark, type FindingCode, type Params } from './finding.ts';
import { foldId, generatedId, isPlaceholderGroup, isPlaceholderWord, isUsableId, placeId, qualifiedId } from './ids.ts';
import { outliers } from './spread.ts';

/** Two records of one hydrant stand no farther apart than this; two hydrants do. */
const onePlaceMetres = 3;

/** What a group of rows that claim one id comes to. */
type Say = (draft: Draft, code: FindingCode, params?: Params) => void;

/**
 * Settles what only all rows together show: places far from the rest, whole-row duplicates, ids. Answers the hydrants
 * with their final ids, each of them once.
 */
export function settle(drafts: readonly Draft[], crs: Crs, choices: ImportChoices, idColumn: string | null, findings: Findings): Hydrant[] {
  const say: Say = (draft, code, params = {}) => findings.add(draft.index, draft.row, remark(code, params), 'hydrantId', idColumn, draft.sourceId);
  const placed = settlePlaces(drafts, crs, choices, findings);
  const single = withoutDuplicateRows(placed, say);
  const named = settleIds(single, say);
  pointOutSamePlace(named, say);
  const hydrants: Hydrant[] = [];
  for (const { draft, id } of named) {
    draft.hydrant.hydrantId = id;
    // The last gate: nothing enters that the schema would not take, whatever the steps before let through.
    const parsed = hydrantSchema.safeParse(draft.hydrant);
    if (parsed.success) hydrants.push(draft.hydrant);
    else say(draft, 'inventory-breaks-schema', { detail: parsed.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`).join('; ') });
  }
  return hydrants;
}

function settlePlaces(drafts: readonly Draft[], crs: Crs, choices: ImportChoices, findings: Findings): Draft[] {
  const found = outliers(drafts, crs);
  return drafts.filter((draft) => {
    const outlier = found.get(draft);
    if (!outlier) return true;
    const { latitudeDeg, longitudeDeg } = draft.hydrant;
    const value = `${longitudeDeg}, ${latitudeDeg}`;
    const swapped = outlier.code === 'inventory-swapped-axes';
    if (swapped && choices.accept.has('swapped-axes')) {
      findings.add(draft.index, draft.row, remark('inventory-swapped-axes-taken', outlier.params), '', 'coordinates', value);
      draft.hydrant.latitudeDeg = longitudeDeg;
      draft.hydrant.longitudeDeg = latitudeDeg;
      return true;
    }
    findings.add(draft.index, draft.row, outlier, '', 'coordinates', value);
    return !swapped;
  });
}

function withoutDuplicateRows(drafts: readonly Draft[], say: Say): Draft[] {
  const firsts = new Map<number, Draft>();
  return drafts.filter((draft) => {
    const first = firsts.get(draft.hash);
    if (!first) {
      firsts.set(draft.hash, draft);
      return true;
    }
    const same = first.sourceId === draft.sourceId && first.hydrant.latitudeDeg === draft.hydrant.latitudeDeg && first.hydrant.longitudeDeg === draft.hydrant.longitudeDeg;
    if (same) say(draft, 'inventory-duplicate-row', { first: first.row.row });
    return !same;
  });
}

interface Named {
  readonly draft: Draft;
  readonly id: string;
}

function settleIds(drafts: readonly Draft[], say: Say): Named[] {
  const groups = new Map<string, Draft[]>();
  const without: Draft[] = [];
  const wordless = mostIdsHaveNoSpace(drafts);
  for (const draft of drafts) {
    const id = draft.sourceId;
    if (id === null) {
      say(draft, draft.row.featureId === null ? 'inventory-id-from-place' : 'inventory-id-from-source');
      without.push(draft);
    } else if (!isUsableId(id)) {
      say(draft, 'inventory-id-not-usable', { given: generatedId(draft) });
      without.push(draft);
    } else if (isPlaceholderWord(id)) {
      say(draft, 'inventory-placeholder-id', { given: generatedId(draft), rows: 1 });
      without.push(draft);
    } else {
      if (wordless && /\s/.test(id)) say(draft, 'inventory-odd-id', { id });
      const key = foldId(id);
      const group = groups.get(key);
      if (group) group.push(draft);
      else groups.set(key, [draft]);
    }
  }
  const named: Named[] = [];
  for (const group of groups.values()) {
    const [only] = group;
    if (only && group.length === 1) {
      named.push({ draft: only, id: only.sourceId ?? '' });
    } else if (isPlaceholderGroup(group)) {
      for (const draft of group) say(draft, 'inventory-placeholder-id', { given: generatedId(draft), rows: group.length });
      without.push(...group);
    } else {
      named.push(...settleClash(group, say));
    }
  }
  return [...named, ...nameByPlaceOrSource(without, say)].sort((one, other) => one.draft.index - other.draft.index);
}

/** Rows with one id: at one place they are one hydrant, of which the first row is kept; at several, each is kept under an id of its own. */
function settleClash(group: readonly Draft[], say: Say): Named[] {
  const kept: Draft[] = [];
  for (const draft of group) {
    const twin = kept.find((each) => greatCircleMetres(each.hydrant, draft.hydrant) <= onePlaceMetres);
    if (twin) say(draft, 'inventory-duplicate-id-same-place', { first: twin.row.row });
    else kept.push(draft);
  }
  const [only] = kept;
  if (only && kept.length === 1) {
    say(only, 'inventory-duplicate-id-first', { rows: group.length });
    return [{ draft: only, id: only.sourceId ?? '' }];
  }
  return kept.map((draft) => {
    const id = qualifiedId(draft.sourceId ?? '', draft);
    say(draft, 'inventory-duplicate-id', { rows: group.length, given: id });
    return { draft, id };
  });
}

function nameByPlaceOrSource(drafts: readonly Draft[], say: Say): Named[] {
  const named = new Map<string, Draft>();
  const doubted = new Set<Draft>();
  for (const draft of drafts) {
    let id = generatedId(draft);
    // A feature id used twice at two places is no better than none.
    if (named.has(id) && id !== placeId(draft.hydrant)) id = placeId(draft.hydrant);
    const first = named.get(id);
    if (!first) {
      named.set(id, draft);
      continue;
    }
    say(draft, 'inventory-duplicate-place', { first: first.row.row });
    if (!doubted.has(first)) say(first, 'inventory-duplicate-place-first', { other: draft.row.row });
    doubted.add(first);
  }
  return [...named].map(([id, draft]) => ({ draft, id }));
}

/** True when nearly all ids of the file are single words, so that one with a space holds something else besides. */
function mostIdsHaveNoSpace(drafts: readonly Draft[]): boolean {
  let ids = 0;
  let spaced = 0;
  for (const { sourceId } of drafts) {
    if (sourceId === null) continue;
    ids += 1;
    if (/\s/.test(sourceId)) spaced += 1;
  }
  return ids >= 10 && spaced * 5 < ids;
}

/** Different ids at one place: two hydrants on one spot, or one of them in the wrong place. */
function pointOutSamePlace(named: readonly Named[], say: Say): void {
  const firsts = new Map<number, Named & { told: boolean }>();
  for (const each of named) {
    const { latitudeDeg, longitudeDeg } = each.draft.hydrant;
    // Five decimals of each, packed into one exact integer below 2^53.
    const key = Math.round((latitudeDeg + 90) * 1e5) * 4e7 + Math.round((longitudeDeg + 180) * 1e5);
    const first = firsts.get(key);
    if (!first) {
      firsts.set(key, { ...each, told: false });
      continue;
    }
    say(each.draft, 'inventory-same-place', { other: first.id });
    if (!first.told) say(first.draft, 'inventory-same-place', { other: each.id });
    first.told = true;
  }
}
