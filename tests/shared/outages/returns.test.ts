import { describe, expect, it } from 'vitest';
import type { Hydrant } from '../../../shared/inventory/hydrant.ts';
import { proofsAfterRepair, type Proof } from '../../../shared/outages/proofs.ts';
import type { Hold } from '../../../shared/outages/returnEffect.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { project } from '../../../shared/projections/project.ts';
import { at, correction, fact, onStrike, recorded, uuid } from '../../support/submissions.ts';
import {
  allShown,
  out,
  repaired,
  returned,
  shown,
  struck,
  told,
  turned,
  type Result,
} from '../../support/tell.ts';

/**
 * When a return to service takes effect. Expected answers: issue 2 ("a hydrant is in service only when no outage of it
 * is open") and design decision 7 (every proof for that type of hydrant after the last reassembly, every closed valve
 * reopened, an exception by name with a reason). Which proofs each type needs: common practice, no source.
 */
const proofs = proofsAfterRepair('dry-barrel');
const without = (...names: readonly Proof[]) =>
  proofs.filter((proof) => !names.includes(proof)).map((proof) => shown(proof, 299));
const only = (proof: Proof, ...results: readonly (readonly [number, Result])[]) => [
  ...without(proof),
  ...results.map(([minute, result]) => shown(proof, minute, result)),
];

interface Row {
  readonly name: string;
  readonly given: readonly Submission[];
  readonly type?: Hydrant['type'];
  /** Null: it takes effect. */
  readonly holds: readonly Hold[] | null;
  /** Its own valve keeps it out although the return stands. */
  readonly valveShut?: boolean;
}

