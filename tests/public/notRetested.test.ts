import { describe, expect, test } from 'vitest';
import type { Outage } from '../../shared/outages/hydrantStatus.ts';
import type { Proof } from '../../shared/outages/proofs.ts';
import { notRetested } from '../../shared/public/notRetested.ts';
import { anOutage, aStatus } from '../support/town.ts';

const ended = (id: string, endedAt: string, cause: string, ...deferred: Proof[]): Outage =>
  anOutage(id, {
    endedAt,
    cause,
    deferred: deferred.map((proof) => ({ proof, reason: 'r', byWorkerId: 'w' })),
  });

const early = '2026-01-10T12:00:00Z';
const late = '2026-02-10T12:00:00Z';

// Common practice, no source: a proof that was put off is owed until the same proof is passed.
const cases: readonly [string, Outage[], string[], readonly string[] | null][] = [
  ['nothing put off', [ended('a', early, 'strike')], [], null],
  ['a flow test put off', [ended('a', early, 'strike', 'flow-test')], [], ['flow-test']],
  [
    'two proofs put off',
    [ended('a', early, 'strike', 'flow-test', 'drains-down')],
    [],
    ['drains-down', 'flow-test'],
  ],
  ['a flow test since', [ended('a', early, 'strike', 'flow-test')], [late], null],
  ['a flow test from before', [ended('a', late, 'strike', 'flow-test')], [early], ['flow-test']],
  [
    'a flow test says nothing of the drain',
    [ended('a', early, 'strike', 'drains-down')],
    [late],
    ['drains-down'],
  ],
  [
    'a later repair with every proof',
    [ended('a', early, 'strike', 'drains-down'), ended('b', late, 'strike')],
    [],
    null,
  ],
  [
    'a later outage of another cause proves only that it opens and closes',
    [ended('a', early, 'strike', 'drains-down', 'opens-and-closes-fully'), ended('b', late, 'main-shut')],
    [],
    ['drains-down'],
  ],
  [
    'listed in any order, folded in time order',
    [ended('b', late, 'strike'), ended('a', early, 'strike', 'flow-test')],
    [],
    null,
  ],
  ['out again', [ended('a', early, 'strike', 'flow-test'), anOutage('b')], [], null],
];

describe('proofs still owed', () => {
  test.each(cases)('%s', (_, outages, tests, expected) => {
    const owed = notRetested(aStatus('H-1', outages), 'dry-barrel', tests);
    expect(owed?.proofs ?? null).toEqual(expected);
  });

  test('say since when: the earliest return that still owes', () => {
    const outages = [
      ended('a', early, 'strike', 'flow-test'),
      ended('b', late, 'strike', 'flow-test', 'no-leaks'),
    ];
    expect(notRetested(aStatus('H-1', outages), 'dry-barrel', [])?.returnedAt).toBe(early);
  });
});
