import { problem, type Problem } from '../problems/problem.ts';
import { factor } from './convert.ts';
import type { System } from './units.ts';

/**
 * A quantity's name ends in its unit, and so a whole answer or question can be turned from one system into the other by
 * its names: `staticKpa: 593` is `staticPsi: 86.0`. Inside, everything is in US units; one multiplication on the way in,
 * one on the way out, nothing rounded.
 */
interface Ending {
  readonly us: string;
  /** The first is the one that is written; the others are read as well. */
  readonly metric: readonly { readonly ending: string; readonly perUs: number }[];
}

const endings: readonly Ending[] = [
  {
    us: 'GpmPerSqrtPsi',
    metric: [
      {
        ending: 'LPerMinPerSqrtKpa',
        perUs: factor('gpm', 'L/min') / Math.sqrt(factor('psi', 'kPa')),
      },
      {
        ending: 'LPerMinPerSqrtBar',
        perUs: factor('gpm', 'L/min') / Math.sqrt(factor('psi', 'bar')),
      },
    ],
  },
  { us: 'LbfFt', metric: [{ ending: 'Nm', perUs: factor('lbf.ft', 'N.m') }] },
  {
    us: 'Gpm',
    metric: [
      { ending: 'LPerMin', perUs: factor('gpm', 'L/min') },
      { ending: 'LPerS', perUs: factor('gpm', 'L/s') },
      { ending: 'M3PerH', perUs: factor('gpm', 'm3/h') },
    ],
  },
  {
    us: 'Gal',
    metric: [
      { ending: 'L', perUs: factor('gal', 'L') },
      { ending: 'M3', perUs: factor('gal', 'm3') },
    ],
  },
  {
    us: 'Psi',
    metric: [
      { ending: 'Kpa', perUs: factor('psi', 'kPa') },
      { ending: 'Bar', perUs: factor('psi', 'bar') },
    ],
  },
  { us: 'Ft', metric: [{ ending: 'M', perUs: factor('ft', 'm') }] },
  { us: 'In', metric: [{ ending: 'Mm', perUs: factor('in', 'mm') }] },
];

interface Match {
  readonly name: string;
  readonly perUs: number;
}

/** The stem before an ending, or null. A name that is nothing but a unit (`psi`) counts as well, in small letters. */
function stem(name: string, ending: string): string | null {
  if (name === ending.toLowerCase() && ending.length > 2) return '';
  return name.length > ending.length && name.endsWith(ending) ? name.slice(0, -ending.length) : null;
}

const join = (before: string, ending: string): string =>
  before === '' ? ending.toLowerCase() : `${before}${ending}`;

const remembered = new Map<string, Match | null>();

/** The US name of a metric one, or the metric name of a US one; null for a name that ends in no such unit. */
function other(name: string, to: System): Match | null {
  const key = `${to} ${name}`;
  const known = remembered.get(key);
  if (known !== undefined) return known;
  const found = endings
    .flatMap(({ us, metric }) =>
      to === 'us'
        ? metric.map(({ ending, perUs }) => ({ from: ending, to: us, perUs }))
        : metric.slice(0, 1).map(({ ending, perUs }) => ({ from: us, to: ending, perUs })),
    )
    // The longest ending that fits: LPerMinPerSqrtKpa also ends in Kpa.
    .sort((a, b) => b.from.length - a.from.length)
    .find(({ from }) => stem(name, from) !== null);
  const match = found ? { name: join(stem(name, found.from) ?? '', found.to), perUs: found.perUs } : null;
  // Names come from outside; only as many as any question of ours has are kept.
  if (remembered.size < 1000) remembered.set(key, match);
  return match;
}

/** Deeper than any question of ours; what lies below is left as it is and refused by its schema. */
const DEEPEST = 12;

const isGroup = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What was typed under another name, by the path that it has inside. */
export interface TypedName {
  readonly path: string;
  /** How many of the typed unit are in one US unit. */
  readonly perUs: number;
}

export interface InUs {
  readonly value: unknown;
  readonly typed: ReadonlyMap<string, TypedName>;
  readonly problems: readonly Problem[];
}

/**
 * The same value with every metric quantity (`staticKpa`, `diameterMm`, `flowLPerMin`) under its US name and in its US
 * unit. One quantity given in both systems is a problem. A value that is not a number keeps its value, so that its
 * schema can say what is wrong with it.
 */
export function quantitiesInUs(value: unknown): InUs {
  const typed = new Map<string, TypedName>();
  const problems: Problem[] = [];
  const walk = (node: unknown, inside: string, outside: string, depth: number): unknown => {
    if (depth > DEEPEST) return node;
    if (Array.isArray(node))
      return node.map((item, index) => walk(item, `${inside}${index}.`, `${outside}${index}.`, depth + 1));
    if (!isGroup(node)) return node;
    return Object.fromEntries(
      Object.entries(node).map(([name, content]) => {
        const match = other(name, 'us');
        if (!match) return [name, walk(content, `${inside}${name}.`, `${outside}${name}.`, depth + 1)];
        if (Object.hasOwn(node, match.name))
          problems.push(problem('given-in-two-units', `${outside}${name}`, { other: match.name }));
        typed.set(`${inside}${match.name}`, { path: `${outside}${name}`, perUs: match.perUs });
        return [match.name, typeof content === 'number' ? content / match.perUs : content];
      }),
    );
  };
  return { value: walk(value, '', '', 0), typed, problems };
}

/** Problems under the names and in the units in which the question was typed. */
export function problemsAsTyped(problems: readonly Problem[], typed: InUs['typed']): Problem[] {
  return problems.map((found) => {
    const name = typed.get(found.path);
    if (!name) return found;
    const params = Object.fromEntries(
      Object.entries(found.params).map(([key, limit]) =>
        // A limit is read, not computed with: six digits are enough.
        (key === 'minimum' || key === 'maximum') && typeof limit === 'number'
          ? [key, Number((limit * name.perUs).toPrecision(6))]
          : [key, limit],
      ),
    );
    return { ...found, path: name.path, params };
  });
}

/** An answer with every US quantity under its metric name and in its metric unit; everything else as it is. */
export function quantitiesInMetric(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(quantitiesInMetric);
  if (!isGroup(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, content]) => {
      const match = typeof content === 'number' || content === null ? other(name, 'metric') : null;
      return match
        ? [match.name, typeof content === 'number' ? content * match.perUs : content]
        : [name, quantitiesInMetric(content)];
    }),
  );
}
