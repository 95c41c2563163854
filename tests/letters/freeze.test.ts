import { expect, it } from 'vitest';
import { asRecorded, demoClaim } from '../support/demoClaim.ts';
import { packetWorld } from '../support/packetWorld.ts';

/** The demo's claim with a text of the clerk's, and one that is written later. */
const texts = (first: string, later: string) => {
  let count = 0;
  const claim = demoClaim((teller, { claimId }) => {
    for (const text of [first, later]) {
      teller.tell('letter-text', { type: 'claim', claimId }, 100 - count, {
        letter: 'demand-insurer',
        text,
      });
      count += 1;
    }
  });
  const last = claim.submissions.filter(({ kind }) => kind === 'letter-text').at(-1)!;
  return {
    claim: { ...claim, submissions: claim.submissions.filter((each) => each !== last) },
    later: last,
  };
};

it('a letter with a field that does not exist is previewed with its problem, and not frozen until it is put right', async () => {
  const { claim, later } = texts('Pay {demnd}.', 'Pay {demand}.');
  const world = await packetWorld(claim);
  const preview = await world.packet({ mode: 'preview' });
  expect([preview.status, JSON.stringify(preview.body)]).toEqual([
    200,
    expect.stringContaining('letter-field-unknown'),
  ]);
  const refused = await world.packet({ mode: 'freeze' });
  expect([refused.status, JSON.stringify(refused.body)]).toEqual([
    422,
    expect.stringContaining('merge field “demnd”'),
  ]);
  expect(await world.issued()).toEqual([]);
  await world.hand(asRecorded([later]));
  expect((await world.packet({ mode: 'freeze' })).body).toMatchObject({ revision: 1 });
});

it('a new text of the letter is a change that the next freeze sees', async () => {
  const { claim, later } = texts('Please pay {demand}.', 'Kindly pay {demand}.');
  const world = await packetWorld(claim);
  expect((await world.packet({ mode: 'freeze' })).body).toMatchObject({ revision: 1 });
  expect((await world.packet({ mode: 'freeze' })).body).toMatchObject({ revision: 1 });
  await world.hand(asRecorded([later]));
  const second = await world.packet({ mode: 'freeze', changes: 'A friendlier letter.' });
  expect(second.body).toMatchObject({ revision: 2 });
});

it('GET letter gives text, values and what the payer asks for, and is not for crews', async () => {
  const claim = demoClaim();
  const world = await packetWorld(claim);
  const path = `/api/claims/${claim.claimId}/letter`;
  const { status, body } = await world.ask(path);
  expect(status).toBe(200);
  expect(body).toMatchObject({
    letter: 'demand-insurer',
    locale: 'en',
    submissionId: null,
    problems: [],
    values: { claimNumber: '2026-0001', payer: 'Harrowgate Casualty', payerReference: null },
  });
  expect(body.text).toBe(body.template);
  expect(body.evidence).toContainEqual(expect.objectContaining({ code: 'report-number', there: true }));
  expect((await world.ask(path, { role: 'crew' })).status).toBe(403);
});
