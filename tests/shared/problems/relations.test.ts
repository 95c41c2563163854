import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { problemIssue, problemsFromZod } from '../../../shared/problems/fromZod.ts';
import { relations } from '../../../shared/problems/relations.ts';
import { factKinds, forms } from '../../../shared/submissions/kinds.ts';
import { sampleBodies } from '../../support/sampleBodies.ts';

const schema = z
  .strictObject({
    from: z.number().min(0),
    to: z.number(),
    name: z.string(),
    rows: z.array(z.strictObject({ id: z.string(), count: z.number() })),
  })
  .check(
    relations(
      ({ from, to }, ctx) => {
        if (to <= from) ctx.addIssue(problemIssue('ends-before', ['to']));
      },
      ({ rows }, ctx) => {
        if (rows.reduce((sum, { count }) => sum + count, 0) > 10)
          ctx.addIssue(problemIssue('too-much', ['rows']));
      },
    ),
  );
const problems = (value: unknown): string[] => {
  const parsed = schema.safeParse(value, { reportInput: true });
  return parsed.success
    ? []
    : problemsFromZod(parsed.error.issues).map(({ code, path }) => `${code} ${path}`);
};
const row = { id: 'a', count: 6 };
const good = { from: 1, to: 2, name: 'n', rows: [row] };

describe('rules between fields', () => {
  it('hold when all is well', () => expect(problems(good)).toEqual([]));
  it('are asked although another field is missing or of the wrong type', () => {
    expect(problems({ ...good, to: 0, name: undefined })).toEqual(['required name', 'ends-before to']);
    expect(problems({ ...good, to: 0, rows: 'none' })).toEqual(['wrong-type rows', 'ends-before to']);
    expect(problems({ ...good, to: 0, extra: 1 })).toEqual(['unknown-field extra', 'ends-before to']);
  });
  it('are asked of a number that is out of its range', () =>
    expect(problems({ ...good, from: -1, to: -2 })).toEqual(['below-minimum from', 'ends-before to']));
  it('say nothing of what they cannot read, and one that cannot be read silences no other', () => {
    expect(problems({ ...good, from: 'x', rows: [row, row] })).toEqual(['wrong-type from', 'too-much rows']);
    expect(problems({ ...good, to: 0, rows: [row, { id: 'b' }, row] })).toEqual([
      'required rows.1.count',
      'ends-before to',
    ]);
  });
  it('read past a bad field that they do not look at', () =>
    expect(problems({ ...good, rows: [row, { count: 6 }] })).toEqual([
      'required rows.1.id',
      'too-much rows',
    ]));
  it('do not hide a fault of the rule itself', () => {
    const broken = z.strictObject({ a: z.string() }).check(
      relations(() => {
        throw new TypeError('ours');
      }),
    );
    expect(() => broken.safeParse({})).toThrow('ours');
  });
  it('are not asked of what is no object', () => expect(problems(null)).toEqual(['wrong-type ']));
});

/** A body with the value at a path replaced; `undefined` takes it away. */
function changed(body: object, path: readonly (string | number)[], value: unknown): unknown {
  const copy = structuredClone(body) as Record<string | number, unknown>;
  const last = path.at(-1) as string | number;
  const at = path.slice(0, -1).reduce((inner, name) => inner[name] as Record<string | number, unknown>, copy);
  at[last] = value;
  return copy;
}

/** Every place in a body, objects and lists included. */
const places = (value: unknown, path: (string | number)[] = []): (string | number)[][] => [
  ...(path.length > 0 ? [path] : []),
  ...(Array.isArray(value)
    ? value.flatMap((item, index) => places(item, [...path, index]))
    : typeof value === 'object' && value !== null
      ? Object.entries(value).flatMap(([name, item]) => places(item, [...path, name]))
      : []),
];

describe('every form', () => {
  it.each(factKinds)('%s: one bad place is told at that place, and never ends in a fault', (kind) => {
    const body = sampleBodies[kind] as object;
    for (const path of places(body))
      for (const wrong of [undefined, { no: 'such thing' }]) {
        const parsed = (forms[kind].body as z.ZodType).safeParse(changed(body, path, wrong), {
          reportInput: true,
        });
        if (parsed.success) continue;
        const at = path.join('.');
        const found = problemsFromZod(parsed.error.issues).map((each) => each.path);
        expect(
          found.some((each) => each === '' || each.startsWith(at) || at.startsWith(each)),
          `${kind} ${at}: ${found.join(', ')}`,
        ).toBe(true);
      }
  });

  it.each([
    ['flow-test', { residualPsi: 80, testedAt: undefined }, ['residual-not-below-static', 'required']],
    [
      'flow-test',
      { residualPsi: 80, targetResidualPsi: 75, testedAt: undefined },
      ['residual-not-below-static', 'target-not-below-static', 'required'],
    ],
    [
      'strike',
      { hydrantId: null, position: null, placeDescription: null, photos: undefined },
      ['hydrant-or-place', 'required'],
    ],
    [
      'planned-work',
      { from: '2026-03-04T05:00:00Z', to: '2026-03-04T04:00:00Z', takesOutOfService: undefined },
      ['interval-ends-before-start', 'required'],
    ],
    [
      'out-of-service-notice',
      { markedOutOfServiceAt: null, dispatch: null, note: undefined },
      ['marked-or-told', 'required'],
    ],
  ] as const)('%s tells rules and missing fields together', (kind, change, codes) => {
    const body = Object.fromEntries(
      Object.entries({ ...(sampleBodies[kind] as object), ...change }).filter(
        ([, value]) => value !== undefined,
      ),
    );
    const parsed = (forms[kind].body as z.ZodType).safeParse(body, { reportInput: true });
    const found = parsed.success ? [] : problemsFromZod(parsed.error.issues).map(({ code }) => code);
    expect(found).toEqual(expect.arrayContaining([...codes]));
  });
});
