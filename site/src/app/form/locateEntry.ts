import { entries, rowsOf, type Leaf, type List, type Node, type Values } from './nodes.ts';

/** The field that a problem's path points at, and the rows on the way to it. */
export interface FoundEntry {
  readonly entry: Leaf | List;
  /** Path of the entry itself; the problem may lie deeper (a position's latitude). */
  readonly path: string;
  readonly rows: readonly { readonly list: List; readonly path: string; readonly number: number }[];
}

const under = (path: string, name: string): boolean => path === name || path.startsWith(`${name}.`);

export function locateEntry(
  nodes: readonly Node[],
  values: Values,
  path: string,
  base = '',
): FoundEntry | null {
  const here = entries(nodes, values)
    .filter(({ name }) => under(path, name))
    .sort((a, b) => b.name.length - a.name.length)[0];
  if (!here) return null;
  const at = base === '' ? here.name : `${base}.${here.name}`;
  const rest = path.slice(here.name.length + 1);
  if (here.type !== 'list' || rest === '') return { entry: here, path: at, rows: [] };
  const [number = '', ...inner] = rest.split('.');
  const row = { list: here, path: `${at}.${number}`, number: Number(number) + 1 };
  const values_ = rowsOf(values[here.name])[Number(number)] ?? {};
  const deeper = inner.length === 0 ? null : locateEntry(here.item, values_, inner.join('.'), row.path);
  return deeper ? { ...deeper, rows: [row, ...deeper.rows] } : { entry: here, path: row.path, rows: [row] };
}
