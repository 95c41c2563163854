import { describe, expect, it } from 'vitest';
import { demoRateBooks } from '../../infra/local/demo/rates.ts';
import { jobCodes } from '../../shared/costs/codes.ts';

/** What leaves the rate book for the crew: codes and titles, by name; nothing of what they cost. */
describe('codes of the rate book', () => {
  const today = demoRateBooks
    .map(({ effectiveFrom }) => effectiveFrom)
    .sort()
    .at(-1)!;

  it('are those of the edition in force on the day', () => {
    const latest = demoRateBooks.find(({ effectiveFrom }) => effectiveFrom === today)!;
    const codes = jobCodes(today, demoRateBooks);
    expect(codes.editionId).toBe(latest.editionId);
    expect(codes.labor).toContainEqual({ code: 'crew-lead', title: 'Crew lead' });
    expect(codes.machines).toContainEqual({ code: 'TRK-1', title: 'Service truck, 1 ton' });
    expect(codes.stock).toContainEqual({ code: 'CONC-60', title: 'Concrete, 60 lb bag' });
    expect([codes.labor.length, codes.machines.length, codes.stock.length]).toEqual([
      latest.labor.length,
      latest.machines.length,
      latest.stock.length,
    ]);
  });

  it('are nothing but code and title', () => {
    const { labor, machines, stock } = jobCodes(today, demoRateBooks);
    for (const each of [...labor, ...machines, ...stock])
      expect(Object.keys(each)).toEqual(['code', 'title']);
  });

  it('are none where no edition is in force, or two cannot be chosen between', () => {
    const none = { editionId: null, labor: [], machines: [], stock: [] };
    expect(jobCodes('1999-01-01', demoRateBooks)).toEqual(none);
    const [one] = demoRateBooks;
    expect(jobCodes(one!.effectiveFrom, [one!, { ...one!, editionId: 'other' }])).toEqual(none);
  });
});
