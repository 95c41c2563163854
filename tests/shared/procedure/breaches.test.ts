import { describe, expect, it } from 'vitest';
import type { ProcedureStep } from '../../../shared/procedure/steps.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { correction, fact, onStrike } from '../../support/submissions.ts';
import { repaired, returned, struck, told, turned } from '../../support/tell.ts';

/** What each hold point waits for: issue 6 and design decision 7; the excavation by 29 CFR 1926.651(b) and .652. */
type Steps = readonly (readonly [ProcedureStep, number])[];
const s = struck(1, 0);
const safe: Steps = [
  ['isolated', 10],
  ['pressure-gone', 11],
  ['drained', 12],
];
const breachesOf = (given: readonly Submission[], type?: Parameters<typeof told>[1]) =>
  [given, [...given].reverse()].map((order) =>
    (told(order, type).strike(1)?.breaches ?? []).map(({ code, step, missing, corrected }) => ({
      code,
      step,
      missing,
      ...(corrected ? { corrected: corrected.reason } : {}),
    })),
  );
const expectBreaches = (
  given: readonly Submission[],
  expected: readonly unknown[],
  type?: Parameters<typeof told>[1],
) => {
  for (const shown of breachesOf(given, type)) expect(shown).toEqual(expected);
};
const job = (steps: Steps) => repaired(1, null, { steps });

describe('opening up', () => {
  it.each(['taken-down', 'top-opened', 'old-hydrant-out'] as const)('%s waits for all three', (step) => {
    expectBreaches([s, job([...safe, [step, 20]])], []);
    expectBreaches(
      [s, job([...safe.slice(0, 1), [step, 20]])],
      [
        {
          code: step === 'taken-down' ? 'take-down-before-safe' : 'opened-before-safe',
          step,
          missing: ['pressure-gone', 'drained'],
        },
      ],
    );
  });

  it('counts confirmations of another record and of the very same minute, and none of later', () => {
    expectBreaches([s, job(safe), job([['taken-down', 20]])], []);
    expectBreaches([s, job([...safe, ['taken-down', 12]])], []);
    expectBreaches(
      [s, job([...safe, ['taken-down', 11]])],
      [{ code: 'take-down-before-safe', step: 'taken-down', missing: ['drained'] }],
    );
  });

  it('of a plugged drain takes it as pumped out', () => {
    expectBreaches([s, job([...safe.slice(0, 2), ['pumped-out', 15], ['taken-down', 20]])], []);
  });

  it('of a wet barrel waits for no drain', () => {
    const steps: Steps = [...safe.slice(0, 2), ['taken-down', 20]];
    expectBreaches([s, job(steps)], [], 'wet-barrel');
    expectBreaches(
      [s, job(steps)],
      [{ code: 'take-down-before-safe', step: 'taken-down', missing: ['drained'] }],
      'unknown',
    );
  });

  it('of the main waits for isolation and loss of pressure', () => {
    expectBreaches([s, job([...safe.slice(0, 2), ['main-opened', 20]])], []);
    expectBreaches(
      [s, job([['main-opened', 20]])],
      [{ code: 'main-opened-before-safe', step: 'main-opened', missing: ['isolated', 'pressure-gone'] }],
    );
  });
});

