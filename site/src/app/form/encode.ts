import { convertDiffuserConstant } from '../../../../shared/hydraulics/diffuser.ts';
import { problem, type Problem } from '../../../../shared/problems/problem.ts';
import { convert } from '../../../../shared/units/convert.ts';
import { readLocalTime } from './localTime.ts';
import {
  entries,
  isTypedConstant,
  isTypedPosition,
  isTypedQuantity,
  rowsOf,
  stringsOf,
  textOf,
  unasked,
  type Leaf,
  type List,
  type Node,
  type Value,
  type Values,
} from './nodes.ts';
import { readCents, readNumber } from './number.ts';

export interface EncodeOptions {
  readonly zone: string;
  /** Groups that are null unless something was said in them (`dispatch`, `found`). */
  readonly nullable: readonly string[];
}

export interface Encoded {
  readonly body: Record<string, unknown>;
  /** What could not be read as what it should be. The schema finds the rest. */
  readonly problems: readonly Problem[];
  /** For each list, the row that stands at each place of the body; rows in which nothing was said are left out. */
  readonly rows: ReadonlyMap<string, readonly number[]>;
}

type Read = { readonly value: unknown } | { readonly problems: readonly Problem[] };

/** A leaf in which nothing was said. What the screen filled in by itself does not count as said. */
export function isBlank(leaf: Leaf, value: Value | undefined): boolean {
  if (leaf.type === 'person' && leaf.prefilled) return true;
  if (value === undefined || value === null) return true;
  if (typeof value === 'string') return value.trim() === '';
  if (isTypedQuantity(value) || isTypedConstant(value)) return value.text.trim() === '';
  if (isTypedPosition(value)) return value.latitude.trim() === '' && value.longitude.trim() === '';
  return Array.isArray(value) ? value.length === 0 : false;
}

/** What a blank leaf is in the body: absent where the schema needs it (so that it is asked for), else null. */
const blankValue = (leaf: Leaf): unknown => {
  if (leaf.optional) return undefined;
  if (leaf.type === 'choice' && leaf.whenBlank !== undefined) return leaf.whenBlank;
  if (leaf.type === 'money' && leaf.blankIsNothing) return 0;
  if (leaf.type === 'choices' || leaf.type === 'people' || leaf.type === 'outages') return [];
  if (leaf.type === 'text' && leaf.many) return [];
  return leaf.required ? undefined : null;
};

/** What stands for an entry that is not asked for now. */
const unaskedValue = (entry: Leaf | List): unknown => {
  if (entry.type === 'list') return entry.optional ? undefined : [];
  return blankValue({ ...entry, required: false });
};

function readNumberLeaf(text: string, path: string, { whole = false, percent = false } = {}): Read {
  const value = readNumber(text);
  if (value === null) return { problems: [problem('not-a-number', path)] };
  if (percent) return { value: value / 100 };
  return whole && !Number.isInteger(value) ? { problems: [problem('not-a-whole-number', path)] } : { value };
}

function readPosition(value: Value | undefined, path: string): Read {
  if (!isTypedPosition(value)) return { value: null };
  const latitudeDeg = readNumber(value.latitude.replace('−', '-'));
  const longitudeDeg = readNumber(value.longitude.replace('−', '-'));
  const problems = [
    ...(latitudeDeg === null ? [problem('not-a-number', `${path}.latitudeDeg`)] : []),
    ...(longitudeDeg === null ? [problem('not-a-number', `${path}.longitudeDeg`)] : []),
  ];
  return problems.length > 0
    ? { problems }
    : { value: { latitudeDeg, longitudeDeg, accuracyM: value.accuracyM } };
}

