import fc from 'fast-check';
import type { FactKind } from '../../shared/submissions/kinds.ts';
import type { BodyOf, Submission } from '../../shared/submissions/submission.ts';
import { proofs } from '../../shared/outages/proofs.ts';
import { at, correction, fact, onClaim, onHydrant, onStrike, onUtility, uuid } from './submissions.ts';

/** A small town in which everything touches everything: three hydrants, five strikes, two claims, one night. */
export const hydrantIds = ['A', 'B', 'C'] as const;
const strikeNumbers = [1, 2, 3, 4, 5] as const;

const hydrant = fc.constantFrom(...hydrantIds);
const hydrantOrNone = fc.option(hydrant, { freq: 4 });
const strikeNumber = fc.constantFrom(...strikeNumbers);
/** Whole minutes of the night. Few, so that ties and reversals happen. */
const minute = fc.integer({ min: 0, max: 40 }).map(at);
const minuteOrNone = fc.option(minute);
const valve = fc.constantFrom('V-1', 'V-2');

/** Makes one submission, given its number and the ones made before it (which a correction may aim at). */
type Making = (number: number, before: readonly Submission[]) => Submission;

/** Of one form, on a random strike or, where the form may, on a random hydrant. */
const making = <T>(
  parts: fc.Arbitrary<T>,
  make: (number: number, parts: T) => Submission,
): fc.Arbitrary<Making> => parts.map((drawn) => (number) => make(number, drawn));

