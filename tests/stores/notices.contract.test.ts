import { expect, it } from 'vitest';
import { hydrantSubject, placeSubject, type DispatchNotice } from '../../shared/dispatch/notice.ts';
import { newDelivery } from '../../shared/outbox/delivery.ts';
import { describeOnPlaces } from './onPlaces.ts';
import { uuid } from '../support/submissions.ts';

const now = new Date('2026-04-01T11:00:00Z');
const day = '2026-04-01';

const notice = (subject: string, number: number, what: DispatchNotice['what'] = 'out'): DispatchNotice => ({
  subject,
  number,
  what,
  reference: 'AB-12',
  outageIds: [uuid(1)],
  at: now.toISOString(),
  madeAt: now.toISOString(),
  confirmedFrom: now.toISOString(),
  held: null,
  day,
  to: ['watch-room'],
  facts: {
    hydrantId: 'Ñ 12',
    place: 'Corner of Alder — “third” 🚒',
    position: null,
    cause: 'strike',
    since: now.toISOString(),
    expectedAt: null,
    returnedAt: null,
    notShown: [],
    nearest: [],
    maybe: [],
    instead: null,
  },
  asked: [],
});
const delivery = (subject: string, number: number, recipientId: string, on = day) => ({
  ...newDelivery(now),
  subject,
  number,
  recipientId,
  day: on,
});

describeOnPlaces('messages to dispatch', (opened) => {
  it('stand in the order of their numbers, each written once', async () => {
    const { notices } = opened().stores;
    const subject = hydrantSubject('Ñ 12');
    expect(await notices.of(subject)).toEqual([]);
    for (const number of [2, 10, 1]) expect(await notices.add(notice(subject, number))).toBe(true);
    expect(await notices.add(notice(subject, 2, 'back'))).toBe(false);
    const kept = await notices.of(subject);
    expect(kept.map(({ value }) => value)).toEqual([1, 2, 10].map((number) => notice(subject, number)));
    // One whose name begins alike is another.
    expect(await notices.of(hydrantSubject('Ñ 1'))).toEqual([]);
    expect(await notices.of(placeSubject('Ñ 12'))).toEqual([]);
  });

  it('of twenty who change one at once one does', async () => {
    const { notices } = opened().stores;
    const subject = placeSubject(uuid(7));
    await notices.add(notice(subject, 1));
    const [before] = await notices.of(subject);
    const next = { ...notice(subject, 1), asked: [{ byPersonId: 'w-9', at: now.toISOString() }] };
    const answers = await Promise.all(Array.from({ length: 20 }, () => notices.replace(before!, next)));
    expect(answers.filter(Boolean)).toHaveLength(1);
    expect((await notices.of(subject))[0]?.value).toEqual(next);
    expect(await notices.replace(before!, notice(subject, 1))).toBe(false);
  });

  it('are found by the outage that they speak of, marked once however often', async () => {
    const { notices } = opened().stores;
    for (const subject of ['hydrant:B', 'hydrant:A', 'hydrant:B']) await notices.mark(uuid(20), subject);
    expect(await notices.subjectsOf(uuid(20))).toEqual(['hydrant:A', 'hydrant:B']);
    expect(await notices.subjectsOf(uuid(21))).toEqual([]);
  });

  it('go once to each recipient, and are looked up by day and by message', async () => {
    const { notices } = opened().stores;
    const [one, two] = [hydrantSubject('S-1'), hydrantSubject('S-10')];
    const all = [
      delivery(one, 1, 'a', '2026-05-01'),
      delivery(one, 1, 'b', '2026-05-01'),
      delivery(one, 10, 'a', '2026-05-01'),
      delivery(two, 1, 'a', '2026-05-01'),
      delivery(one, 1, 'a', '2026-05-02'),
    ];
    for (const each of all) expect(await notices.addDelivery(each)).toBe(true);
    expect(await notices.addDelivery(all[0]!)).toBe(false);
    const on = (await notices.deliveriesOn('2026-05-01')).map(({ value }) => value);
    expect(on).toHaveLength(4);
    expect(on).toEqual(expect.arrayContaining(all.slice(0, 4)));
    const of = await notices.deliveriesOf({ subject: one, number: 1, day: '2026-05-01' });
    expect(of.map(({ value }) => value)).toEqual(all.slice(0, 2));
    expect(await notices.deliveriesOn('2026-05-03')).toEqual([]);
  });

  it('of twenty who set out to send one delivery one does', async () => {
    const { notices } = opened().stores;
    const waiting = delivery(hydrantSubject('S-2'), 1, 'a', '2026-06-01');
    await notices.addDelivery(waiting);
    const [before] = await notices.deliveriesOn('2026-06-01');
    const taken = { ...waiting, state: 'claimed' as const, tries: 1 };
    const answers = await Promise.all(
      Array.from({ length: 20 }, () => notices.replaceDelivery(before!, taken)),
    );
    expect(answers.filter(Boolean)).toHaveLength(1);
    expect((await notices.deliveriesOn('2026-06-01')).map(({ value }) => value)).toEqual([taken]);
  });
});
