import { describe, expect, it } from 'vitest';
import { rules } from '../../shared/audit/objections.ts';
import type { AuditCase } from '../../shared/audit/case.ts';
import { amounts, bought, cost, labor, machine, noRecord, span, used, worked } from '../support/rates.ts';

/**
 * 23 CFR 645.117, the published standard for billing utility work, paragraph by paragraph (seen in the summary that the
 * project was given; the text of the CFR was not read for each). Amounts by hand, jobs invented. Those tried beside
 * published bills: (d), (e)(1), (h)(5) in costTariffs.test.ts; (e)(4) in costs.test.ts; (h)(1), (h)(2) in
 * counterCalculation.test.ts. (i)(2), one final bill within a year and records for three, is no arithmetic: it is a
 * clock that a utility sets.
 */
const monday = '2026-03-02T14:00:00Z';

describe('23 CFR 645.117', () => {
  it('(b): labor for the time worked, with the records that show it', () => {
    const statement = cost(
      [
        { crew: [worked('w-1', 'crew', [span(monday, 90)], [span('2026-03-02T14:30:00Z', 15)])] },
        { crew: [worked('w-1', 'crew', [span('2026-03-02T16:00:00Z', 60)])] },
      ],
      { labor: [labor('crew', '40.00')] },
    );
    // 1 h 30 min less a break of 15 min, and 1 h: 2.25 h × 40.
    expect(statement.lines[0]).toMatchObject({
      quantity: '2.25',
      hoursWorked: '2.25',
      amountCents: 90_00,
      submissionIds: ['r1', 'r2'],
    });
  });

  it('(c): surcharges on labor at the actual or the approved average rate', () => {
    // NYSEG v. Goettsche (seen): 28.48 % of 199.40 is the printed 56.79; the engine rounds the line once.
    const statement = cost(
      { crew: [worked('w-1', 'crew', [span(monday, 600)])] },
      { labor: [labor('crew', '19.94', '0.2848')] },
    );
    expect(statement.totalCents).toBe(199_40 + 56_79);
    expect(statement.lines[0]).toMatchObject({ rateUsd: '19.94', fraction: '0.2848' });
  });

  it('(e)(2): recovered material is credited; material of temporary use at its price less 10 percent', () => {
    // 412.00 × 0.90 = 370.80 comes back, 41.20 stays.
    const statement = cost(
      { parts: [bought('temporary hydrant', 1, 412_00)] },
      {},
      {
        credits: [
          {
            submissionId: 'c1',
            title: 'Temporary hydrant taken back',
            amountCents: 370_80,
            arithmetic: '-$370.80',
          },
        ],
      },
    );
    expect(amounts(statement, 'credits')).toEqual([-370_80]);
    expect(statement.totalCents).toBe(41_20);
  });

  it('(f): equipment by the time it was in use, at the rate of the book', () => {
    const statement = cost(
      { machines: [used('backhoe', [span(monday, 150)])] },
      { machines: [machine('backhoe', 'hour', '57.14')] },
    );
    // 2.5 × 57.14.
    expect(statement.totalCents).toBe(142_85);
  });

  it('(g): transport of people and things by the mile', () => {
    const statement = cost(
      { machines: [used('pickup', [], { drivenMiles: 24 })] },
      { machines: [machine('pickup', 'mile', '0.70')] },
    );
    expect(statement.lines[0]).toMatchObject({ kind: 'machine-miles', amountCents: 16_80 });
  });

  it('(h)(3): no betterment is asked where the reason is required, equivalent, the next size still made, or law', () => {
    const upgrade = (upgradeReason: string | null) =>
      rules
        .find(({ rule }) => rule === 'upgrade-without-reason')
        ?.find({
          facts: [
            {
              fact: {
                kind: 'repair',
                submissionId: 'r1',
                body: {
                  ...noRecord,
                  parts: [{ ...bought('BIG', 1, 900_00), upgrade: true, upgradeReason }],
                },
              },
            },
          ],
          statement: { lines: [] },
        } as unknown as AuditCase);
    expect(upgrade('The smaller size is no longer made')).toEqual([]);
    expect(upgrade(null)).toHaveLength(1);
    expect(upgrade('  ')).toHaveLength(1);
  });
});
