import type { ImportChoices } from '../choices.ts';
import { hydrant as hydrantSchema, type Hydrant } from '../hydrant.ts';
import type { Crs } from '../place/crs.ts';
import type { Draft, SayOfDraft } from './draft.ts';
import { remark, type FindingCode, type Findings } from './finding.ts';
import { settleIds } from './settleIds.ts';
import { outliers } from './spread.ts';

/** What is said of a row's place, or of the row as a whole, has no cell to point at. */
const aboutTheRow: ReadonlySet<FindingCode> = new Set([
  'inventory-duplicate-row',
  'inventory-same-place',
  'inventory-duplicate-place',
  'inventory-duplicate-place-first',
  'inventory-breaks-schema',
]);

const rowOf = ({ hydrant, line, featureId }: Draft) => ({ row: hydrant.source.row, line, featureId });

/**
 * Settles what only all rows together show: places far from the rest, whole-row duplicates, ids. Answers the hydrants
 * with their final ids, each of them once.
 */
export function settle(
  drafts: readonly Draft[],
  crs: Crs,
  choices: ImportChoices,
  idColumn: string | null,
  /** What a row's number counts, for sentences that point at another row. */
  rowsAre: 'line' | 'feature',
  findings: Findings,
): Hydrant[] {
  const say: SayOfDraft = (draft, code, params) => {
    const id = draft.hydrant.hydrantId;
    const pointed = id !== '' && !aboutTheRow.has(code);
    findings.add(
      draft.index,
      rowOf(draft),
      remark(code, params && { ...params, kind: rowsAre }),
      'hydrantId',
      pointed ? idColumn : null,
      pointed ? id : null,
    );
  };
  const placed = settlePlaces(drafts, crs, choices, findings);
  const single = withoutDuplicateRows(placed, say);
  const { dropped, renamed } = settleIds(single, say);
  const kept = dropped.size === 0 ? single : single.filter((draft) => !dropped.has(draft));
  pointOutSamePlace(kept, renamed, say);
  const hydrants: Hydrant[] = [];
  for (const draft of kept) {
    const { hydrant } = draft;
    hydrant.hydrantId = renamed.get(draft) ?? hydrant.hydrantId;
    // The last gate: nothing enters that the schema would not take, whatever the steps before let through.
    const { error } = hydrantSchema.safeParse(hydrant);
    if (error === undefined) hydrants.push(hydrant);
    else
      say(draft, 'inventory-breaks-schema', {
        detail: error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`).join('; '),
      });
  }
  return hydrants;
}

function settlePlaces(
  drafts: readonly Draft[],
  crs: Crs,
  choices: ImportChoices,
  findings: Findings,
): readonly Draft[] {
  const found = outliers(drafts, crs);
  if (found.size === 0) return drafts;
  return drafts.filter((draft) => {
    const outlier = found.get(draft);
    if (!outlier) return true;
    const { hydrant } = draft;
    const { latitudeDeg, longitudeDeg } = hydrant;
    const say = (said: typeof outlier): void =>
      findings.add(draft.index, rowOf(draft), said, '', 'coordinates', `${longitudeDeg}, ${latitudeDeg}`);
    const swapped = outlier.code === 'inventory-swapped-axes';
    if (swapped && choices.accept.has('swapped-axes')) {
      say(remark('inventory-swapped-axes-taken', outlier.params));
      hydrant.latitudeDeg = longitudeDeg;
      hydrant.longitudeDeg = latitudeDeg;
      return true;
    }
    say(outlier);
    return !swapped;
  });
}

function withoutDuplicateRows(drafts: readonly Draft[], say: SayOfDraft): Draft[] {
  const firsts = new Map<number, Draft>();
  return drafts.filter((draft) => {
    const first = firsts.get(draft.hash);
    if (!first) {
      firsts.set(draft.hash, draft);
      return true;
    }
    const [one, other] = [first.hydrant, draft.hydrant];
    const same =
      one.hydrantId === other.hydrantId &&
      one.latitudeDeg === other.latitudeDeg &&
      one.longitudeDeg === other.longitudeDeg;
    if (same) say(draft, 'inventory-duplicate-row', { first: one.source.row });
    return !same;
  });
}

/** Different ids at one place: two hydrants on one spot, or one of them in the wrong place. */
function pointOutSamePlace(
  drafts: readonly Draft[],
  renamed: ReadonlyMap<Draft, string>,
  say: SayOfDraft,
): void {
  const idOf = (draft: Draft): string => renamed.get(draft) ?? draft.hydrant.hydrantId;
  const firsts = new Map<number, Draft>();
  const told = new Set<Draft>();
  for (const draft of drafts) {
    const { latitudeDeg, longitudeDeg } = draft.hydrant;
    // Five decimals of each, packed into one exact integer below 2^53.
    const key = Math.round((latitudeDeg + 90) * 1e5) * 4e7 + Math.round((longitudeDeg + 180) * 1e5);
    const first = firsts.get(key);
    if (!first) {
      firsts.set(key, draft);
      continue;
    }
    say(draft, 'inventory-same-place', { other: idOf(first) });
    if (!told.has(first)) say(first, 'inventory-same-place', { other: idOf(draft) });
    told.add(first);
  }
}