function readLeaf(leaf: Leaf, value: Value | undefined, path: string, zone: string): Read {
  if (leaf.type === 'person') return { value: textOf(value).trim() || blankValue(leaf) };
  if (isBlank(leaf, value))
    return { value: leaf.type === 'kept' && !leaf.optional ? (value ?? null) : blankValue(leaf) };
  switch (leaf.type) {
    case 'number':
      return readNumberLeaf(textOf(value), path, leaf);
    case 'coefficient':
      return readNumberLeaf(textOf(value), path);
    case 'quantity': {
      const typed = isTypedQuantity(value) ? value : { text: textOf(value), unit: leaf.unit };
      const amount = readNumber(typed.text);
      return amount === null
        ? { problems: [problem('not-a-number', path)] }
        : { value: convert(amount, typed.unit, leaf.unit) };
    }
    case 'diffuser-constant': {
      const typed = isTypedConstant(value) ? value : { text: textOf(value), system: 'us' as const };
      const amount = readNumber(typed.text);
      if (amount === null) return { problems: [problem('not-a-number', path)] };
      return { value: convertDiffuserConstant(amount, typed.system, 'us') };
    }
    case 'money': {
      const cents = readCents(textOf(value));
      return cents === null ? { problems: [problem('not-an-amount', path)] } : { value: cents };
    }
    case 'instant': {
      const read = readLocalTime(textOf(value), zone);
      return read.ok ? { value: read.instant } : { problems: [problem(read.code, path)] };
    }
    case 'yes-no':
      return { value: value === 'yes' };
    case 'position':
      return readPosition(value, path);
    case 'people':
      return {
        value: stringsOf(value)
          .map((id) => id.trim())
          .filter((id) => id !== ''),
      };
    case 'choices':
    case 'outages':
      return { value: [...stringsOf(value)] };
    case 'text':
      return { value: leaf.many ? splitCodes(textOf(value)) : value };
    case 'date':
    case 'choice':
    case 'hydrant':
    case 'pick':
    case 'kept':
      return { value };
  }
}

const splitCodes = (text: string): string[] =>
  text
    .split(',')
    .map((code) => code.trim())
    .filter((code) => code !== '');

const join = (base: string, name: string): string => (base === '' ? name : `${base}.${name}`);

function put(target: Record<string, unknown>, path: string, value: unknown): void {
  if (value === undefined) return;
  const names = path.split('.');
  const last = names.pop() ?? path;
  let at = target;
  for (const name of names) {
    at[name] ??= {};
    at = at[name] as Record<string, unknown>;
  }
  at[last] = value;
}

/** Turns what was typed into a body, in stored units and UTC, with every entry that cannot be read. */
export function encode(nodes: readonly Node[], values: Values, options: EncodeOptions): Encoded {
  const problems: Problem[] = [];
  const rows = new Map<string, readonly number[]>();

  const encodeList = (list: List, value: Value | undefined, path: string): unknown[] => {
    const kept = rowsOf(value)
      .map((row, index) => ({ row, index }))
      .filter(({ row }) => list.skip?.(row) !== true);
    rows.set(
      path,
      kept.map(({ index }) => index),
    );
    return kept.map(({ row }, at) => encodeLevel(list.item, row, `${path}.${at}`));
  };

  const encodeLevel = (level: readonly Node[], typed: Values, base: string): Record<string, unknown> => {
    const body: Record<string, unknown> = {};
    const said = new Set<string>();
    const asked = entries(level, typed).filter(({ name }) => !name.startsWith('_'));
    for (const entry of asked) {
      const path = join(base, entry.name);
      if (entry.type === 'list') {
        const list = encodeList(entry, typed[entry.name], path);
        if (!entry.optional || list.length > 0) put(body, entry.name, list);
        continue;
      }
      if (!isBlank(entry, typed[entry.name])) said.add(entry.name);
      const read = readLeaf(entry, typed[entry.name], path, options.zone);
      if ('problems' in read) problems.push(...read.problems);
      else put(body, entry.name, read.value);
    }
    const silent = unasked(level, typed).filter(({ name }) => !name.startsWith('_'));
    for (const entry of silent) put(body, entry.name, unaskedValue(entry));
    const within = (group: string) => (name: string) => name.startsWith(`${group}.`);
    const placed = [...asked, ...silent].map(({ name }) => name);
    if (base === '')
      for (const group of options.nullable)
        // A group that this shape of the body does not have stays out of it.
        if (placed.some(within(group)) && ![...said].some(within(group))) put(body, group, null);
    return body;
  };

  return { body: encodeLevel(nodes, values, ''), problems, rows };
}

/** The same place in what was typed: a problem's path counts only the rows that were sent. */
export function typedPath(path: string, rows: Encoded['rows']): string {
  const typed: string[] = [];
  const sent: string[] = [];
  for (const name of path.split('.')) {
    const row = rows.get(sent.join('.'))?.[Number(name)];
    typed.push(row === undefined ? name : String(row));
    sent.push(name);
  }
  return typed.join('.');
}
