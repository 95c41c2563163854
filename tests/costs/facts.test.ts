import { describe, expect, it } from 'vitest';
import { statementOfCosts } from '../../shared/costs/statement.ts';
import { workOf } from '../../shared/costs/work.ts';
import { demoRateBooks } from '../../infra/local/demo/rates.ts';
import { demoUtility } from '../../infra/local/demo/utility.ts';
import { effectiveFacts, type Effective } from '../../shared/submissions/effective.ts';
import type { BodyOf, Submission } from '../../shared/submissions/submission.ts';
import { asRecorded, demoClaim, type DemoClaim } from '../support/demoClaim.ts';

const { timeZone } = demoUtility;

function factsOf(
  claim: DemoClaim,
  submissions: readonly Submission[] = claim.submissions,
): readonly Effective[] {
  return effectiveFacts(asRecorded(submissions)).facts.filter(
    ({ fact }) => fact.subject.type === 'strike' && fact.subject.strikeId === claim.strikeId,
  );
}
const statementOf = (facts: readonly Effective[]) =>
  statementOfCosts({ facts, editions: demoRateBooks, timeZone });

describe('from facts to a statement', () => {
  it('the order in which facts arrived makes no difference', () => {
    const claim = demoClaim();
    const forwards = statementOf(factsOf(claim));
    expect(statementOf(factsOf(claim, [...claim.submissions].reverse()))).toEqual(forwards);
    expect(forwards.lines.length).toBeGreaterThan(5);
    expect(forwards.complete).toBe(true);
  });

  it('an amount that was corrected leaves no trace, and a withdrawn repair bills nothing', () => {
    const contractors: BodyOf<'repair'>['contractors'] = [
      {
        contractor: 'Paver',
        invoiceNumber: '77',
        invoicedOn: '2026-11-20',
        work: 'sidewalk',
        amountCents: 77_777_77,
        invoiceSha256: null,
      },
    ];
    const bare: BodyOf<'repair'> = {
      hydrantId: null,
      damage: null,
      crew: [],
      machines: [],
      parts: [],
      contractors,
      steps: [],
      reassembledAt: null,
      completedAt: null,
      photos: [],
      note: null,
    };
    const without = statementOf(factsOf(demoClaim()));
    const corrected = demoClaim((teller, { strikeId }) => {
      const subject = { type: 'strike', strikeId } as const;
      const id = teller.tell('repair', subject, 380, bare);
      teller.correct(id, 'repair', subject, 379, 'typed wrong', {
        ...bare,
        contractors: [{ ...contractors[0]!, amountCents: 100_00 }],
      });
    });
    const statement = statementOf(factsOf(corrected));
    expect(statement.totalCents).toBe(without.totalCents + 100_00);
    expect(JSON.stringify(statement)).not.toContain('77777');

    const withdrawn = demoClaim((teller, { strikeId }) => {
      const subject = { type: 'strike', strikeId } as const;
      const id = teller.tell('repair', subject, 380, bare);
      teller.correct(id, 'repair', subject, 379, 'another job', null);
    });
    expect(statementOf(factsOf(withdrawn)).lines).toEqual(without.lines);
  });

  it('the day of the strike is the utility’s: 11 pm in New York is not yet tomorrow', () => {
    const claim = demoClaim();
    const late = factsOf(claim).map((item): Effective =>
      item.fact.kind === 'strike'
        ? {
            ...item,
            fact: { ...item.fact, body: { ...item.fact.body, struckAt: '2026-11-08T04:30:00Z' } },
          }
        : item,
    );
    expect(workOf(late, timeZone, null).strike).toEqual({ date: '2026-11-07', basis: 'struck' });
  });

  it('a strike whose time nobody knows is dated by its report, and says so', () => {
    const claim = demoClaim();
    const unknown = factsOf(claim).map((item): Effective =>
      item.fact.kind === 'strike'
        ? {
            ...item,
            fact: { ...item.fact, body: { ...item.fact.body, struckAt: null, struckAtBasis: 'unknown' } },
          }
        : item,
    );
    const statement = statementOf(unknown);
    expect(statement.strike.basis).toBe('reported');
    expect(statement.notes.map(({ code }) => code)).toContain('strike-date-taken');
  });

  it('only what was tested after the repair, in the strike’s own streams, is billed', () => {
    const claim = demoClaim();
    // The demo has a routine test of the same hydrant on the hydrant's own stream.
    const all = effectiveFacts(asRecorded(claim.submissions)).facts;
    expect(all.filter(({ fact }) => fact.kind === 'flow-test').length).toBeGreaterThan(1);
    expect(statementOf(factsOf(claim)).lines.filter(({ section }) => section === 'flow-test')).toMatchObject([
      { quantity: '1' },
    ]);
  });

  it('the latest record of the water lost stands', () => {
    const water = (waterLostGal: number): BodyOf<'water-lost'> => ({
      waterLostGal,
      method: 'metered',
      basis: `${waterLostGal} by meter`,
      flowingFrom: null,
      flowingTo: null,
      byWorkerId: 'w-101',
      note: null,
    });
    const claim = demoClaim((teller, { strikeId }) => {
      teller.tell('water-lost', { type: 'strike', strikeId }, 20, water(5_000));
      teller.tell('water-lost', { type: 'strike', strikeId }, 10, water(6_000));
    });
    expect(statementOf(factsOf(claim)).water).toMatchObject({ gallons: 6_000, basis: '6000 by meter' });
  });
});
