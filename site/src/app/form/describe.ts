import { sayDiffuserConstant } from '../../../../shared/hydraulics/diffuser.ts';
import { formatNumber, formatQuantity } from '../../../../shared/units/format.ts';
import type { Wording } from '../core/words.ts';
import { entries, type Leaf, type List, type Node } from './nodes.ts';
import { valueWords, wordsOf } from './words.ts';

/** One thing that a recorded body says: a label with its text, or a heading with what stands under it. */
export type Said =
  | { readonly label: string; readonly text: string }
  | { readonly heading: string; readonly inside: readonly Said[] };

const at = (body: unknown, path: string): unknown =>
  path
    .split('.')
    .reduce<unknown>(
      (inner, name) =>
        typeof inner === 'object' && inner !== null ? (inner as Record<string, unknown>)[name] : undefined,
      body,
    );

const isSaid = (value: unknown): boolean =>
  value !== null && value !== undefined && value !== '' && !(Array.isArray(value) && value.length === 0);

/** What a thing that is known by an id is called, where somebody knows it. */
export type Names = (leaf: Leaf, id: string) => string | null;

function textOf(leaf: Leaf, value: unknown, words: Wording, names: Names): string {
  switch (leaf.type) {
    case 'quantity':
      return formatQuantity(value as number, leaf.unit, words);
    case 'number':
      if (leaf.percent) return `${formatNumber((value as number) * 100, words.locale, 4)}%`;
      return formatNumber(value as number, words.locale, 4);
    case 'coefficient':
      return formatNumber(value as number, words.locale, 4);
    case 'diffuser-constant':
      return sayDiffuserConstant(value as number, words);
    case 'money':
      return words.money(value as number);
    case 'instant':
      return words.when(value as string);
    case 'date':
      return words.day(value as string);
    case 'choice':
      return words.t(valueWords(leaf.list, value as string));
    case 'choices':
      return (value as string[]).map((choice) => words.t(valueWords(leaf.list, choice))).join(', ');
    case 'yes-no':
      return words.t(valueWords('seen', value === true ? 'yes' : 'no'));
    case 'people':
    case 'outages':
      return (value as string[]).join(', ');
    case 'position': {
      const { latitudeDeg, longitudeDeg, accuracyM } = value as {
        latitudeDeg: number;
        longitudeDeg: number;
        accuracyM: number | null;
      };
      const radius = accuracyM === null ? '' : ` (± ${formatQuantity(accuracyM, 'm', words)})`;
      return `${latitudeDeg}, ${longitudeDeg}${radius}`;
    }
    case 'text':
      return Array.isArray(value) ? (value as string[]).join(', ') : String(value);
    case 'person':
    case 'hydrant':
    case 'pick':
    case 'kept':
      return names(leaf, String(value)) ?? String(value);
  }
}

/** What heads a row: the step, proof or joint it is, or the list's own words with its number. */
function rowHeading(list: List, row: unknown, key: string, number: number, words: Wording, names: Names) {
  const step = at(row, 'step');
  if (typeof step === 'string') return words.t(`step.${step}`);
  const proof = at(row, 'proof');
  if (typeof proof === 'string') return words.t(`proof.${proof}`);
  const joint = at(row, 'joint');
  if (typeof joint === 'string') return joint;
  const lineId = list.as === 'allocation' ? at(row, 'lineId') : null;
  const line =
    typeof lineId === 'string' ? names({ type: 'pick', of: 'line', name: 'lineId' }, lineId) : null;
  return line ?? words.t(`${key}.item`, { number });
}

/** Everything that a body says, in the order and the words of its form. What was left open is not listed. */
export function describe(
  kind: string,
  nodes: readonly Node[],
  body: unknown,
  words: Wording,
  base = '',
  names: Names = () => null,
): Said[] {
  const seen = new Set<string>();
  return entries(nodes, 'always').flatMap((entry): Said[] => {
    const value = at(body, entry.name);
    if (entry.name.startsWith('_') || !isSaid(value) || seen.has(entry.name)) return [];
    seen.add(entry.name);
    const path = base === '' ? entry.name : `${base}.${entry.name}`;
    const key = wordsOf(kind, entry, path);
    if (entry.type === 'list') {
      return (value as unknown[]).map((row, index) => ({
        heading: rowHeading(entry, row, key, index + 1, words, names),
        inside: describe(kind, entry.item, row, words, path, names),
      }));
    }
    if (entry.type === 'kept') return [];
    return [{ label: words.t(key), text: textOf(entry, value, words, names) }];
  });
}
