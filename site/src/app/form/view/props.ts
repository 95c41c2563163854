import type { Leaf, List, Node, Value, Values } from '../nodes.ts';

/** What fields, lists and levels are given. */

export interface LevelProps {
  readonly nodes: readonly Node[];
  readonly values: Values;
  /** Path of this level, '' at the top. */
  readonly base: string;
  readonly change: (next: Values) => void;
}

export interface LeafProps<L extends Leaf = Leaf> {
  readonly leaf: L;
  readonly path: string;
  readonly value: Value | undefined;
  readonly set: (value: Value) => void;
  /** Sets several values of the same level at once. */
  readonly change: (more: Values) => void;
  readonly level: Values;
}
/** The props of one type of field. */
export type PropsOf<T extends Leaf['type']> = LeafProps<Extract<Leaf, { type: T }>>;

export interface ListProps {
  readonly list: List;
  readonly path: string;
  readonly value: Value | undefined;
  readonly set: (rows: readonly Values[]) => void;
  /** What else is typed beside the list. */
  readonly level: Values;
  /** Sets values beside the list. */
  readonly changeLevel: (more: Values) => void;
}

export interface ExtraProps {
  readonly values: Values;
  readonly change: (next: Values) => void;
}
