import type { StreetLine } from '../layers/lines.ts';
import { PER_DEGREE, type Streets } from './streets.ts';

/** How the lines of a file hang together. */
export interface Built {
  readonly streets: Streets;
  /** Pieces of network without a way from one to another, the largest first, by how many streets each has. */
  readonly parts: readonly number[];
}

/** Numbers a position of ten-millionths of a degree; one number for one place. */
class Places {
  readonly #byColumn = new Map<number, Map<number, number>>();
  count = 0;

  numberOf(x: number, y: number): number {
    const column = this.#byColumn.get(x) ?? new Map<number, number>();
    if (column.size === 0) this.#byColumn.set(x, column);
    const number = column.get(y) ?? this.count++;
    column.set(y, number);
    return number;
  }
}

/**
 * Makes the network of the lines: they join where they have a position in common to a ten-millionth of a degree, at
 * their ends or between; what crosses without one does not join. Directions (one-way) are passed over, because hose is
 * laid either way. Two positions that round to one are one.
 */
export function buildStreets(lines: readonly StreetLine[], snapFt: number): Built {
  const places = new Places();
  const shapes: { readonly line: Int32Array; readonly at: Uint32Array }[] = [];
  /** Pieces of lines that meet at each place: where it is two, the line goes on, or two end and are cut anyway. */
  const meets: number[] = [];
  for (const { places: given } of lines) {
    const line: number[] = [];
    const at: number[] = [];
    for (let index = 0; index < given.length; index += 2) {
      const x = Math.round((given[index] ?? 0) * PER_DEGREE);
      const y = Math.round((given[index + 1] ?? 0) * PER_DEGREE);
      const place = places.numberOf(x, y);
      if (at.at(-1) === place) continue;
      line.push(x, y);
      at.push(place);
    }
    if (at.length < 2) continue;
    for (const [index, place] of at.entries()) {
      const weight = index === 0 || index === at.length - 1 ? 1 : 2;
      meets[place] = (meets[place] ?? 0) + weight;
    }
    shapes.push({ line: Int32Array.from(line), at: Uint32Array.from(at) });
  }
  const isCut = (place: number): boolean => meets[place] !== 2;

  const nodeOf = new Map<number, number>();
  const node = (place: number): number => {
    let number = nodeOf.get(place);
    if (number === undefined) nodeOf.set(place, (number = nodeOf.size));
    return number;
  };
  const flat: number[] = [];
  const shapeFrom: number[] = [];
  const [fromNode, toNode]: [number[], number[]] = [[], []];
  for (const { line, at } of shapes) {
    let start = 0;
    for (let index = 1; index < at.length; index += 1) {
      if (index < at.length - 1 && !isCut(at[index] ?? 0)) continue;
      shapeFrom.push(flat.length / 2);
      for (let each = start * 2; each <= index * 2 + 1; each += 1) flat.push(line[each] ?? 0);
      fromNode.push(node(at[start] ?? 0));
      toNode.push(node(at[index] ?? 0));
      start = index;
    }
  }
  shapeFrom.push(flat.length / 2);
  const streets: Streets = {
    shapes: Int32Array.from(flat),
    shapeFrom: Uint32Array.from(shapeFrom),
    fromNode: Uint32Array.from(fromNode),
    toNode: Uint32Array.from(toNode),
    nodes: nodeOf.size,
    snapFt,
  };
  return { streets, parts: partsOf(streets) };
}

/** Sizes of the connected parts, in streets, by union-find with path halving. */
function partsOf({ fromNode, toNode, nodes }: Streets): readonly number[] {
  const parent = Uint32Array.from({ length: nodes }, (_, node) => node);
  const rootOf = (node: number): number => {
    let at = node;
    for (let up = parent[at] ?? at; up !== at; up = parent[at] ?? at) {
      parent[at] = parent[up] ?? up;
      at = parent[at] ?? at;
    }
    return at;
  };
  for (const [street, from] of fromNode.entries()) parent[rootOf(from)] = rootOf(toNode[street] ?? from);
  const sizes = new Map<number, number>();
  for (const from of fromNode) sizes.set(rootOf(from), (sizes.get(rootOf(from)) ?? 0) + 1);
  return [...sizes.values()].toSorted((a, b) => b - a);
}