const s = struck(1, 0);
const whole = returned([1], 300);
const rows: readonly Row[] = [
  { name: 'every proof, no repair recorded', given: [s, whole], holds: null },
  { name: 'every proof after the reassembly', given: [s, repaired(1, 200), whole], holds: null },
  { name: 'a proof in the very minute of the reassembly', given: [s, repaired(1, 299), whole], holds: null },
  {
    name: 'one proof missing',
    given: [s, returned([1], 300, { proofs: without('flow-test') })],
    holds: [{ code: 'proof-missing', proof: 'flow-test' }],
  },
  {
    name: 'no proof at all: every one is named',
    given: [s, returned([1], 300, { proofs: [] })],
    holds: proofs.map((proof) => ({ code: 'proof-missing', proof })),
  },
  {
    name: 'one proof failed',
    given: [s, returned([1], 300, { proofs: only('no-leaks', [299, 'failed']) })],
    holds: [{ code: 'proof-failed', proof: 'no-leaks' }],
  },
  {
    name: 'failed, then passed',
    given: [s, returned([1], 300, { proofs: only('no-leaks', [280, 'failed'], [299, 'passed']) })],
    holds: null,
  },
  {
    name: 'passed, then failed, however they are listed',
    given: [s, returned([1], 300, { proofs: only('no-leaks', [299, 'failed'], [280, 'passed']) })],
    holds: [{ code: 'proof-failed', proof: 'no-leaks' }],
  },
  {
    name: 'put off by name',
    given: [s, repaired(1, 200), returned([1], 300, { proofs: only('flow-test', [299, 'deferred']) })],
    holds: null,
  },
  {
    name: 'return before the reassembly: proofs were of a hydrant that was opened again',
    given: [s, repaired(1, 350), whole],
    holds: proofs.map((proof) => ({ code: 'proof-before-reassembly', proof })),
  },
  {
    name: 'back before one of its own proofs: until then nobody knew',
    given: [s, returned([1], 300, { proofs: only('no-leaks', [330, 'passed']) })],
    holds: [{ code: 'proof-after-return', proof: 'no-leaks' }],
  },
  {
    name: 'back in the very minute of its last proof',
    given: [s, returned([1], 300, { proofs: only('no-leaks', [300, 'passed']) })],
    holds: null,
  },
  {
    name: 'put off by name only after the return',
    given: [s, returned([1], 300, { proofs: only('flow-test', [310, 'deferred']) })],
    holds: [{ code: 'proof-after-return', proof: 'flow-test' }],
  },
  {
    name: 'no repair recorded, and one proof from before the strike',
    given: [s, returned([1], 300, { proofs: only('drains-down', [-30, 'passed']) })],
    holds: [{ code: 'proof-before-outage', proof: 'drains-down' }],
  },
  {
    name: 'one proof older than the reassembly',
    given: [s, repaired(1, 250), returned([1], 300, { proofs: only('drains-down', [240, 'passed']) })],
    holds: [{ code: 'proof-before-reassembly', proof: 'drains-down' }],
  },
  {
    name: 'the last of several reassemblies counts',
    given: [s, repaired(1, 100), repaired(1, 250), returned([1], 300, { proofs: allShown(200) })],
    holds: proofs.map((proof) => ({ code: 'proof-before-reassembly', proof })),
  },
  {
    name: 'taken down and never recorded closed up',
    given: [s, repaired(1, null, { steps: [['taken-down', 100]] }), whole],
    holds: [{ code: 'repair-still-open' }],
  },
  {
    name: 'taken down again after the reassembly',
    given: [s, repaired(1, 100), repaired(1, null, { steps: [['top-opened', 150]] }), whole],
    holds: [{ code: 'repair-still-open' }],
  },
  {
    name: 'a valve closed and not reopened',
    given: [s, turned('V-1', 'closed', 20), whole],
    holds: [{ code: 'valve-still-closed', valveId: 'V-1' }],
  },
  {
    name: 'every closed valve is named',
    given: [s, turned('V-1', 'closed', 20), turned('V-2', 'closed', 21, 'A'), whole],
    holds: ['V-1', 'V-2'].map((valveId) => ({ code: 'valve-still-closed', valveId })),
  },
  {
    name: 'reopened on the return itself',
    given: [s, turned('V-1', 'closed', 20), returned([1], 300, { reopened: [['V-1', 290]] })],
    holds: null,
  },
  {
    name: 'reopened on the hydrant’s own page',
    given: [s, turned('V-1', 'closed', 20), turned('V-1', 'reopened', 290, 'A'), whole],
    holds: null,
  },
  {
    name: 'reopened a little after the return was typed',
    given: [s, turned('V-1', 'closed', 20), turned('V-1', 'reopened', 305), whole],
    holds: null,
  },
  {
    name: 'reopened and closed again before the return',
    given: [
      s,
      turned('V-1', 'closed', 20),
      turned('V-1', 'reopened', 100),
      turned('V-1', 'closed', 200),
      whole,
    ],
    holds: [{ code: 'valve-still-closed', valveId: 'V-1' }],
  },
  {
    name: 'closed and reopened in one and the same minute: closed is the safe reading',
    given: [s, turned('V-1', 'reopened', 200), turned('V-1', 'closed', 200), whole],
    holds: [{ code: 'valve-still-closed', valveId: 'V-1' }],
  },
  {
    name: 'closed after the return: the return stands, and its own valve keeps the hydrant out',
    given: [s, turned('V-1', 'closed', 400), whole],
    holds: null,
    valveShut: true,
  },
  {
    name: 'proven in the very minute that a device dated the report in, to the second',
    given: [
      {
        ...s,
        occurredAt: '2026-03-04T02:00:31.500Z',
        body: {
          ...s.body,
          struckAt: null,
          struckAtBasis: 'unknown',
          reportedBy: { ...s.body.reportedBy, reportedAt: null },
          arrivedAt: null,
        },
      },
      returned([1], 0, { proofs: allShown(0) }),
    ],
    holds: null,
  },
  {
    name: 'dated before the strike it ends',
    given: [s, returned([1], -30, { proofs: allShown(200) })],
    holds: [{ code: 'return-before-outage' }],
  },
  {
    name: 'everything put off, and that before the strike',
    given: [s, returned([1], 300, { proofs: only('flow-test', [-30, 'deferred']) })],
    holds: [{ code: 'proof-before-outage', proof: 'flow-test' }],
  },
  {
    name: 'failed and passed in one and the same minute: failed is the safe reading',
    given: [s, returned([1], 300, { proofs: only('no-leaks', [299, 'failed'], [299, 'passed']) })],
    holds: [{ code: 'proof-failed', proof: 'no-leaks' }],
  },
  {
    name: 'opened up again after the return and not closed since',
    given: [s, repaired(1, 100), repaired(1, null, { steps: [['taken-down', 350]] }), whole],
    holds: [{ code: 'repair-still-open' }],
  },
  {
    name: 'a wet barrel does not drain down',
    given: [s, returned([1], 300, { proofs: without('drains-down') })],
    type: 'wet-barrel',
    holds: null,
  },
  {
    name: 'a wet barrel needs its flow test all the same',
    given: [s, returned([1], 300, { proofs: without('drains-down', 'flow-test') })],
    type: 'wet-barrel',
    holds: [{ code: 'proof-missing', proof: 'flow-test' }],
  },
  {
    name: 'a plugged drain, pumped out instead (AWWA M17, from memory)',
    given: [
      s,
      repaired(1, 200),
      returned([1], 300, { proofs: [...without('drains-down'), shown('pumped-out', 299)] }),
    ],
    holds: null,
  },
  {
    name: 'does not drain, and is pumped out then: the later word counts',
    given: [
      s,
      returned([1], 300, { proofs: [...only('drains-down', [280, 'failed']), shown('pumped-out', 299)] }),
    ],
    holds: null,
  },
  {
    name: 'pumped out before it was last closed up',
    given: [
      s,
      repaired(1, 250),
      returned([1], 300, {
        proofs: [...without('drains-down').map((each) => ({ ...each })), shown('pumped-out', 240)],
      }),
    ],
    holds: [{ code: 'proof-before-reassembly', proof: 'drains-down' }],
  },
  {
    name: 'pumping out put off: nobody may',
    given: [
      s,
      returned([1], 300, { proofs: [...without('drains-down'), shown('pumped-out', 299, 'deferred')] }),
    ],
    holds: [{ code: 'proof-not-deferrable', proof: 'drains-down' }],
  },
  ...(['no-leaks', 'opens-and-closes-fully', 'drains-down'] as const).map((proof) => ({
    name: `put off by name, and not the flow test: ${proof}`,
    given: [s, returned([1], 300, { proofs: only(proof, [299, 'deferred']) })],
    holds: [{ code: 'proof-not-deferrable' as const, proof }],
  })),
  {
    name: 'the main opened and nothing said of its disinfection (AWWA C651, from memory)',
    given: [s, repaired(1, 200, { steps: [['main-opened', 150]] }), whole],
    holds: [{ code: 'proof-missing', proof: 'disinfected' }],
  },
  {
    name: 'the main opened and disinfected',
    given: [
      s,
      repaired(1, 200, { steps: [['main-opened', 150]] }),
      returned([1], 300, { proofs: [...allShown(299), shown('disinfected', 299)] }),
    ],
    holds: null,
  },
  {
    name: 'the old hydrant lifted out and never recorded closed up',
    given: [s, repaired(1, null, { steps: [['old-hydrant-out', 100]] }), whole],
    holds: [{ code: 'repair-still-open' }],
  },
  {
    name: 'an unknown type is held to the longer list',
    given: [s, returned([1], 300, { proofs: without('drains-down') })],
    type: 'unknown',
    holds: [{ code: 'proof-missing', proof: 'drains-down' }],
  },
];

