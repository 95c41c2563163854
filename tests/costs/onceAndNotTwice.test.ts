import { describe, expect, it } from 'vitest';
import { statementInput } from '../../shared/costs/statementInput.ts';
import { amounts, cost, labor, machine, noRates, noRecord, span, used, worked } from '../support/rates.ts';

/** Amounts by hand. */
const nine = '2026-03-03T15:00:00Z';
const codes = (found: { readonly problems: readonly { readonly code: string }[] }): string[] =>
  found.problems.map(({ code }) => code);

describe('time on the claim, where an ordinance allows it', () => {
  const rates = { labor: [labor('clerk', '50')], claimHandling: { authorityId: 'a' } };
  const repair = { crew: [worked('w-1', 'clerk', [span(nine, 120)], [span('2026-03-03T16:30:00Z', 15)])] };
  const handled = (minutes: number, workerId = 'w-1') => ({
    claimHandling: [
      { ...noRecord, submissionId: 'c-1', crew: [worked(workerId, 'clerk', [span(nine, minutes)])] },
    ],
  });

  it('leaves out what the same person worked on the hydrant then, and says so', () => {
    // 9:00 to 11:30 on the claim; 9:00 to 11:00 less a quarter was on the hydrant: 45 min are left.
    const statement = cost(repair, rates, handled(150));
    expect(amounts(statement, 'labor')).toEqual([87_50]);
    expect(amounts(statement, 'claim-handling')).toEqual([37_50]);
    expect(statement.problems).toEqual([
      { code: 'work-claimed-twice', path: 'c-1', params: { workerId: 'w-1', time: '1 h 45 min' } },
    ]);
  });

  it('is nobody else’s', () => {
    const statement = cost(repair, rates, handled(60, 'w-2'));
    expect(amounts(statement, 'claim-handling')).toEqual([50_00]);
    expect(statement.problems).toEqual([]);
  });
});

describe('a flow test', () => {
  const rates = { flowTest: { eachUsd: '100', authorityId: 'a' } };
  const test = (submissionId: string, testedAt: string) =>
    ({ submissionId, testedAt, purpose: 'after-repair' }) as const;

  it('that two people recorded is one', () => {
    const statement = cost({}, rates, {
      flowTests: [test('f-1', nine), test('f-2', '2026-03-03T15:00:00.000Z')],
    });
    expect(amounts(statement, 'flow-test')).toEqual([100_00]);
    expect(statement.problems).toEqual([{ code: 'flow-test-recorded-twice', path: 'f-1 f-2', params: {} }]);
  });

  it('and another one are two', () => {
    const statement = cost({}, rates, {
      flowTests: [test('f-1', nine), test('f-2', '2026-03-03T16:00:00Z')],
    });
    expect(amounts(statement, 'flow-test')).toEqual([200_00]);
    expect(statement.problems).toEqual([]);
  });
});

it('a credit that is more than the cost says what of it is taken off', () => {
  const credit = { submissionId: 'c-1', title: 'Salvage', amountCents: 99_00, arithmetic: '-$99.00' };
  const { lines } = cost(
    { crew: [worked('w-1', 'clerk', [span(nine, 60)])] },
    { labor: [labor('clerk', '50')] },
    { credits: [credit] },
  );
  expect(lines.at(-1)).toMatchObject({ amountCents: -50_00, arithmetic: '-$99.00 → -$50.00' });
});

it('a machine by the mile whose rate holds its operator is doubtful without hours to take out of labor', () => {
  const truck = { ...machine('truck', 'mile', '2'), includes: ['operator' as const] };
  const driven = (inUse: ReturnType<typeof span>[]) =>
    codes(
      cost(
        { machines: [used('truck', inUse, { drivenMiles: 20, operatorWorkerId: 'w-1' })] },
        { machines: [truck] },
      ),
    );
  expect(driven([])).toEqual(['operator-hours-not-recorded']);
  expect(driven([span(nine, 60)])).toEqual([]);
});

it('two editions of one id are refused: their lines would be taken for one rate', () => {
  const edition = (effectiveFrom: string, hourlyUsd: string) => ({
    ...noRates,
    effectiveFrom,
    labor: [labor('clerk', hourlyUsd)],
  });
  const asked = statementInput.safeParse({
    rateBook: [edition('2026-01-01', '10'), edition('2026-03-03', '1000')],
    work: { timeZone: 'America/Chicago', struckAt: nine },
  });
  expect(asked.success).toBe(false);
  expect(JSON.stringify(asked.error?.issues)).toContain('listed-twice');
});