describe('water let in again', () => {
  const first: Steps = [...safe, ['taken-down', 20], ['refilled-slowly', 60]];
  const again = [
    { code: 'take-down-before-safe', step: 'taken-down', missing: ['isolated', 'pressure-gone', 'drained'] },
  ];

  it('by a refill undoes what was confirmed before it', () => {
    expectBreaches([s, job(first), job([['taken-down', 90]])], again);
    const anew: Steps = [
      ['isolated', 70],
      ['pressure-gone', 71],
      ['drained', 72],
    ];
    expectBreaches([s, job(first), job([...anew, ['taken-down', 90]])], []);
  });

  it('by a valve that had stopped it undoes it too, wherever the turn is recorded', () => {
    const shut = turned('V-1', 'closed', 5);
    const take = job([...safe, ['taken-down', 90]]);
    expectBreaches([s, shut, take], []);
    for (const opened of [
      turned('V-1', 'reopened', 40),
      turned('V-1', 'reopened', 40, 'A'),
      returned([1], 50, { reopened: [['V-1', 40]] }),
    ])
      expectBreaches([s, shut, opened, take], again);
    // After the take-down it is the ordinary refill.
    expectBreaches([s, shut, turned('V-1', 'reopened', 95), take], []);
  });

  it('by a valve that stopped nothing undoes nothing', () => {
    const other = (action: 'closed' | 'reopened', minute: number) => {
      const one = turned('V-9', action, minute);
      return { ...one, body: { ...one.body, valve: 'main-line' as const, waterShut: 'no' as const } };
    };
    expectBreaches([s, other('closed', 5), other('reopened', 40), job([...safe, ['taken-down', 90]])], []);
  });

  it('in the minute in which everything was ticked at once is no breach', () => {
    expectBreaches(
      [
        s,
        job([
          ['isolated', 30],
          ['pressure-gone', 30],
          ['drained', 30],
          ['taken-down', 30],
          ['refilled-slowly', 30],
        ]),
      ],
      [],
    );
  });
});

describe('a dig', () => {
  const dig = (steps: Steps, ticket: string | null, number = 700) =>
    fact('repair', number, onStrike(1), {
      ...job(steps).body,
      ...(ticket === null ? {} : { dig: { locateTicket: ticket } }),
    });
  const ground: Steps = [
    ['locate-ticket', 5],
    ['dug', 20],
    ['trench-protected', 25],
    ['in-excavation', 30],
  ];

  it('waits for a locate ticket with its number, and the trench for its protection', () => {
    expectBreaches([s, dig(ground, 'LT-26-0417')], []);
    const noTicket = [{ code: 'dug-before-locate', step: 'dug', missing: ['locate-ticket'] }];
    expectBreaches([s, dig(ground, null)], noTicket);
    expectBreaches([s, dig(ground.slice(1), 'LT-26-0417')], noTicket);
    expectBreaches(
      [s, dig([...ground.slice(0, 2), ['in-excavation', 24], ['trench-protected', 25]], 'LT-26-0417')],
      [{ code: 'entered-before-protected', step: 'in-excavation', missing: ['trench-protected'] }],
    );
  });

  it('takes the number from any record of the strike', () => {
    expectBreaches([s, dig(ground.slice(0, 1), 'LT-26-0417'), dig(ground.slice(1), null, 701)], []);
  });
});

describe('a correction', () => {
  const bad = job([['taken-down', 20]]);
  const good = { ...bad.body, steps: job([...safe, ['taken-down', 20]]).body.steps };
  const was = {
    code: 'take-down-before-safe',
    step: 'taken-down',
    missing: ['isolated', 'pressure-gone', 'drained'],
    corrected: 'Typed in the dark',
  };

  it('puts the record right and leaves the breach told, with who corrected it and why', () => {
    expectBreaches([s, bad, correction(900, bad, good)], [was]);
    const [breach] = told([s, bad, correction(900, bad, good)]).strike(1)?.breaches ?? [];
    expect(breach?.corrected).toMatchObject({ byPersonId: 'w-7', reason: 'Typed in the dark' });
  });

  it('that withdraws the record leaves it told too', () => {
    expectBreaches([s, bad, correction(900, bad, null)], [was]);
  });

  it('that takes the step out leaves it told, through a chain of corrections', () => {
    const first = correction(900, bad, { ...bad.body, steps: [] });
    expectBreaches([s, bad, first, correction(901, first, good)], [was]);
  });

  it('that leaves it standing is told once', () => {
    const { corrected: _corrected, ...stands } = was;
    expectBreaches([s, bad, correction(900, bad, { ...bad.body, note: 'Cold night' })], [stands]);
  });

  it('of what was right tells nothing', () => {
    const right = job([...safe, ['taken-down', 20]]);
    expectBreaches([s, right, correction(900, right, null)], []);
  });
});