describe('a return to service after a strike', () => {
  it.each(rows)('$name', ({ given, type, holds, valveShut }) => {
    for (const order of [given, [...given].reverse()]) {
      const now = told(order, type);
      const [effect] = now.strike(1)?.returns ?? [];
      expect(effect?.holds).toEqual(holds ?? []);
      expect(effect?.takesEffect).toBe(holds === null);
      expect(now.hydrant()?.inService).toBe(holds === null && valveShut !== true);
      expect(now.strike(1)?.returnedAt).toBe(holds === null ? effect?.returnedAt : null);
      expect(now.hydrant()?.open[0]?.heldReturns ?? []).toEqual(holds === null ? [] : [effect]);
    }
  });

  it('that put a proof off says which, why and by whom, wherever the record shows', () => {
    const now = told([s, returned([1], 300, { proofs: only('flow-test', [299, 'deferred']) })]);
    const deferred = [{ proof: 'flow-test', reason: 'No water to spare tonight', byWorkerId: 'w-9' }];
    expect(now.strike(1)?.deferred).toEqual(deferred);
    expect(now.hydrant()?.past[0]?.deferred).toEqual(deferred);
  });

  it('after pumping out says so, so that whoever uses the hydrant pumps it again', () => {
    const pumped = [...without('drains-down'), shown('pumped-out', 299)];
    expect(told([s, returned([1], 300, { proofs: pumped })]).strike(1)?.pumped).toEqual({
      at: at(299),
      byWorkerId: 'w-7',
    });
    expect(told([s, whole]).strike(1)?.pumped).toBeUndefined();
  });

  it('does not stand beside one of the very same time that records a failure, whichever was typed first', () => {
    const failed = returned([1], 300, { proofs: [shown('no-leaks', 299, 'failed')] });
    for (const order of [
      [s, whole, failed],
      [s, failed, returned([1], 300)],
    ])
      expect(told(order).open).toEqual([1]);
  });

  it('is reopened by a repair that arrives late, and closed by a return after that', () => {
    expect(told([s, repaired(1, 200), whole]).open).toEqual([]);
    const reopened = [s, repaired(1, 200), whole, repaired(1, 400)];
    expect(told(reopened)).toMatchObject({ open: [1] });
    const again = told([...reopened, returned([1], 500)]);
    expect(again.open).toEqual([]);
    expect(again.strike(1)?.returns.map(({ takesEffect }) => takesEffect)).toEqual([false, true]);
    expect(again.strike(1)?.returnedAt).toBe(returned([1], 500).body.returnedAt);
  });

  it('that is withdrawn leaves the hydrant out', () => {
    expect(told([s, whole, correction(900, whole, null)])).toMatchObject({ open: [1] });
  });

  it('that names no outage of this hydrant ends nothing', () => {
    expect(told([s, returned([77], 300, { on: 1 })])).toMatchObject({ open: [1] });
  });

  it('every type of hydrant needs at least no leaks, full opening and a flow test', () => {
    for (const type of ['dry-barrel', 'wet-barrel', 'underground', 'wall', 'standpipe', 'unknown'] as const)
      expect(proofsAfterRepair(type)).toEqual(
        expect.arrayContaining(['no-leaks', 'opens-and-closes-fully', 'flow-test']),
      );
  });
});

