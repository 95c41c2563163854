import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../shared/problems/problem.ts';
import { streamOf, type Subject } from '../../../shared/submissions/envelope.ts';
import { factKinds, kinds, type FactKind } from '../../../shared/submissions/kinds.ts';
import { parseSubmission } from '../../../shared/submissions/submission.ts';
import { sayProblem } from '../../../shared/words/index.ts';
import { sampleBodies, sampleSubjectTypes } from '../../support/sampleBodies.ts';
import {
  correction,
  fact,
  onClaim,
  onHydrant,
  onStrike,
  onUtility,
  uuid,
} from '../../support/submissions.ts';

/** Expected answers: issue 2 and design decisions 1, 2 and 11 (every problem at once, the field named). */
const subjects: Readonly<Record<string, Subject>> = {
  strike: onStrike(1),
  hydrant: onHydrant('H-12'),
  claim: onClaim(1),
  utility: onUtility,
};
const sampleOf = (kind: FactKind) => fact(kind, 1, subjects[sampleSubjectTypes[kind]]!);
const strike = fact('strike', 1, onStrike(1));

function problemsOf(input: unknown): Problem[] {
  const parsed = parseSubmission(input);
  if (parsed.ok) throw new Error('no problem was found');
  return parsed.problems;
}
const placed = (input: unknown): [code: string, path: string][] =>
  problemsOf(input).map(({ code, path }) => [code, path]);

describe('a submission that is right', () => {
  it.each(factKinds)('%s comes through as it was sent', (kind) => {
    const sent = sampleOf(kind);
    expect(parseSubmission(structuredClone(sent))).toEqual({ ok: true, value: sent });
  });

  it.each(factKinds)('a correction of %s, and its withdrawal', (kind) => {
    const sent = sampleOf(kind);
    for (const replacement of [sent.body, null]) {
      const corrected = correction(2, sent, replacement);
      expect(parseSubmission(corrected)).toEqual({ ok: true, value: corrected });
    }
  });

  it('spaces at the ends of words are taken off, and a trial stays marked', () => {
    const parsed = parseSubmission({ ...strike, test: true, body: { ...strike.body, note: '  Two cars ' } });
    expect(parsed).toMatchObject({ ok: true, value: { test: true, body: { note: 'Two cars' } } });
  });
});

