import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { factKinds } from '../../shared/submissions/kinds.ts';
import { formOf, parseSubmission, type Submission } from '../../shared/submissions/submission.ts';
import { hasWords } from '../../shared/words/index.ts';
import { routes } from '../../shared/deployment/routes.ts';
import type { Role } from '../../shared/roles.ts';
import { correction, fact, onClaim, onHydrant, onStrike, onUtility, uuid } from '../support/submissions.ts';
import { fuzzRuns, knownWorld, type KnownWorld } from './support/knownWorld.ts';
import type { Answer } from './support/world.ts';

/** Malformed bodies on every route that takes one: always a problem document that names the field, never a write. */
const { runs: RUNS, time: TIME } = fuzzRuns({ usual: 400, seed: 20_260_304 });

let known: KnownWorld;
beforeAll(async () => {
  known = await knownWorld();
});
const ask = async (path: string, role: Role, body: unknown): Promise<Answer> =>
  known.world.ask(path, role, { token: await known.tokenFor(role), body });
const submit = (body: unknown): Promise<Answer> => ask('/api/submissions', 'manager', body);

const subjects = { strike: onStrike(1), claim: onClaim(1), hydrant: onHydrant('H-1'), utility: onUtility };
const valid: Submission[] = factKinds.map((kind, index) => {
  const [subject] = formOf(fact(kind, 0, onUtility)).subjects;
  return fact(kind, index + 1, subjects[subject!]);
});
valid.push(correction(99, valid[0]!, { ...valid[0]!.body }));

type Path = readonly string[];
/** Every place in a value: fields, list items, and what is inside them. */
function places(value: unknown, at: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [at];
  return [at, ...Object.entries(value).flatMap(([key, inner]) => places(inner, [...at, key]))].filter(
    ({ length }) => length > 0 || at.length > 0,
  );
}
function changed(value: unknown, [head, ...rest]: Path, change: (inner: unknown) => unknown): unknown {
  if (head === undefined) return change(value);
  if (Array.isArray(value))
    return value.map((item, index) => (String(index) === head ? changed(item, rest, change) : item));
  const object = value as Record<string, unknown>;
  const next = changed(object[head], rest, change);
  return Object.fromEntries(
    Object.entries({ ...object, [head]: next }).filter(([, inner]) => inner !== undefined),
  );
}

/** What no form takes in any place: an object with a field nobody has. */
const foreign: readonly unknown[] = [{ 'no-such-field': 1 }, [[[]]], { __proto__: null, constructor: 'x' }];

/** Whether a problem at `path` tells of a change at `place`: there, just above, or just inside it. */
const tellsOf = (path: string, place: string): boolean =>
  path === place || path.startsWith(`${place}.`) || place.startsWith(`${path}.`);

function expectProblem({ status, headers, body }: Answer, sent: unknown): void {
  const { logged } = known.world;
  const well =
    [400, 413, 422].includes(status) &&
    headers.get('content-type') === 'application/problem+json' &&
    body.problems.length > 0 &&
    // A code without words would be said as itself in brackets, or as a sentence that says nothing.
    body.problems.every(({ message, code }) => hasWords(`problem.${code}`) && message !== '') &&
    logged.length === 0;
  if (!well) expect.fail(JSON.stringify({ sent, status, body, logged }).slice(0, 2000));
}