describe('an outage of another cause', () => {
  const opens = [shown('opens-and-closes-fully', 299)];

  it('takes the hydrant out, and a return that shows it to work puts it back', () => {
    expect(told([out(50, 0)])).toMatchObject({ open: [50] });
    expect(told([out(50, 0), returned([50], 300, { on: 'A', proofs: opens })]).open).toEqual([]);
  });

  it.each<[string, readonly Submission[], Hold]>([
    [
      'without any proof',
      [returned([50], 300, { on: 'A', proofs: [] })],
      { code: 'proof-missing', proof: 'opens-and-closes-fully' },
    ],
    [
      'with the proof failed',
      [returned([50], 300, { on: 'A', proofs: [shown('opens-and-closes-fully', 299, 'failed')] })],
      { code: 'proof-failed', proof: 'opens-and-closes-fully' },
    ],
    [
      'with a valve still closed',
      [turned('V-1', 'closed', 10, 'A'), returned([50], 300, { on: 'A', proofs: opens })],
      { code: 'valve-still-closed', valveId: 'V-1' },
    ],
    [
      'with a valve still closed that was shut before the outage was written down',
      [turned('V-1', 'closed', -5, 'A'), returned([50], 300, { on: 'A', proofs: opens })],
      { code: 'valve-still-closed', valveId: 'V-1' },
    ],
  ])('is held %s', (_name, more, hold) => {
    const now = told([out(50, 0), ...more]);
    expect(now.open).toEqual([50]);
    expect(now.hydrant()?.open[0]?.heldReturns[0]?.holds).toEqual([hold]);
  });

  it('beside a strike: both must end', () => {
    const both = [s, out(50, 10)];
    expect(told(both).open).toEqual([1, 50]);
    expect(told([...both, whole]).open).toEqual([50]);
    expect(told([...both, returned([50], 300, { on: 'A', proofs: opens })]).open).toEqual([1]);
    expect(told([...both, returned([1, 50], 300)]).open).toEqual([]);
  });

  it('its proof is not enough for a strike that the same return closes', () => {
    const now = told([s, out(50, 10), returned([1, 50], 300, { proofs: opens })]);
    expect(now.open).toEqual([1]);
  });
});

