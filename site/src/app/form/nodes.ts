import type { System, UnitId } from '../../../../shared/units/units.ts';

/**
 * A form is a list of nodes: what is asked, in the order it is asked. The same list draws the form, turns what was
 * typed into the submission's body, and turns a recorded body back into what would have been typed (a correction).
 * Names are paths in the body (`found.flow`); a name that begins with `_` steers the screen and is not sent.
 */
export type Node = Leaf | List | Section | When;

/** Fields under one heading. `folded` sections open on demand, and by themselves when a problem is inside. */
export interface Section {
  readonly type: 'section';
  /** Words: `section.<id>`, and `section.<id>.help` where there is more to say. */
  readonly id: string;
  readonly folded?: boolean;
  /** Drawn by the list that it belongs to, at its own place inside it. */
  readonly within?: boolean;
  readonly nodes: readonly Node[];
}

/**
 * Nodes that are asked only while an earlier answer calls for them. Not asked, they are sent as blank; or, where the
 * answer chooses between two shapes of the body, not at all (`absent`).
 */
export interface When {
  readonly type: 'when';
  readonly test: (values: Values) => boolean;
  readonly nodes: readonly Node[];
  readonly absent?: boolean;
}

/** A repeating group, such as the members of a crew. */
export interface List {
  readonly type: 'list';
  readonly name: string;
  readonly item: readonly Node[];
  /** Words other than `field.<kind>.<path>`; `.item` heads a row, `.add` is the button. */
  readonly words?: string;
  /** How it is drawn; `rows` is the plain way. */
  readonly as?:
    'rows' | 'running' | 'folded' | 'steps' | 'proofs' | 'valves' | 'photos' | 'joints' | 'allocation';
  /** What a folded row is known by while it is shut. */
  readonly heading?: (row: Values) => string;
  /** Left out of the body while it has no row: bodies of before this list have none. */
  readonly optional?: boolean;
  /** What a new row starts with. */
  readonly blank?: Values;
  /** Rows that are left out of the body, because nothing was said in them. */
  readonly skip?: (values: Values) => boolean;
  readonly atMost: number;
}

interface Named {
  readonly name: string;
  /** Words other than `field.<kind>.<path>`; a field that several forms share has one sentence. */
  readonly words?: string;
  /** The schema asks for it; the label says so. */
  readonly required?: boolean;
  /** Left out of the body while blank: bodies of before this field have none. */
  readonly optional?: boolean;
}

export type Leaf =
  | (Named & {
      readonly type: 'text';
      readonly lines?: number;
      readonly keypad?: 'tel' | 'code';
      /** Several codes with commas between them; kept as a list. */
      readonly many?: boolean;
      /** The id of a list of suggestions that the form draws. */
      readonly suggestions?: string;
      /** Offered from the rate book of today; anything else may be typed. `titleTo` is filled in beside it. */
      readonly codes?: { readonly of: 'labor' | 'machines' | 'stock'; readonly titleTo?: string };
    })
  | (Named & {
      readonly type: 'number';
      readonly whole?: boolean;
      /** Typed in percent, kept as a share: 2 is kept as 0.02. */
      readonly percent?: boolean;
    })
  /** `typedIn`: the unit that people give it in, where that is not the one in which it is kept. */
  | (Named & { readonly type: 'quantity'; readonly unit: UnitId; readonly typedIn?: UnitId })
  /** An outlet's coefficient; the shape by which it was chosen is kept beside it. */
  | (Named & { readonly type: 'coefficient'; readonly shapeTo: string })
  /** A diffuser's K, kept as gpm for the root of a psi. */
  | (Named & { readonly type: 'diffuser-constant' })
  /** Blank is not said; with `blankIsNothing` it is no money. */
  | (Named & { readonly type: 'money'; readonly blankIsNothing?: boolean })
  /** `ahead`: a time to come, offered from now on; "now" would say nothing. */
  | (Named & { readonly type: 'instant'; readonly ahead?: boolean })
  | (Named & { readonly type: 'date' })
  /** `compact` draws one line that opens, where many rows stand below each other. */
  | (Named & Choices & { readonly type: 'choice'; readonly whenBlank?: string; readonly compact?: boolean })
  | (Named & Choices & { readonly type: 'choices' })
  | (Named & { readonly type: 'yes-no' })
  | (Named & { readonly type: 'person'; readonly prefilled?: boolean })
  | (Named & { readonly type: 'people' })
  | (Named & { readonly type: 'hydrant' })
  | (Named & { readonly type: 'position' })
  | (Named & { readonly type: 'outages' })
  /**
   * One of what is already recorded: another strike, a party of this strike, an outage of this hydrant, an event of this
   * claim (of some kinds), a line of its statement, a date that it runs towards.
   */
  | (Named & {
      readonly type: 'pick';
      readonly of: 'strike' | 'party' | 'outage' | 'event' | 'line' | 'deadline';
      readonly kinds?: readonly string[];
      /** What follows from the pick: the amount of a line where none is typed yet, the day of a date. */
      readonly fills?: string;
    })
  /** Kept as it is and not drawn by itself (a photo's hash). */
  | (Named & { readonly type: 'kept' });