const strikes = making(
  fc.record({
    n: strikeNumber,
    hydrantId: hydrantOrNone,
    struckAt: minuteOrNone,
    waterShutAt: minuteOrNone,
    told: fc.boolean(),
  }),
  (number, { n, hydrantId, struckAt, waterShutAt, told }) =>
    fact('strike', number, onStrike(n), {
      hydrantId,
      struckAt,
      struckAtBasis: 'unknown',
      waterShutAt,
      arrivedAt: null,
      ...(told ? {} : { dispatch: null }),
    }),
);
/** Steps that hold points ask of, in any order and at any minute. */
const anyStep = fc.record({
  step: fc.constantFrom(
    ...([
      'isolated',
      'pressure-gone',
      'drained',
      'pumped-out',
      'taken-down',
      'top-opened',
      'locate-ticket',
      'dug',
      'trench-protected',
      'in-excavation',
      'main-opened',
      'old-hydrant-out',
      'refilled-slowly',
    ] as const),
  ),
  doneAt: minute,
  byWorkerId: fc.constant('w-7'),
  note: fc.constant(null),
});
const repairs = making(
  fc.record({
    n: strikeNumber,
    hydrantId: hydrantOrNone,
    reassembledAt: minuteOrNone,
    takenDownAt: minuteOrNone,
    prepared: fc.boolean(),
    // Most repairs are plain ones: a hydrant that is opened up all night is never back.
    more: fc.oneof(
      { arbitrary: fc.constant([]), weight: 2 },
      { arbitrary: fc.array(anyStep, { maxLength: 8, size: 'max' }), weight: 1 },
    ),
    ticket: fc.boolean(),
  }),
  (number, { n, hydrantId, reassembledAt, takenDownAt, prepared, more, ticket }) =>
    fact('repair', number, onStrike(n), {
      hydrantId,
      reassembledAt,
      completedAt: reassembledAt,
      ...(ticket ? { dig: { locateTicket: 'LT-1' } } : {}),
      steps: [
        ...(prepared ? (['isolated', 'pressure-gone', 'drained'] as const) : []).map((step) => ({
          step,
          doneAt: at(0),
          byWorkerId: 'w-7',
          note: null,
        })),
        ...(takenDownAt === null
          ? []
          : [{ step: 'taken-down' as const, doneAt: takenDownAt, byWorkerId: 'w-8', note: null }]),
        ...more,
      ],
    }),
);
const onEither = fc.oneof(strikeNumber.map(onStrike), hydrant.map(onHydrant));
const valveTurns = making(
  fc.record({
    subject: onEither,
    valveId: valve,
    action: fc.constantFrom('closed' as const, 'reopened' as const),
    turnedAt: minute,
  }),
  (number, { subject, valveId, action, turnedAt }) =>
    fact('valve-operation', number, subject, { valveId, action, at: turnedAt }),
);
const returns = making(
  fc.record({
    subject: onEither,
    closes: fc.uniqueArray(fc.oneof(strikeNumber, fc.integer({ min: 1000, max: 1012 })), {
      minLength: 1,
      maxLength: 3,
    }),
    returnedAt: minute,
    results: fc.array(
      fc.record({
        proof: fc.constantFrom(...proofs),
        result: fc.constantFrom(
          'passed' as const,
          'passed' as const,
          'passed' as const,
          'failed' as const,
          'deferred' as const,
        ),
        at: minute,
      }),
      { maxLength: 6 },
    ),
    whole: fc.boolean(),
    reopened: fc.array(fc.record({ valveId: valve, at: minute, byWorkerId: fc.constant('w-7') }), {
      maxLength: 2,
    }),
  }),
  (number, { subject, closes, returnedAt, results, whole, reopened }) =>
    fact('return-to-service', number, subject, {
      closes: closes.map(uuid),
      returnedAt,
      proofs: [
        ...results,
        ...(whole ? proofs.map((proof) => ({ proof, result: 'passed' as const, at: returnedAt })) : []),
      ].map((one) => ({
        ...one,
        byWorkerId: 'w-7',
        deferredReason: one.result === 'deferred' ? 'No water to spare' : null,
        deferredByWorkerId: one.result === 'deferred' ? 'w-9' : null,
      })),
      valvesReopened: reopened,
    }),
);
/** A return as it should be: late, with every proof, every valve reopened, and whatever was out named. */
const goodReturns = making(
  fc.record({
    subject: onEither,
    minute: fc.integer({ min: 30, max: 45 }),
    outages: fc.uniqueArray(fc.integer({ min: 1000, max: 1012 }), { maxLength: 5 }),
  }),
  (number, { subject, minute: when, outages: others }) =>
    fact('return-to-service', number, subject, {
      closes: [...strikeNumbers, ...others].map(uuid),
      returnedAt: at(when),
      proofs: proofs.map((proof) => ({
        proof,
        result: 'passed' as const,
        at: at(when),
        byWorkerId: 'w-7',
        deferredReason: null,
        deferredByWorkerId: null,
      })),
      valvesReopened: ['V-1', 'V-2'].map((valveId) => ({ valveId, at: at(when), byWorkerId: 'w-7' })),
    }),
);
const outages = making(fc.record({ hydrantId: hydrant, since: minute }), (number, { hydrantId, since }) =>
  fact('outage', number, onHydrant(hydrantId), { since }),
);
const links = making(fc.record({ a: strikeNumber, b: strikeNumber }), (number, { a, b }) =>
  fact('link', number, onStrike(a), { sameAsStrikeId: uuid(b) }),
);
const expected = making(
  fc.record({
    subject: onEither,
    outage: fc.option(fc.integer({ min: 1000, max: 1012 })),
    expectedAt: minuteOrNone,
  }),
  (number, { subject, outage, expectedAt }) =>
    fact('expected-return', number, subject, {
      outageId: outage === null ? null : uuid(outage),
      expectedAt,
      waitingFor: expectedAt === null ? 'nothing' : 'kit',
    }),
);
const flowTests = making(
  fc.record({ subject: onEither, residualHydrantId: hydrant, testedAt: minute }),
  (number, { subject, residualHydrantId, testedAt }) =>
    fact('flow-test', number, subject, { residualHydrantId, testedAt }),
);
const others = making(
  fc.record({
    subject: onEither,
    n: strikeNumber,
    which: fc.integer({ min: 0, max: 6 }),
    claim: fc.constantFrom(1, 2),
  }),
  (number, { subject, n, which, claim }) => {
    switch (which) {
      case 0:
        return fact('party', number, onStrike(n));
      case 1:
        return fact('out-of-service-notice', number, subject);
      case 2:
        return fact('planned-work', number, subject);
      case 3:
        return fact('claim-opened', number, onClaim(claim), { strikeId: uuid(n) });
      case 4:
        return fact('packet-frozen', number, onClaim(claim), { revision: 1 + (number % 3) });
      case 5:
        return fact('demand-sent', number, onClaim(claim));
      default:
        return fact('hydrant-model', number, onUtility, { modelId: `M-${claim}`, name: `Name ${n}` });
    }
  },
);
const inspections = making(
  fc.record({ hydrantId: hydrant, inspectedAt: minute }),
  (number, { hydrantId, inspectedAt }) => fact('inspection', number, onHydrant(hydrantId), { inspectedAt }),
);

