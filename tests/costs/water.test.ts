import { describe, expect, it } from 'vitest';
import { demoRateBooks } from '../../infra/local/demo/rates.ts';
import { demoUtility } from '../../infra/local/demo/utility.ts';
import { noneLost } from '../../infra/local/demo/waterLost.ts';
import { statementOfCosts } from '../../shared/costs/statement.ts';
import { effectiveFacts } from '../../shared/submissions/effective.ts';
import { asRecorded, demoClaim, type DemoClaim } from '../support/demoClaim.ts';

const waterOf = (claim: DemoClaim) => {
  const facts = effectiveFacts(asRecorded(claim.submissions)).facts.filter(
    ({ fact }) => fact.subject.type === 'strike' && fact.subject.strikeId === claim.strikeId,
  );
  const { water, lines } = statementOfCosts({
    facts,
    editions: demoRateBooks,
    timeZone: demoUtility.timeZone,
  });
  return { water, lines: lines.filter(({ section }) => section === 'water') };
};

describe('water lost on the bill', () => {
  /*
   * By hand: a jet of 66 in from 5 in is 5.68 × 0.92 × 25 × √66 = 1,061.3 gpm (equation and range of k: Engineering
   * ToolBox, seen), less ±14.14 % (USBR ±10 %, seen; by eye ±20 % of height, common practice) 911.2 gpm, for 48 minutes
   * from the strike to the valve 43,739 gal, to three digits down 43,700; at the demo's invented price of $7.32 for
   * 1,000 gal $319.88.
   */
  it('is the low figure of the estimate at the rate book’s price, with its sentences', () => {
    const { water, lines } = waterOf(demoClaim());
    expect(water).toMatchObject({ state: 'recorded', gallons: 43_700 });
    expect(lines).toMatchObject([
      { quantity: '43.7', unit: '1000-gal', rateUsd: '7.32', amountCents: 319_88 },
    ]);
    expect(lines[0]?.description).toBe(
      'By the height of the jet: 1,061 gpm, between 911 gpm and 1,211 gpm (±14%). It ran for 48 minutes. ' +
        'Low 43,700 gal, best 50,900 gal, high 58,200 gal. The claim uses the low figure, 43,700 gal.',
    );
  });

  it('is nothing when the record says that the main valve held', () => {
    const claim = demoClaim((teller, { strikeId }) => {
      teller.tell('water-lost', { type: 'strike', strikeId }, 10, noneLost());
    });
    const { water, lines } = waterOf(claim);
    expect(water).toMatchObject({ state: 'valve-held', gallons: 0 });
    expect(lines).toEqual([]);
  });
});
