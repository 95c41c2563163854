import { randomBytes } from 'node:crypto';
import { beforeAll, describe, expect, it } from 'vitest';
import { TooLarge } from '../../functions/stores/faults.ts';
import type { Delivery, Ledger } from '../../functions/stores/ledger/ledger.ts';
import { streamOf, type Subject } from '../../shared/submissions/envelope.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import type { Submission } from '../../shared/submissions/submission.ts';
import { sampleBodies } from '../support/sampleBodies.ts';
import { describeOnPlaces } from './onPlaces.ts';
import { correction, fact, onHydrant, onStrike, onUtility, uuid } from '../support/submissions.ts';

/**
 * What every ledger must do, wherever it is. Expected answers are those of the issue and of the `Ledger` interface;
 * nothing here is taken from what the code answers.
 */
const first: Delivery = { recordedAt: '2026-03-04T02:31:00.000Z', deliveredBy: null };
const later: Delivery = { recordedAt: '2026-03-04T09:00:00.000Z', deliveredBy: 'w-99' };

describeOnPlaces('ledger', (opened) => {
  let ledger: Ledger;
  beforeAll(() => {
    ledger = opened().stores.ledger;
  });

  /** A number no other test uses, so that tests share tables and not streams. */
  let used = 1000;
  const fresh = (): number => (used += 100);
  const read = (subject: Subject, options?: { personal: boolean }): Promise<readonly Recorded[]> =>
    ledger.readStream(streamOf(subject), options);

  it('accepts a submission and gives it back as it was sent', async () => {
    const n = fresh();
    const sent = fact('strike', n, onStrike(n));
    expect(await ledger.accept(sent, { ...first, deliveredBy: 'w-8' })).toEqual({
      outcome: 'accepted',
      recordedAt: first.recordedAt,
    });
    expect(await read(sent.subject)).toEqual([
      { submission: sent, recordedAt: first.recordedAt, deliveredBy: 'w-8', erased: false },
    ]);
  });

  it('gives every kind of form back as it was sent', async () => {
    const n = fresh();
    const subjects = { strike: onStrike(n), hydrant: onHydrant(`H ${n}`), utility: onUtility };
    const sent = (Object.keys(sampleBodies) as (keyof typeof sampleBodies)[]).map((kind, index) =>
      fact(kind, n + index, index % 2 === 0 ? subjects.strike : subjects.hydrant),
    );
    for (const one of sent) await ledger.accept(one, first);
    const back = [...(await read(subjects.strike)), ...(await read(subjects.hydrant))];
    expect(back.map(({ submission }) => submission).sort(byId)).toEqual([...sent].sort(byId));
  });

  it('an empty stream is empty', async () => {
    expect(await read(onStrike(fresh()))).toEqual([]);
  });

  describe('repeat', () => {
    it('answers the first answer again, whoever delivers it and whenever', async () => {
      const n = fresh();
      const sent = fact('strike', n, onStrike(n));
      await ledger.accept(sent, first);
      expect(await ledger.accept(structuredClone(sent), later)).toEqual({
        outcome: 'repeat',
        recordedAt: first.recordedAt,
      });
      expect(await read(sent.subject)).toEqual([
        { submission: sent, recordedAt: first.recordedAt, deliveredBy: null, erased: false },
      ]);
    });

    it('does not mind the order of keys', async () => {
      const n = fresh();
      const sent = fact('inspection', n, onHydrant(`H ${n}`));
      const turned = Object.fromEntries(Object.entries(sent).reverse()) as unknown as Submission;
      await ledger.accept(sent, first);
      expect(await ledger.accept(turned, later)).toMatchObject({ outcome: 'repeat' });
    });

    it('of a correction', async () => {
      const n = fresh();
      const sent = fact('strike', n, onStrike(n));
      const corrected = correction(n + 1, sent, { ...sent.body, note: 'Two vehicles' });
      await ledger.accept(sent, first);
      expect(await ledger.accept(corrected, first)).toMatchObject({ outcome: 'accepted' });
      expect(await ledger.accept(corrected, later)).toEqual({
        outcome: 'repeat',
        recordedAt: first.recordedAt,
      });
      expect(await read(sent.subject)).toHaveLength(2);
    });
  });

  describe('clash: the same id with other content names the first field that differs', () => {
    const strikeBody = sampleBodies.strike;
    const cases: readonly [field: string, change: (sent: ReturnType<typeof fact<'strike'>>) => unknown][] = [
      ['occurredAt', (sent) => ({ ...sent, occurredAt: '2026-03-04T05:00:00Z' })],
      ['sentAt', (sent) => ({ ...sent, sentAt: '2026-03-04T05:00:00Z' })],
      ['person.personId', (sent) => ({ ...sent, person: { personId: 'w-8' } })],
      ['device.deviceId', (sent) => ({ ...sent, device: { deviceId: 'other' } })],
      ['enteredUnits', (sent) => ({ ...sent, enteredUnits: 'metric' })],
      ['test', (sent) => ({ ...sent, test: true })],
      ['body.note', (sent) => ({ ...sent, body: { ...sent.body, note: null } })],
      [
        'body.found.jetHeightIn',
        (sent) => ({ ...sent, body: { ...sent.body, found: { ...strikeBody.found, jetHeightIn: 121 } } }),
      ],
      ['body.hazards.1', (sent) => ({ ...sent, body: { ...sent.body, hazards: ['traffic', 'gas'] } })],
      ['body.hazards.2', (sent) => ({ ...sent, body: { ...sent.body, hazards: ['traffic', 'ice', 'gas'] } })],
      [
        'body.photos.0.caption',
        (sent) => ({ ...sent, body: { ...sent.body, photos: [{ ...strikeBody.photos[0], caption: 'x' }] } }),
      ],
      [
        'body.reportedBy.name',
        (sent) => ({
          ...sent,
          body: { ...sent.body, reportedBy: { ...strikeBody.reportedBy, name: 'Somebody else' } },
        }),
      ],
      [
        'body.reportedBy.phone',
        (sent) => ({
          ...sent,
          body: { ...sent.body, reportedBy: { ...strikeBody.reportedBy, phone: null } },
        }),
      ],
      ['body.dispatch', (sent) => ({ ...sent, body: { ...sent.body, dispatch: null } })],
    ];
    it.each(cases)('%s', async (field, change) => {
      const n = fresh();
      const sent = fact('strike', n, onStrike(n));
      await ledger.accept(sent, first);
      const answer = await ledger.accept(change(sent) as Submission, later);
      expect(answer).toEqual({ outcome: 'clash', field, recordedAt: first.recordedAt });
      // The path and nothing of what stands there: an answer to the wrong person must not tell a name.
      expect(JSON.stringify(answer)).not.toMatch(/caller|555-|Somebody/);
      expect(await read(sent.subject)).toEqual([
        { submission: sent, recordedAt: first.recordedAt, deliveredBy: null, erased: false },
      ]);
    });

    it('a personal field inside a list', async () => {
      const n = fresh();
      const sent = fact('party', n, onStrike(n));
      const vehicles = sent.body.vehicles.map((vehicle, index) =>
        index === 2 ? { ...vehicle, plate: 'BUS 3' } : vehicle,
      );
      await ledger.accept(sent, first);
      expect(await ledger.accept({ ...sent, body: { ...sent.body, vehicles } }, later)).toMatchObject({
        outcome: 'clash',
        field: 'body.vehicles.2.plate',
      });
    });

    it('another kind under the same id', async () => {
      const n = fresh();
      await ledger.accept(fact('strike', n, onStrike(n)), first);
      expect(await ledger.accept(fact('valve-operation', n, onStrike(n)), later)).toMatchObject({
        outcome: 'clash',
        field: expect.stringMatching(/^body\./),
      });
    });

    it('a correction under the id of a fact, and under the id of another correction', async () => {
      const n = fresh();
      const [a, b] = [fact('strike', n, onStrike(n)), fact('valve-operation', n + 1, onStrike(n))];
      await ledger.accept(a, first);
      await ledger.accept(b, first);
      expect(await ledger.accept(correction(n, b, b.body), later)).toMatchObject({ outcome: 'clash' });
      const corrected = correction(n + 2, a, a.body);
      expect(await ledger.accept(corrected, first)).toMatchObject({ outcome: 'accepted' });
      expect(await ledger.accept(correction(n + 2, b, b.body), later)).toMatchObject({
        outcome: 'clash',
        field: 'body.replacement.action',
      });
      expect(await read(a.subject)).toHaveLength(3);
    });
  });

  describe('corrections', () => {
    it('a second correction of the same target is refused, naming the one that stands', async () => {
      const n = fresh();
      const sent = fact('strike', n, onStrike(n));
      await ledger.accept(sent, first);
      await ledger.accept(correction(n + 1, sent, { ...sent.body, note: 'One' }), first);
      expect(await ledger.accept(correction(n + 2, sent, { ...sent.body, note: 'Two' }), later)).toEqual({
        outcome: 'already-corrected',
        by: uuid(n + 1),
      });
      expect(await read(sent.subject)).toHaveLength(2);
    });

    it('chain in a line', async () => {
      const n = fresh();
      const sent = fact('strike', n, onStrike(n));
      const once = correction(n + 1, sent, { ...sent.body, note: 'One' });
      const twice = correction(n + 2, once, null);
      for (const one of [sent, once, twice])
        expect(await ledger.accept(one, first)).toMatchObject({ outcome: 'accepted' });
      expect((await read(sent.subject)).map(({ submission }) => submission).sort(byId)).toEqual([
        sent,
        once,
        twice,
      ]);
    });

    it('may arrive before their target', async () => {
      const n = fresh();
      const sent = fact('strike', n, onStrike(n));
      const once = correction(n + 1, sent, { ...sent.body, note: 'One' });
      for (const one of [once, sent])
        expect(await ledger.accept(one, first)).toMatchObject({ outcome: 'accepted' });
      expect(await read(sent.subject)).toHaveLength(2);
    });

    it('of which one is refused, lose no personal field of the one that stands', async () => {
      const n = fresh();
      const sent = fact('party', n, onStrike(n));
      const one = correction(n + 1, sent, { ...sent.body, note: 'The one that stands' });
      await ledger.accept(sent, first);
      await ledger.accept(one, first);
      await ledger.accept(correction(n + 2, sent, { ...sent.body, note: 'Refused' }), later);
      expect((await read(sent.subject)).map(({ submission }) => submission).sort(byId)).toEqual([sent, one]);
    });
  });

  describe('personal fields', () => {
    it('stay out of a reading without them', async () => {
      const n = fresh();
      const sent = fact('party', n, onStrike(n));
      await ledger.accept(sent, first);
      const [without] = await read(sent.subject, { personal: false });
      expect(without?.submission.body).toEqual({
        ...sent.body,
        vehicles: sent.body.vehicles.map((vehicle) => ({ ...vehicle, plate: null, vin: null })),
        driver: null,
        owner: null,
        insurer: { company: 'Invented Mutual', policyNumber: null, claimNumber: null, adjuster: null },
        police: { agency: 'Town police', reportNumber: 'R-1', officer: null },
        note: null,
      });
    });

    it('are erased for good; the fact stays, and a resend does not bring them back', async () => {
      const n = fresh();
      const sent = fact('party', n, onStrike(n));
      const other = fact('party', n + 1, onStrike(n));
      await ledger.accept(sent, first);
      await ledger.accept(other, first);
      await ledger.forget(streamOf(sent.subject), sent.submissionId);
      await ledger.forget(streamOf(sent.subject), sent.submissionId);

      const expectErased = async (): Promise<void> => {
        const [erased, kept] = await read(sent.subject);
        expect(erased).toMatchObject({
          erased: true,
          submission: { body: { driver: null, hitAndRun: 'no' } },
        });
        expect(JSON.stringify(erased)).not.toMatch(/AAA 111|invented driver|P-1|Officer 9|the ice/);
        expect(kept).toMatchObject({ erased: false, submission: other });
      };
      await expectErased();
      expect(await ledger.accept(sent, later)).toEqual({ outcome: 'repeat', recordedAt: first.recordedAt });
      await expectErased();
      // What was not erased is still compared.
      const changed = { ...sent, body: { ...sent.body, hitAndRun: 'yes' as const } };
      expect(await ledger.accept(changed, later)).toMatchObject({
        outcome: 'clash',
        field: 'body.hitAndRun',
      });
      await expectErased();
    });

    it('of a correction are erased under its own id', async () => {
      const n = fresh();
      const sent = fact('party', n, onStrike(n));
      const corrected = correction(n + 1, sent, { ...sent.body, note: 'A second name' });
      await ledger.accept(sent, first);
      await ledger.accept(corrected, first);
      await ledger.forget(streamOf(sent.subject), corrected.submissionId);
      const byKind = new Map((await read(sent.subject)).map((item) => [item.submission.kind, item]));
      expect(byKind.get('party')).toMatchObject({ erased: false, submission: sent });
      expect(byKind.get('correction')).toMatchObject({
        erased: true,
        submission: { body: { replacement: { note: null, hitAndRun: 'no' } } },
      });
    });

    it('forgetting what was never there is no fault', async () => {
      await ledger.forget(streamOf(onStrike(fresh())), uuid(1));
    });
  });

  it('keeps odd text, numbers and empties byte for byte', async () => {
    const n = fresh();
    const note = 'Señal — 消火栓 🚒 é “x” \\ " \u0000 \u2028 \ud83d end';
    const sent = fact('valve-operation', n, onHydrant(`Ñ-${n} 消 🚒 "\\`), { note, turns: 0.1 + 0.2 });
    const test = fact('flow-test', n + 1, sent.subject, {
      staticPsi: 1e-7,
      residualPsi: 0,
      flowHydrants: [],
      measuredFlowGpm: 123456789.12345678,
      note: '',
    });
    await ledger.accept(sent, first);
    await ledger.accept(test, first);
    expect((await read(sent.subject)).map(({ submission }) => submission)).toEqual([sent, test]);
    expect(await ledger.accept(structuredClone(sent), later)).toMatchObject({ outcome: 'repeat' });
  });

  it('streams whose names begin alike are apart', async () => {
    const n = fresh();
    const subjects = [onHydrant(`${n}`), onHydrant(`${n}0`), onHydrant(`${n}:`), onHydrant(`${n} `)];
    for (const [index, subject] of subjects.entries())
      await ledger.accept(fact('inspection', n + index, subject), first);
    for (const [index, subject] of subjects.entries())
      expect((await read(subject)).map(({ submission }) => submission.submissionId)).toEqual([
        uuid(n + index),
      ]);
  });

  describe('size', () => {
    const rateBook = (n: number, parts: number, title: () => string): Submission =>
      fact('rate-book', n, onUtility, {
        stock: Array.from({ length: parts }, (_, index) => ({
          partNumber: `P-${index}`,
          title: title(),
          unitPriceUsd: '1.00',
          authorityId: 'r-1',
        })),
      });

    it('takes a rate book of 5,000 parts, which is over 400 KB as text', async () => {
      const n = fresh();
      const sent = rateBook(n, 5000, () => 'Gasket, full face, for a pipe of some ordinary size');
      expect(Buffer.byteLength(JSON.stringify(sent))).toBeGreaterThan(400 * 1024);
      expect(await ledger.accept(sent, first)).toMatchObject({ outcome: 'accepted' });
      const back = (await read(onUtility)).find(({ submission }) => submission.submissionId === uuid(n));
      expect(back?.submission).toEqual(sent);
      expect(await ledger.accept(sent, later)).toMatchObject({ outcome: 'repeat' });
    });

    it('refuses what does not fit, before it writes anything', async () => {
      const n = fresh();
      const sent = rateBook(n, 5000, () => randomBytes(100).toString('hex'));
      await expect(ledger.accept(sent, first)).rejects.toThrow(TooLarge);
      const party = fact('party', n + 1, onStrike(n), { note: randomBytes(500_000).toString('hex') });
      await expect(ledger.accept(party, first)).rejects.toThrow(TooLarge);
      expect(await read(onStrike(n))).toEqual([]);
    });

    it('reads a stream of more than one page (1 MB), every fact of it, and the ledger too', async () => {
      const n = fresh();
      const count = 60;
      const sent = Array.from({ length: count }, (_, index) =>
        fact('party', n + index, onStrike(n), { note: randomBytes(16_000).toString('hex') }),
      );
      const bytes = sent.reduce((sum, one) => sum + Buffer.byteLength(JSON.stringify(one)), 0);
      expect(bytes).toBeGreaterThan(1.5 * 1024 * 1024);
      await Promise.all(sent.map((one) => ledger.accept(one, first)));
      const ids = sent.map(({ submissionId }) => submissionId);
      const back = await read(onStrike(n));
      expect(back.map(({ submission }) => submission)).toEqual(sent);

      const all: Recorded[] = [];
      for await (const page of ledger.readAll()) all.push(...page);
      const mine = all.filter(({ submission }) => ids.includes(submission.submissionId));
      expect(mine.map(({ submission }) => submission).sort(byId)).toEqual(sent);
      const bare: Recorded[] = [];
      for await (const page of ledger.readAll({ personal: false })) bare.push(...page);
      expect(bare).toHaveLength(all.length);
      expect(JSON.stringify(bare)).not.toMatch(/AAA 111|invented driver/);
    });
  });

  describe('at the same time', () => {
    it('50 copies of one submission: one is accepted, the rest are repeats', async () => {
      for (const kind of ['party', 'inspection'] as const) {
        const n = fresh();
        const sent = fact(kind, n, onStrike(n));
        const answers = await Promise.all(
          Array.from({ length: 50 }, (_, index) =>
            ledger.accept(sent, {
              recordedAt: `2026-03-04T02:31:00.${String(100 + index)}Z`,
              deliveredBy: null,
            }),
          ),
        );
        const accepted = answers.filter(({ outcome }) => outcome === 'accepted');
        expect(accepted).toHaveLength(1);
        expect(answers.filter(({ outcome }) => outcome === 'repeat')).toHaveLength(49);
        expect(new Set(answers.map((one) => ('recordedAt' in one ? one.recordedAt : '')))).toHaveLength(1);
        expect((await read(sent.subject)).map(({ submission }) => submission)).toEqual([sent]);
      }
    });

    it('two contents under one id: one is accepted, the other a clash, and what stands is whole', async () => {
      for (let round = 0; round < 20; round += 1) {
        const n = fresh();
        const sent = fact('party', n, onStrike(n));
        const contents = ['One', 'Two'].map((note) => ({ ...sent, body: { ...sent.body, note } }));
        const answers = await Promise.all(contents.map((one) => ledger.accept(one, first)));
        expect(answers.map(({ outcome }) => outcome).sort()).toEqual(['accepted', 'clash']);
        expect(answers.find(({ outcome }) => outcome === 'clash')).toMatchObject({ field: 'body.note' });
        const winner = contents[answers.findIndex(({ outcome }) => outcome === 'accepted')];
        expect((await read(sent.subject)).map(({ submission }) => submission)).toEqual([winner]);
      }
    });

    it('ten corrections of one target: one is accepted', async () => {
      const n = fresh();
      const sent = fact('party', n, onStrike(n));
      await ledger.accept(sent, first);
      const rivals = Array.from({ length: 10 }, (_, index) =>
        correction(n + 1 + index, sent, { ...sent.body, note: `Rival ${index}` }),
      );
      const answers = await Promise.all(rivals.map((one) => ledger.accept(one, first)));
      const winner = rivals[answers.findIndex(({ outcome }) => outcome === 'accepted')];
      expect(answers.filter(({ outcome }) => outcome === 'accepted')).toHaveLength(1);
      expect(
        answers.filter((one) => one.outcome === 'already-corrected' && one.by === winner?.submissionId),
      ).toHaveLength(9);
      expect((await read(sent.subject)).map(({ submission }) => submission).sort(byId)).toEqual([
        sent,
        winner,
      ]);
    });
  });
});

function byId(a: Submission, b: Submission): number {
  return a.submissionId < b.submissionId ? -1 : 1;
}