type Steps = BodyOf<'repair'>['steps'];
/** How somebody who would rather not have it known puts a repair's steps right. */
function tidy(steps: Steps, how: string): Steps {
  switch (how) {
    case 'all-at-once':
      return steps.map((each) => ({ ...each, doneAt: at(0) }));
    case 'nothing-opened':
      return steps.filter(({ step }) => !['taken-down', 'top-opened', 'dug'].includes(step));
    case 'steps-lost':
      return [];
    default:
      return steps;
  }
}

/** Replaces or withdraws something earlier; the replacement often names another hydrant or another strike. */
const corrections: fc.Arbitrary<Making> = fc
  .record({
    aim: fc.nat(),
    withdraw: fc.boolean(),
    hydrantId: hydrantOrNone,
    n: strikeNumber,
    wrongKind: fc.boolean(),
    minute,
    tidied: fc.constantFrom('not', 'all-at-once', 'nothing-opened', 'steps-lost'),
  })
  .map(({ aim, withdraw, hydrantId, n, wrongKind, minute: when, tidied }) => (number, before) => {
    const target = before[aim % Math.max(before.length, 1)];
    if (target === undefined) return fact('inspection', number, onHydrant('A'));
    const old =
      target.kind === 'correction' ? target.body.replacement : (target.body as Record<string, unknown>);
    const replacement =
      withdraw || old === null
        ? null
        : {
            ...old,
            ...('hydrantId' in old ? { hydrantId } : {}),
            ...('sameAsStrikeId' in old ? { sameAsStrikeId: uuid(n) } : {}),
            ...('steps' in old ? { steps: tidy(old['steps'] as Steps, tidied) } : {}),
          };
    const made = correction(number, target, replacement, { occurredAt: when });
    // Now and then one that names the wrong kind: it must change nothing.
    return wrongKind && aim % 7 === 0 && target.kind !== 'correction'
      ? { ...made, body: { ...made.body, targetKind: 'planned-work' satisfies FactKind } }
      : made;
  });

const anyMaking = fc.oneof(
  { arbitrary: strikes, weight: 5 },
  { arbitrary: repairs, weight: 3 },
  { arbitrary: returns, weight: 4 },
  { arbitrary: goodReturns, weight: 4 },
  { arbitrary: valveTurns, weight: 2 },
  { arbitrary: links, weight: 3 },
  { arbitrary: corrections, weight: 5 },
  { arbitrary: outages, weight: 2 },
  { arbitrary: expected, weight: 1 },
  { arbitrary: flowTests, weight: 1 },
  { arbitrary: inspections, weight: 1 },
  { arbitrary: others, weight: 2 },
);

/**
 * A random night's submissions, with ids from 1000 up. Rival corrections of one target are left out, as the ledger
 * would refuse them.
 */
