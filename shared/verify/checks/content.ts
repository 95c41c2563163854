import * as z from 'zod';
import { packetContentSchema, statementSchema, type PacketContent } from '../../packet/schema.ts';
import { problemsFromZod } from '../../problems/fromZod.ts';
import { finding, type Finding } from '../finding.ts';

/** The allow-list without its refusal of a bill that does not foot: that is for a check to say, with the figures. */
const readable = z.strictObject({
  ...packetContentSchema.shape,
  statement: z.strictObject(statementSchema.shape),
});

export interface ReadContent {
  /** Null when too much of it is not as a packet's data are: nothing can be recomputed then. */
  readonly content: PacketContent | null;
  readonly findings: readonly Finding[];
}

const MOST_FINDINGS = 40;

/**
 * The packet's data by its own allow-list. A field too many is said and left out; one that is missing or cannot be is
 * said, and then there is nothing to recompute from.
 */
export function readContent(text: string, name: string): ReadContent {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { content: null, findings: [finding('data-not-json', name, { name })] };
  }
  const findings = isPlain(text, value) ? [] : [finding('data-not-plain', name, { name })];
  let parsed = readable.safeParse(value);
  const unknown = parsed.error?.issues.filter(({ code }) => code === 'unrecognized_keys') ?? [];
  if (unknown.length > 0) parsed = readable.safeParse(withoutFields(value, unknown));
  const extra = problemsFromZod(unknown).map(({ path }) => finding('unknown-field', path, { path }));
  const wrong = parsed.success
    ? []
    : problemsFromZod(parsed.error.issues).map(({ code, path, params }) =>
        finding('not-valid', path, { ...params, path, rule: code }),
      );
  return {
    content: parsed.success ? parsed.data : null,
    findings: [...findings, ...[...extra, ...wrong].slice(0, MOST_FINDINGS)],
  };
}

/** Written as a packet writes it, so that nothing stands in it twice: of two fields of one name readers choose. */
const isPlain = (text: string, value: unknown): boolean =>
  [0, 1, 2, 4].some((indent) => JSON.stringify(value, null, indent) === text.trimEnd());

function withoutFields(value: unknown, issues: readonly z.core.$ZodIssue[]): unknown {
  const copy = structuredClone(value);
  for (const issue of issues) {
    if (issue.code !== 'unrecognized_keys') continue;
    let at: unknown = copy;
    for (const step of issue.path) at = (at as Record<PropertyKey, unknown> | undefined)?.[step];
    for (const key of issue.keys) if (typeof at === 'object' && at !== null) Reflect.deleteProperty(at, key);
  }
  return copy;
}