describe('what is dated later than it was recorded', () => {
  // A clock that is ten minutes ahead is a clock; more is a date that nobody can have seen.
  const nowAt = (minutes: number, ...given: readonly Submission[]) => {
    const records = given.map((submission) =>
      recorded(submission, submission.kind === 'return-to-service' ? at(minutes) : undefined),
    );
    return project(records, () => 'dry-barrel').hydrants.find(({ hydrantId }) => hydrantId === 'A');
  };
  it('a return that is still to come ends nothing', () => {
    expect(nowAt(300, s, whole)?.inService).toBe(true);
    const early = nowAt(200, s, whole);
    expect(early?.inService).toBe(false);
    expect(early?.open[0]?.heldReturns[0]?.holds.map(({ code }) => code)).toContain('return-not-yet');
    expect(early?.open[0]?.heldReturns[0]?.holds.map(({ code }) => code)).toContain('proof-not-yet');
  });

  it('a valve that will be reopened is shut', () => {
    const closed = turned('V-1', 'closed', 20);
    const later = turned('V-1', 'reopened', 10_000);
    const records = [s, closed, whole].map((submission) => recorded(submission));
    const states = (reopening: Submission, recordedAt?: string) =>
      project([...records, recorded(reopening, recordedAt)], () => 'dry-barrel').hydrants.find(
        ({ hydrantId }) => hydrantId === 'A',
      )?.inService;
    expect(states(later, at(310))).toBe(false);
    expect(states(turned('V-1', 'reopened', 305), at(310))).toBe(true);
  });
});

it('a link to an old strike that was returned does not end a new one', () => {
  const again = struck(2, 60 * 24 * 6);
  const link = fact('link', 990, onStrike(2), { sameAsStrikeId: uuid(1) });
  const now = told([s, whole, again, link]);
  expect(now.hydrant()?.inService).toBe(false);
  expect(now.hydrant()?.open[0]?.heldReturns[0]?.holds.map(({ code }) => code)).toContain(
    'return-before-outage',
  );
});

it('a later return on which a proof failed takes back what the first one showed', () => {
  const failed = returned([1], 400, { proofs: only('no-leaks', [399, 'failed']) });
  const now = told([s, whole, failed]);
  expect(now.strike(1)?.returnedAt).toBeNull();
  expect(now.strike(1)?.returns.map(({ holds }) => holds.map(({ code }) => code))).toEqual([
    ['failed-since'],
    ['proof-failed'],
  ]);
});