interface Choices {
  /** Words of a choice: `value.<list>.<choice>`. */
  readonly list: string;
  readonly choices: readonly string[];
}

/** A typed quantity keeps the unit it was typed in, so that switching units on the way changes nothing. */
export interface TypedQuantity {
  readonly text: string;
  readonly unit: UnitId;
}
/** A diffuser's K as typed, with the system of its unit. */
export interface TypedConstant {
  readonly text: string;
  readonly system: System;
}
export interface TypedPosition {
  readonly latitude: string;
  readonly longitude: string;
  readonly accuracyM: number | null;
}

export type Value =
  | string
  | readonly string[]
  | TypedQuantity
  | TypedConstant
  | TypedPosition
  | readonly Values[]
  | number
  | null;

/** What was typed, by name. Kept as typed: nothing is rounded, trimmed or thrown away before it is sent. */
export interface Values {
  readonly [name: string]: Value | undefined;
}

/** Every leaf and list at one level, conditions looked through (`always`) or applied to what was answered. */
export function entries(nodes: readonly Node[], values: Values | 'always'): (Leaf | List)[] {
  return nodes.flatMap((node) => {
    if (node.type === 'section') return entries(node.nodes, values);
    if (node.type === 'when')
      return values === 'always' || node.test(values) ? entries(node.nodes, values) : [];
    return [node];
  });
}

/** What is not asked for now and still has a place in the body. */
export function unasked(nodes: readonly Node[], values: Values): (Leaf | List)[] {
  return nodes.flatMap((node) => {
    if (node.type === 'section') return unasked(node.nodes, values);
    if (node.type !== 'when') return [];
    if (node.test(values)) return unasked(node.nodes, values);
    return node.absent ? [] : entries(node.nodes, 'always');
  });
}

export const isTypedQuantity = (value: Value | undefined): value is TypedQuantity =>
  typeof value === 'object' && value !== null && 'unit' in value;
export const isTypedConstant = (value: Value | undefined): value is TypedConstant =>
  typeof value === 'object' && value !== null && 'system' in value;
export const isTypedPosition = (value: Value | undefined): value is TypedPosition =>
  typeof value === 'object' && value !== null && 'latitude' in value;

/** The rows of a list; none where nothing was typed. */
export const rowsOf = (value: Value | undefined): readonly Values[] =>
  Array.isArray(value)
    ? (value as readonly (Values | string)[]).filter((row) => typeof row === 'object')
    : [];
export const stringsOf = (value: Value | undefined): readonly string[] =>
  Array.isArray(value)
    ? (value as readonly (Values | string)[]).filter((row) => typeof row === 'string')
    : [];
export const textOf = (value: Value | undefined): string => (typeof value === 'string' ? value : '');
