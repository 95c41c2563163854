import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { compute } from '../../shared/compute/compute.ts';
import { computations } from '../../shared/compute/registry.ts';
import { rateBookEdition } from '../../shared/costs/rateBook.ts';
import { statementInput } from '../../shared/costs/statementInput.ts';

/** `docs/costs.md` is the documented schema of `compute statement`: every field in or out is named in it, in code. */
const page = readFileSync('docs/costs.md', 'utf8');
const isNamed = (field: string): boolean => new RegExp(`\`[^\`]*\\b${field}\\b[^\`]*\``).test(page);

/** Names of the fields of a JSON schema, at any depth. */
function fieldsOf(schema: unknown, found = new Set<string>()): Set<string> {
  if (Array.isArray(schema)) schema.forEach((each) => fieldsOf(each, found));
  else if (typeof schema === 'object' && schema !== null)
    for (const [key, value] of Object.entries(schema)) {
      if (key === 'properties' && typeof value === 'object' && value !== null)
        Object.keys(value).forEach((name) => found.add(name));
      fieldsOf(value, found);
    }
  return found;
}
const jsonSchema = (schema: z.ZodType): unknown =>
  z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' });

describe('docs/costs.md', () => {
  it('names every field of an edition, its parts included', () => {
    expect([...fieldsOf(jsonSchema(rateBookEdition))].filter((field) => !isNamed(field))).toEqual([]);
  });

  it('names every field of the work', () => {
    expect(Object.keys(statementInput.shape.work.shape).filter((field) => !isNamed(field))).toEqual([]);
  });

  it('names every field of what comes out', () => {
    const example = computations.get('statement')?.example;
    const computed = compute('statement', example);
    if (!computed.ok) throw new Error('the example has problems');
    const { lines, ...rest } = computed.output as { readonly lines: readonly object[] };
    const fields = new Set(['lines', ...Object.keys(rest), ...lines.flatMap((line) => Object.keys(line))]);
    expect([...fields].filter((field) => !isNamed(field))).toEqual([]);
  });
});
