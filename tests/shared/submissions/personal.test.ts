import fc from 'fast-check';
import * as z from 'zod';
import { describe, expect, it } from 'vitest';
import { correctionKind, factKinds, forms, type FactKind } from '../../../shared/submissions/kinds.ts';
import { joinPersonal, splitPersonal } from '../../../shared/submissions/personal.ts';
import { parseSubmission, type Submission } from '../../../shared/submissions/submission.ts';
import { sampleBodies, sampleSubjectTypes } from '../../support/sampleBodies.ts';
import { correction, fact, onClaim, onHydrant, onStrike, onUtility } from '../../support/submissions.ts';

/** Design decision 5: personal fields live apart and can be forgotten; the fact stays. */
const subjects = { strike: onStrike(1), hydrant: onHydrant('H-12'), claim: onClaim(1), utility: onUtility };
const sampleOf = (kind: FactKind): Submission => fact(kind, 1, subjects[sampleSubjectTypes[kind]]);
const paths = factKinds.flatMap((kind) => forms[kind].personal.map((path) => [kind, path] as const));

/** The schema at a path, seen through null, and whether it may be null. */
function schemaAt(schema: z.core.$ZodType, path: readonly string[]): { readonly nullable: boolean } | null {
  let at: z.core.$ZodType | undefined = schema;
  let nullable = false;
  const through = (): void => {
    nullable = false;
    while (at instanceof z.ZodNullable || at instanceof z.ZodOptional) {
      nullable ||= at instanceof z.ZodNullable;
      at = (at as z.ZodNullable).def.innerType;
    }
  };
  through();
  for (const key of path) {
    if (at instanceof z.ZodArray) at = key === '*' ? at.def.element : undefined;
    else if (at instanceof z.ZodObject) at = at.def.shape[key];
    else return null;
    if (at === undefined) return null;
    through();
  }
  return { nullable };
}

describe('personal fields of the forms', () => {
  it.each(paths)('%s: %s is a field of the form', (kind, path) => {
    expect(schemaAt(forms[kind].body, path.split('.'))).not.toBeNull();
  });

  it('may all be null, because after an erasure they read null; one form forgot', () => {
    const forced = paths
      .filter(([kind, path]) => schemaAt(forms[kind].body, path.split('.'))?.nullable !== true)
      .map(([kind, path]) => `${kind} ${path}`);
    // Reported to the forms' owner: an addressee has to be typed in, and reads null once it is erased.
    expect(forced).toEqual(['demand-sent to']);
  });

  it.each(paths)(
    '%s: %s is filled in in the sample, so that the tests below mean something',
    (kind, path) => {
      const { personal } = splitPersonal(sampleOf(kind));
      const pattern = new RegExp(`^${path.replaceAll('.', '\\.').replaceAll('*', '\\d+')}$`);
      expect(Object.keys(personal).some((taken) => pattern.test(taken))).toBe(true);
    },
  );

  it('no path stands inside another: what is taken out once is not looked for again', () => {
    for (const kind of factKinds)
      for (const one of forms[kind].personal)
        for (const other of forms[kind].personal) expect(one.startsWith(`${other}.`)).toBe(false);
  });
});

describe('taking personal fields out and putting them back', () => {
  it.each(factKinds)('%s comes back as it was, also inside a correction', (kind) => {
    const sent = sampleOf(kind);
    for (const submission of [sent, correction(2, sent, sent.body), correction(3, sent, null)]) {
      const before = structuredClone(submission);
      const { fact: bare, personal } = splitPersonal(submission);
      expect(submission).toEqual(before);
      expect(joinPersonal(bare, personal)).toEqual(submission);
      // Through JSON too, which is how both halves are kept.
      const kept = JSON.parse(JSON.stringify({ bare, personal })) as {
        bare: Submission;
        personal: typeof personal;
      };
      expect(joinPersonal(kept.bare, kept.personal)).toEqual(submission);
      expect(joinPersonal(bare, {})).toEqual(bare);
    }
  });

  it.each(factKinds)(
    '%s without them is still right, but for the one field that must be filled in',
    (kind) => {
      const { fact: bare } = splitPersonal(sampleOf(kind));
      const parsed = parseSubmission(bare);
      if (kind === 'demand-sent')
        expect(parsed).toMatchObject({ ok: false, problems: [{ path: 'body.to' }] });
      else expect(parsed).toEqual({ ok: true, value: bare });
    },
  );

  it('what is taken out is nowhere in what is left', () => {
    const canary = 'zq-canary';
    const mark = (value: unknown, path: readonly string[]): unknown => {
      const [head, ...rest] = path;
      if (head === undefined) return value === null ? null : canary;
      if (Array.isArray(value)) return value.map((item) => mark(item, rest));
      if (typeof value !== 'object' || value === null) return value;
      return { ...value, [head]: mark((value as Record<string, unknown>)[head], rest) };
    };
    for (const kind of factKinds) {
      const sent = sampleOf(kind);
      const body = forms[kind].personal.reduce<unknown>(
        (inner, path) => mark(inner, path.split('.')),
        sent.body,
      );
      const marked = { ...sent, body } as Submission;
      for (const submission of [marked, correction(2, marked, body as Record<string, unknown>)]) {
        const { fact: bare, personal } = splitPersonal(submission);
        expect(JSON.stringify(bare)).not.toContain(canary);
        if (forms[kind].personal.length > 0) expect(JSON.stringify(personal)).toContain(canary);
        else expect(personal).toEqual({});
      }
    }
  });

  it('any parties, with any of their fields missing, come back as they were', () => {
    const text = fc.option(fc.string({ minLength: 1, maxLength: 5 }));
    const person = fc.option(fc.record({ name: text, address: text, phone: text }));
    const bodies = fc.record({
      hitAndRun: fc.constantFrom('yes', 'no', 'unknown'),
      vehicles: fc.array(
        fc.record({ kind: fc.constant('car'), plate: text, plateRegion: text, vin: text, description: text }),
        {
          maxLength: 12,
        },
      ),
      driver: person,
      owner: person,
      insurer: fc.option(fc.record({ company: text, policyNumber: text, claimNumber: text, adjuster: text })),
      police: fc.option(fc.record({ agency: text, reportNumber: text, officer: text })),
      crashReport: fc.constant(null),
      note: text,
    });
    fc.assert(
      fc.property(bodies, (body) => {
        const sent = { ...fact('party', 1, onStrike(1)), body } as unknown as Submission;
        const { fact: bare, personal } = splitPersonal(sent);
        expect(joinPersonal(bare, personal)).toEqual(sent);
        expect(Object.values(personal)).not.toContain(null);
      }),
    );
  });

  it('a kind of its own only for corrections: the paths lie under the replacement', () => {
    const sent = fact('strike', 1, onStrike(1));
    const { personal } = splitPersonal(correction(2, sent, sent.body));
    expect(Object.keys(personal)).toEqual([
      'replacement.reportedBy.name',
      'replacement.reportedBy.phone',
      'replacement.dispatch.takenBy',
    ]);
    expect(correctionKind in forms).toBe(false);
    expect(sampleBodies.strike.reportedBy.name).toBe('A caller');
  });
});
