import { describe, expect, it } from 'vitest';
import { locales, sayProblem } from '../../shared/words/index.ts';
import { cost, fromStock, labor, machine, noRates, span, stock, used, worked } from '../support/rates.ts';
import { ruledRates } from '../support/payRules.ts';

const from = '2026-03-03T14:00:00Z';

/**
 * FEMA's schedule of equipment rates holds fuel ("all maintenance, field repairs, fuel, lubricants, tires"), so fuel is
 * not billed on top (2025 schedule, from the reference of costs).
 */
describe('fuel from stock', () => {
  const rates = {
    stock: [{ ...stock('DIESEL', '4.10'), fuel: true }, stock('KIT', '400.00')],
    machines: [
      { ...machine('truck', 'hour', '25.00'), includes: ['fuel' as const] },
      machine('saw', 'hour', '5.00'),
    ],
    materialHandling: { fraction: '0.10', authorityId: 'a' },
  };
  const job = (machineCode: string) =>
    cost(
      {
        parts: [fromStock('DIESEL', 8), fromStock('KIT', 1)],
        machines: [used(machineCode, [span(from, 60)])],
      },
      rates,
    );

  it('is not billed beside a machine whose rate holds it, bears no handling, and is noted', () => {
    const statement = job('truck');
    // 25 + 400 + 10 % of 400.
    expect(statement.totalCents).toBe(465_00);
    expect(statement.lines.map(({ item }) => item)).not.toContain('DIESEL');
    expect(statement.notes).toEqual([
      { code: 'fuel-in-machine-rate', path: 'r1', params: { partNumber: 'DIESEL', machines: 'truck' } },
    ]);
    for (const locale of locales) expect(sayProblem(locale, statement.notes[0]!)).toMatch(/DIESEL.*truck/);
  });

  it('is billed beside one whose rate does not', () => {
    // 5 + 8 × 4.10 + 400 + 10 % of 432.80.
    expect(job('saw').totalCents).toBe(5_00 + 32_80 + 400_00 + 43_28);
    expect(job('saw').notes).toEqual([]);
  });
});

describe('the paper behind premiums and minimums', () => {
  const papers = [
    ...noRates.authorities,
    { authorityId: 'pay', kind: 'labor-agreement' as const, title: 'Agreement', edition: '2026', page: '41' },
  ];

  it('stands on each labor line that is under pay rules', () => {
    const { lines } = cost(
      { crew: [worked('w', 'crew', [span('2026-03-02T21:00:00Z', 240)])] },
      { ...ruledRates({ authorityId: 'pay' }), authorities: papers },
    );
    expect(lines.length).toBeGreaterThan(1);
    for (const { payAuthority, authority } of lines) {
      expect(payAuthority).toEqual({
        kind: 'labor-agreement',
        title: 'Agreement',
        edition: '2026',
        page: '41',
      });
      expect(authority?.title).toBe('Resolution');
    }
  });

  it('is left out where there are no pay rules', () => {
    const { lines } = cost(
      { crew: [worked('w', 'crew', [span(from, 60)])] },
      { labor: [labor('crew', '40.00')], authorities: papers },
    );
    expect(lines[0]).not.toHaveProperty('payAuthority');
  });
});