describe('a submission that is wrong', () => {
  it('gets every problem at once: envelope, body, nested, in lists, and what is too much', () => {
    const wrong = {
      ...strike,
      submissionId: '123',
      occurredAt: 'yesterday',
      person: {},
      extra: 1,
      body: {
        ...strike.body,
        hazards: ['traffic', 'dragons'],
        found: { ...strike.body.found, jetHeightIn: -3, flow: 'gush' },
        photos: [
          { ...strike.body.photos[0], sha256: 'abc' },
          { ...strike.body.photos[0], bytes: 0 },
        ],
        colour: 'red',
      },
    };
    expect(placed(wrong).sort()).toEqual(
      [
        ['uuid-v7', 'submissionId'],
        ['format-datetime', 'occurredAt'],
        ['required', 'person.personId'],
        ['unknown-field', 'extra'],
        ['not-one-of', 'body.hazards.1'],
        ['not-above', 'body.found.jetHeightIn'],
        ['not-one-of', 'body.found.flow'],
        ['format-regex', 'body.photos.0.sha256'],
        ['below-minimum', 'body.photos.1.bytes'],
        ['unknown-field', 'body.colour'],
      ].sort(),
    );
  });

  it('also says that the subject is wrong when other things are', () => {
    expect(placed({ ...strike, subject: onHydrant('A'), sentAt: 'x' })).toEqual([
      ['format-datetime', 'sentAt'],
      ['wrong-subject', 'subject.type'],
    ]);
  });

  it.each(factKinds)('%s about a thing that its form is not about', (kind) => {
    const allowed = ['hydrant', 'strike', 'claim', 'utility'].filter(
      (type) => parseSubmission({ ...sampleOf(kind), subject: subjects[type] }).ok,
    );
    expect(allowed).toContain(sampleSubjectTypes[kind]);
    expect(allowed).not.toHaveLength(4);
    for (const type of ['strike', 'hydrant', 'claim', 'utility'].filter((one) => !allowed.includes(one)))
      expect(problemsOf({ ...sampleOf(kind), subject: subjects[type] })).toEqual([
        { code: 'wrong-subject', path: 'subject.type', params: { allowed: allowed.join(', ') } },
      ]);
  });

  it.each<[string, unknown]>([
    ['nothing', undefined],
    ['null', null],
    ['a number', 7],
    ['a list', [strike]],
    ['a word', 'strike'],
  ])('%s is no submission', (_name, input) => {
    expect(placed(input)).toEqual([['not-a-submission', '']]);
  });

  it('an empty one is told every field that it lacks', () => {
    const lacking = placed({}).map(([, path]) => path);
    expect(lacking).toEqual(
      expect.arrayContaining([
        'schemaVersion',
        'submissionId',
        'subject',
        'occurredAt',
        'sentAt',
        'kind',
        'body',
      ]),
    );
  });

  it('of a kind there is none of is told the kinds', () => {
    expect(problemsOf({ ...strike, kind: 'explosion' })).toEqual([
      { code: 'not-one-of', path: 'kind', params: { values: kinds.join(', ') } },
    ]);
    for (const kind of ['__proto__', 'constructor', 'toString'])
      expect(placed({ ...strike, kind })).toEqual([['not-one-of', 'kind']]);
  });

  it('of a newer version than this server knows is told so, and nothing else: it may be right', () => {
    expect(problemsOf({ ...strike, schemaVersion: 2, somethingNew: true })).toEqual([
      { code: 'newer-schema', path: 'schemaVersion', params: { newest: 1 } },
    ]);
    expect(placed({ ...strike, schemaVersion: 0 })).toEqual([['not-one-of', 'schemaVersion']]);
    expect(placed({ ...strike, schemaVersion: '1' })).toEqual([['not-one-of', 'schemaVersion']]);
  });

  it.each<[string, unknown]>([
    ['version 4', '3f2504e0-4f89-41d3-9a0c-0305e82c3301'],
    ['capital letters', uuid(171).toUpperCase()],
    ['spaces around', ` ${uuid(1)}`],
    ['another variant', '019c0000-0000-7000-c000-000000000001'],
  ])('an id that is a UUID with %s is refused: the id is a key', (_name, submissionId) => {
    expect(placed({ ...strike, submissionId })).toEqual([['uuid-v7', 'submissionId']]);
  });

  it('half a body, a body that is a list, a body with an inherited name', () => {
    expect(placed({ ...strike, body: [] })).toEqual([['wrong-type', 'body']]);
    expect(placed({ ...strike, body: undefined })).toEqual([['required', 'body']]);
    const sneaky = JSON.parse('{"__proto__":{"hydrantId":"A"}}') as object;
    const paths = placed({ ...strike, body: { ...strike.body, ...sneaky, constructor: 1 } }).map(
      ([, path]) => path,
    );
    expect(paths).toContain('body.constructor');
  });

  it('every problem here has its sentence in both languages', () => {
    const everything = [
      ...problemsOf({}),
      ...problemsOf({ ...strike, subject: onHydrant('A') }),
      ...problemsOf({ ...strike, schemaVersion: 2 }),
      ...problemsOf({ ...strike, submissionId: '1' }),
      ...problemsOf(null),
    ];
    for (const found of everything)
      for (const locale of ['en', 'es'] as const) {
        const sentence = sayProblem(locale, found);
        expect(sentence, found.code).not.toMatch(/\[problem|not valid\.$|no es válido\.$/);
      }
  });
});

describe('a correction', () => {
  const corrected = correction(2, strike, strike.body);

  it('is checked by its target’s form, with paths through the replacement', () => {
    const body = {
      ...corrected.body,
      replacement: {
        ...strike.body,
        struckAt: 'now',
        found: { ...strike.body.found, jetHeightIn: 'high' },
        colour: 1,
      },
    };
    expect(placed({ ...corrected, body }).sort()).toEqual([
      ['format-datetime', 'body.replacement.struckAt'],
      ['unknown-field', 'body.replacement.colour'],
      ['wrong-type', 'body.replacement.found.jetHeightIn'],
    ]);
  });

  it('may be about what its target’s form is about, and about nothing else', () => {
    expect(placed({ ...corrected, subject: onClaim(1) })).toEqual([['wrong-subject', 'subject.type']]);
    const withdrawal = correction(2, strike, null);
    expect(placed({ ...withdrawal, subject: onUtility })).toEqual([['wrong-subject', 'subject.type']]);
  });

  it('of a kind that cannot be corrected', () => {
    for (const targetKind of ['correction', 'explosion', '__proto__'])
      expect(placed({ ...corrected, body: { ...corrected.body, targetKind } })).toEqual([
        ['not-one-of', 'body.targetKind'],
      ]);
  });

  it('needs its reason, its target, and says which', () => {
    const { targetId: _target, ...body } = { ...corrected.body, reason: '  ' };
    expect(placed({ ...corrected, body }).sort()).toEqual([
      ['required', 'body.reason'],
      ['required', 'body.targetId'],
    ]);
  });
});

describe('streams', () => {
  it('of different subjects are different, whatever an id looks like', () => {
    const tricky = ['1', 'utility', `strike:${uuid(1)}`, 'hydrant:1', ':', '1 ', '１'];
    const names = [
      ...tricky.map((hydrantId) => streamOf(onHydrant(hydrantId))),
      streamOf(onStrike(1)),
      streamOf(onClaim(1)),
      streamOf(onUtility),
    ];
    expect(new Set(names).size).toBe(names.length);
  });
});

describe('rules that cross fields', () => {
  const rows: readonly (readonly [
    code: string,
    path: string,
    kind: FactKind,
    change: Record<string, unknown>,
  ])[] = [
    [
      'hydrant-or-place',
      'body.hydrantId',
      'strike',
      { hydrantId: null, position: null, placeDescription: null },
    ],
    ['basis-needs-time', 'body.struckAt', 'strike', { struckAt: null, struckAtBasis: 'witnessed' }],
    ['before-the-strike', 'body.arrivedAt', 'strike', { arrivedAt: '2026-03-04T01:00:00Z' }],
    ['before-the-strike', 'body.waterShutAt', 'strike', { waterShutAt: '2026-03-04T01:00:00Z' }],
    [
      'jet-without-flow',
      'body.found.jetHeightIn',
      'strike',
      { found: { ...sampleBodies.strike.found!, flow: 'none' } },
    ],
    [
      'marked-or-told',
      'body.dispatch',
      'out-of-service-notice',
      { markedOutOfServiceAt: null, dispatch: null },
    ],
    ['completed-needs-reassembled', 'body.reassembledAt', 'repair', { reassembledAt: null }],
    ['unseen-signs', 'body.hydrantId', 'strike', { hydrantId: 'TH-\u202E0348' }],
    [
      'discount-above-price',
      'body.parts.0.source.discountCents',
      'repair',
      {
        parts: [
          {
            partNumber: 'P',
            description: 'Stem',
            quantity: 2,
            source: {
              from: 'invoice',
              supplier: 'S',
              invoiceNumber: '1',
              unitPriceCents: 100,
              discountCents: 201,
              invoiceSha256: null,
            },
          },
        ],
      },
    ],
    [
      'worker-twice',
      'body.crew.1.workerId',
      'repair',
      { crew: [sampleBodies.repair.crew[0], sampleBodies.repair.crew[0]] },
    ],
    [
      'break-outside-work',
      'body.crew.0.breaks.0',
      'repair',
      {
        crew: [
          {
            ...sampleBodies.repair.crew[0],
            breaks: [{ from: '2026-03-04T07:00:00Z', to: '2026-03-04T07:10:00Z' }],
          },
        ],
      },
    ],
    [
      'interval-ends-before-start',
      'body.crew.0.work.0.to',
      'repair',
      {
        crew: [
          {
            ...sampleBodies.repair.crew[0],
            breaks: [],
            work: [{ from: '2026-03-04T07:00:00Z', to: '2026-03-04T07:00:00Z' }],
          },
        ],
      },
    ],
    ['residual-not-below-static', 'body.residualPsi', 'flow-test', { residualPsi: 70 }],
    ['target-not-below-static', 'body.targetResidualPsi', 'flow-test', { targetResidualPsi: 70 }],
    ['interval-ends-before-start', 'body.to', 'planned-work', { to: '2026-04-01T12:00:00Z' }],
    [
      'deferred-needs-reason',
      'body.proofs.0.deferredReason',
      'return-to-service',
      {
        proofs: [
          { ...sampleBodies['return-to-service'].proofs[0], result: 'deferred', deferredByWorkerId: 'w-1' },
        ],
      },
    ],
    [
      'deferred-needs-name',
      'body.proofs.0.deferredByWorkerId',
      'return-to-service',
      {
        proofs: [
          { ...sampleBodies['return-to-service'].proofs[0], result: 'deferred', deferredReason: 'Dark' },
        ],
      },
    ],
  ];
  it.each(rows)('%s at %s', (code, path, kind, change) => {
    const sent = sampleOf(kind);
    expect(placed({ ...sent, body: { ...sent.body, ...change } })).toEqual([[code, path]]);
  });
});