describe('POST /api/submissions with what no form takes', () => {
  it('a field of another type is named', TIME, async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(), fc.nat(), fc.constantFrom(...foreign), async (which, where, value) => {
        const submission = valid[which % valid.length]!;
        // Inside a correction's replacement of nothing, anything may stand; the sample replaces with a whole strike.
        const all = places(submission);
        const place = all[where % all.length]!;
        const answer = await submit(changed(submission, place, () => value));
        expectProblem(answer, { kind: submission.kind, place, value });
        expect(
          answer.body.problems.some(({ path }) => tellsOf(path, place.join('.'))),
          JSON.stringify([place, answer.body.problems]),
        ).toBe(true);
      }),
      RUNS,
    );
    expect(known.written()).toEqual([]);
  });

  it('a missing field is named', TIME, async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(), fc.nat(), async (which, where) => {
        const submission = valid[which % valid.length]!;
        const fields = places(submission).filter((place) => !/^\d+$/.test(place.at(-1)!));
        const place = fields[where % fields.length]!;
        const without = changed(submission, place, () => undefined);
        // What a form does without may be left out; the samples fill in every optional part.
        fc.pre(!parseSubmission(without).ok);
        const answer = await submit(without);
        expectProblem(answer, { kind: submission.kind, place });
        expect(
          answer.body.problems.some(({ path }) => tellsOf(path, place.join('.'))),
          JSON.stringify([place, answer.body.problems]),
        ).toBe(true);
      }),
      RUNS,
    );
    expect(known.written()).toEqual([]);
  });

  it('a field that no form has is named', TIME, async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(), fc.nat(), async (which, where) => {
        const submission = valid[which % valid.length]!;
        const objects = places(submission).filter((place) => {
          const value = place.reduce<unknown>(
            (inner, key) => (inner as Record<string, unknown>)[key],
            submission,
          );
          return typeof value === 'object' && value !== null && !Array.isArray(value);
        });
        const place = objects[where % objects.length]!;
        const answer = await submit(
          changed(submission, place, (inner) => ({ ...(inner as object), surprise: 1 })),
        );
        expectProblem(answer, { kind: submission.kind, place });
        expect(answer.body.problems.map(({ path }) => path)).toContain([...place, 'surprise'].join('.'));
      }),
      RUNS,
    );
    expect(known.written()).toEqual([]);
  });

  it('any other JSON value is answered, never taken and never a fault of ours', TIME, async () => {
    await fc.assert(
      fc.asyncProperty(fc.jsonValue({ maxDepth: 5 }), async (value) =>
        expectProblem(await submit(JSON.stringify(value)), value),
      ),
      RUNS,
    );
    expect(known.written()).toEqual([]);
  });

  it('any text is answered', TIME, async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 300 }), async (text) =>
        expectProblem(await submit(text === '' ? ' ' : text), text),
      ),
      RUNS,
    );
    expect(known.written()).toEqual([]);
  });

  it('a submission cut off anywhere is not JSON', TIME, async () => {
    const text = JSON.stringify(valid[0]);
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: text.length - 1 }), async (length) => {
        const answer = await submit(text.slice(0, length));
        expect([answer.status, answer.body.type]).toEqual([400, '/problems/not-json']);
      }),
      RUNS,
    );
  });
});

/** A good body of each route, every optional part of it filled in. */
const others: readonly [route: string, path: string, role: Role, good: object][] = [
  [
    '/api/evidence/uploads',
    '/api/evidence/uploads',
    'crew',
    { subject: onStrike(1), submissionId: uuid(1), sha256: 'a'.repeat(64) },
  ],
  [
    '/api/claims/{claimId}/packet',
    `/api/claims/${uuid(2)}/packet`,
    'clerk',
    { mode: 'preview', demandCents: 100, changes: 'Two lines', background: false },
  ],
  [
    '/api/claims/{claimId}/letters',
    `/api/claims/${uuid(2)}/letters`,
    'clerk',
    {
      submissionId: uuid(9),
      letter: 'follow-up',
      text: 'We wrote to you.',
      to: 'An insurer',
      how: 'post',
      on: '2026-03-04',
      answers: uuid(8),
    },
  ],
  ['/api/network/{hydrantId}/closing', '/api/network/H-1/closing', 'crew', { links: ['P3'] }],
  ['/api/search', '/api/search', 'clerk', { find: 'ABC 1234' }],
  ['/api/dispatch/retry', '/api/dispatch/retry', 'crew', { subject: 'hydrant:H-1', number: 1 }],
  ['/api/calendar', '/api/calendar', 'manager', { action: 'revoke', personId: 'w-7' }],
];

it('every route that takes a body is among these', () => {
  const posts = routes.filter(({ method }) => method === 'POST').map(({ path }) => path);
  expect(['/api/submissions', ...others.map(([route]) => route)].sort()).toEqual(posts.sort());
});

describe.each(others)('POST %s with anything else', (_, path, role, good) => {
  it('a field of another type is named', TIME, async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...places(good)),
        fc.constantFrom(...foreign),
        async (place, value) => {
          const answer = await ask(
            path,
            role,
            changed(good, place, () => value),
          );
          expectProblem(answer, { place, value });
          expect(answer.body.problems.some((found) => tellsOf(found.path, place.join('.')))).toBe(true);
        },
      ),
      RUNS,
    );
    expect(known.written()).toEqual([]);
  });

  it('a field that it does not have is named', TIME, async () => {
    await fc.assert(
      // A name that some objects have by birth would be another matter: those stand in the fuzz of routes.
      fc.asyncProperty(fc.stringMatching(/^x[a-zA-Z0-9]{0,20}$/), fc.jsonValue(), async (name, value) => {
        const answer = await ask(path, role, { ...good, [name]: value });
        expectProblem(answer, { name, value });
        expect(answer.body.problems.some((found) => tellsOf(found.path, name))).toBe(true);
      }),
      RUNS,
    );
    expect(known.written()).toEqual([]);
  });

  it('any other JSON value, and any text, is answered', TIME, async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(
          fc.jsonValue().map((value) => JSON.stringify(value)),
          fc.string({ unit: 'binary', maxLength: 300 }).map((text) => (text === '' ? ' ' : text)),
        ),
        async (text) => expectProblem(await ask(path, role, text), text),
      ),
      RUNS,
    );
    expect(known.written()).toEqual([]);
  });
});
