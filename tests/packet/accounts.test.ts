import { expect, it } from 'vitest';
import { packetBasis } from '../../shared/packet/basis.ts';
import { rateBookEdition } from '../../shared/costs/rateBook.ts';
import { demoCase, demoClaim } from '../support/demoClaim.ts';

it('a packet says nothing of the accounts that the utility books to', () => {
  const { work, editions, statement } = demoCase(demoClaim());
  const accounts = { cash: 'ACCT-1', receivable: 'ACCT-2', recovery: null, writeOff: null, shared: null };
  const booked = editions.map((edition) => rateBookEdition.parse({ ...edition, accounts }));
  expect(JSON.stringify(packetBasis(work, booked, statement))).not.toContain('ACCT');
  expect(JSON.stringify(packetBasis(work, booked, statement))).not.toContain('accounts');
});
