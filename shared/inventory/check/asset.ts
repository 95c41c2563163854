import type { Hydrant } from '../hydrant.ts';
import { compact, folded, isBlank } from '../values/blank.ts';
import { readRemark, readStatus, readType, readYesNo } from '../values/words.ts';
import { looksLikeDate } from '../values/date.ts';
import type { Cell } from './cells.ts';
import { remark, type Remark } from './finding.ts';

export type Say = (found: Remark, cell: Cell) => void;

/** Tags by which OpenStreetMap keeps what is no longer, or not yet, there: `disused:emergency=fire_hydrant`. */
const lifecycle: Readonly<Record<string, 'deleted' | 'abandoned' | 'planned'>> = {
  disused: 'abandoned',
  abandoned: 'abandoned',
  removed: 'deleted',
  demolished: 'deleted',
  razed: 'deleted',
  was: 'deleted',
  proposed: 'planned',
  planned: 'planned',
  construction: 'planned',
};

/** The lifecycle word of a row's `…:emergency` tag, if it has one. */
export function lifecycleOf(
  cells: Iterable<Cell>,
): { readonly state: 'deleted' | 'abandoned' | 'planned'; readonly cell: Cell } | null {
  for (const cell of cells) {
    const state = lifecycle[/^(\w+):emergency$/.exec(cell.column)?.[1] ?? ''];
    if (state && cell.text === 'fire_hydrant') return { state, cell };
  }
  return null;
}

/** Why the asset is not a hydrant in the ground, by its kind, its mark or its type; null when it may be one. */
export function refusalOf(
  kinds: readonly Cell[],
  marks: readonly Cell[],
  types: readonly Cell[],
): { found: Remark; cell: Cell } | null {
  for (const cell of kinds) {
    const other = cell.column === 'emergency' && !isBlank(cell.text) && cell.text !== 'fire_hydrant';
    if (other || readType(cell.text) === 'not-a-hydrant')
      return { found: remark('inventory-not-a-hydrant', { value: cell.text }), cell };
    if (readStatus(cell.text) === 'deleted')
      return { found: remark('inventory-deleted-asset', { value: cell.text }), cell };
  }
  for (const cell of marks) {
    if (
      !isBlank(cell.text) &&
      (readYesNo(cell.text) === true || looksLikeDate(cell.text)) &&
      !/abandon|disused/.test(compact(cell.column))
    ) {
      return { found: remark('inventory-deleted-asset', { value: `${cell.column} = ${cell.text}` }), cell };
    }
  }
  const type = types.find(({ text }) => readType(text) === 'not-a-hydrant');
  return type ? { found: remark('inventory-not-a-hydrant', { value: type.text }), cell: type } : null;
}

/** Dry barrel, wet barrel and so on, from the first column that says so; a word for both barrels says neither. */
export function typeOf(types: readonly Cell[], say: Say): Hydrant['type'] {
  let vague: Cell | null = null;
  for (const cell of types) {
    if (isBlank(cell.text)) continue;
    const word = readType(cell.text);
    if (word === null) say(remark('inventory-unknown-word'), cell);
    else if (word === 'above-ground') vague ??= cell;
    else if (word !== 'not-a-hydrant') return word;
  }
  if (vague) say(remark('inventory-type-not-specific'), vague);
  return 'unknown';
}

/** The source's word on whether the asset is in use, or `deleted`, which ends the matter. */
export function serviceOf(
  states: readonly Cell[],
  marks: readonly Cell[],
  lifecycleTag: ReturnType<typeof lifecycleOf>,
  say: Say,
): Hydrant['service'] | { readonly deleted: Cell } {
  if (lifecycleTag) {
    if (lifecycleTag.state === 'deleted') return { deleted: lifecycleTag.cell };
    say(
      remark(lifecycleTag.state === 'planned' ? 'inventory-planned' : 'inventory-abandoned'),
      lifecycleTag.cell,
    );
    return lifecycleTag.state;
  }
  for (const cell of marks) {
    if (!isBlank(cell.text) && (readYesNo(cell.text) === true || looksLikeDate(cell.text))) {
      say(remark('inventory-abandoned'), cell);
      return 'abandoned';
    }
  }
  for (const cell of states) {
    if (isBlank(cell.text)) continue;
    switch (readStatus(cell.text)) {
      case 'deleted':
        return { deleted: cell };
      case 'abandoned':
        say(remark('inventory-abandoned'), cell);
        return 'abandoned';
      case 'planned':
        say(remark('inventory-planned'), cell);
        return 'planned';
      case 'out':
        say(remark('inventory-says-out-of-service'), cell);
        return 'inactive';
      case 'active':
        return 'active';
      case null:
        say(remark('inventory-unknown-word'), cell);
    }
  }
  return 'unknown';
}

const remarkCodes = {
  'blow-off': 'inventory-perhaps-blow-off',
  'not-for-fire': 'inventory-not-for-fire',
  gone: 'inventory-perhaps-gone',
  'place-uncertain': 'inventory-place-uncertain',
} as const;

/** A hydrant on a pond or a tank is a drafting point: no pressure, and nothing for a flow test to rate. */
export function notFromMain(sources: readonly Cell[], say: Say): void {
  const cell = sources.find(({ text }) => !isBlank(text));
  if (cell && !/\b(mains?|network|system|potable|reclaimed|red)\b/.test(folded(cell.text)))
    say(remark('inventory-not-from-main'), cell);
}

/** Warnings in free text: a crew that relies on a blow-off finds half the water it expects. Each said once a row. */
export function warningsIn(cells: readonly Cell[], say: Say): void {
  const said = new Set<string>();
  for (const cell of cells) {
    const warning = cell.text.length < 4 ? null : readRemark(cell.text);
    if (!warning || said.has(warning)) continue;
    said.add(warning);
    say(remark(remarkCodes[warning]), cell);
  }
}