export function randomSubmissions(maxLength = 14): fc.Arbitrary<readonly Submission[]> {
  return fc
    .array(fc.tuple(anyMaking, fc.boolean()), { minLength: 1, maxLength, size: 'max' })
    .map((makings) => {
      const made: Submission[] = [];
      const corrected = new Set<string>();
      makings.forEach(([make, trial], index) => {
        const one = make(1000 + index, made);
        if (one.kind === 'correction') {
          if (corrected.has(one.body.targetId)) return;
          corrected.add(one.body.targetId);
        }
        // One in some is a trial, which must stay out of everything.
        made.push(trial && index % 9 === 8 ? { ...one, test: true } : one);
      });
      return made;
    });
}

const resultOrNone = fc.constantFrom(
  ...Array.from({ length: 9 }, () => 'passed' as const),
  'deferred' as const,
  'failed' as const,
  null,
);
const late = fc.integer({ min: 25, max: 45 }).map(at);
/** A return of strike 1 in which each proof is passed as a rule, and now and then put off, failed or left out. */
const closeReturns = making(
  fc.record({
    returnedAt: late,
    results: fc.tuple(...proofs.map(() => fc.record({ result: resultOrNone, at: late }))),
    inTime: fc.boolean(),
    reopened: fc.boolean(),
  }),
  (number, { returnedAt, results, inTime, reopened }) =>
    fact('return-to-service', number, onStrike(1), {
      closes: [uuid(1)],
      returnedAt,
      proofs: results.flatMap(({ result, at: shownAt }, index) => {
        const proof = proofs[index];
        if (result === null || proof === undefined) return [];
        return [
          {
            proof,
            result,
            at: inTime ? returnedAt : shownAt,
            byWorkerId: 'w-7',
            deferredReason: result === 'deferred' ? 'No water to spare' : null,
            deferredByWorkerId: result === 'deferred' ? 'w-9' : null,
          },
        ];
      }),
      valvesReopened: reopened
        ? ['V-1', 'V-2'].map((valveId) => ({ valveId, at: returnedAt, byWorkerId: 'w-7' }))
        : [],
    }),
);
const closeRepairs = making(
  fc.record({
    reassembledAt: fc.option(minute, { freq: 6 }),
    opened: fc.constantFrom(null, null, 'taken-down', 'top-opened', 'main-opened', 'old-hydrant-out'),
    openedAt: minute,
  }),
  (number, { reassembledAt, opened, openedAt }) =>
    fact('repair', number, onStrike(1), {
      reassembledAt,
      completedAt: reassembledAt,
      steps: opened === null ? [] : [{ step: opened, doneAt: openedAt, byWorkerId: 'w-7', note: null }],
    }),
);
const closeTurns = making(
  fc.record({ action: fc.constantFrom('closed' as const, 'reopened' as const), turnedAt: minute }),
  (number, { action, turnedAt }) =>
    fact('valve-operation', number, onStrike(1), { valveId: 'V-1', action, at: turnedAt }),
);

/** One strike of one hydrant, close up: repairs, valves, returns and corrections of them that touch nothing else. */
export function oneStrike(): fc.Arbitrary<readonly Submission[]> {
  const more = fc.array(
    fc.oneof(
      { arbitrary: closeRepairs, weight: 3 },
      { arbitrary: closeReturns, weight: 5 },
      { arbitrary: closeTurns, weight: 2 },
      { arbitrary: corrections, weight: 2 },
    ),
    { minLength: 1, maxLength: 6, size: 'max' },
  );
  return fc.tuple(hydrant, more).map(([hydrantId, makings]) => {
    const made: Submission[] = [
      fact('strike', 1000, onStrike(1), {
        hydrantId,
        struckAt: at(0),
        struckAtBasis: 'witnessed',
        arrivedAt: null,
        waterShutAt: null,
      }),
    ];
    const corrected = new Set<string>();
    makings.forEach((make, index) => {
      const one = make(1001 + index, made);
      if (one.kind === 'inspection') return;
      if (one.kind === 'correction') {
        if (corrected.has(one.body.targetId)) return;
        corrected.add(one.body.targetId);
      }
      made.push(one);
    });
    return made;
  });
}
