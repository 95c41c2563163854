import { expect, it } from 'vitest';
import { claimed, newEntry, sent } from '../../shared/digest/outbox.ts';
import { describeOnPlaces } from './onPlaces.ts';

const now = new Date('2026-04-01T11:00:00Z');
const letter = (day: string, personId: string, text = 'Nothing is due.') =>
  newEntry(day, personId, { to: `${personId}@example.com`, subject: 'Due', text }, now);

describeOnPlaces('the outbox and calendar addresses', (opened) => {
  it('holds one letter a person and day, the first', async () => {
    const { outbox } = opened().stores;
    expect(await outbox.add(letter('2026-04-01', 'c-1'))).toBe(true);
    expect(await outbox.add(letter('2026-04-01', 'c-1', 'Another.'))).toBe(false);
    expect(await outbox.add(letter('2026-04-01', 'c-2'))).toBe(true);
    expect(await outbox.add(letter('2026-04-02', 'c-1'))).toBe(true);
    const all = await outbox.ofDay('2026-04-01');
    expect(all.map(({ entry }) => [entry.personId, entry.mail.text])).toEqual([
      ['c-1', 'Nothing is due.'],
      ['c-2', 'Nothing is due.'],
    ]);
    expect(await outbox.ofDay('2026-04-09')).toEqual([]);
  });

  it('of twenty who claim a letter at once one gets it', async () => {
    const { outbox } = opened().stores;
    await outbox.add(letter('2026-05-01', 'c-1'));
    const [stored] = await outbox.ofDay('2026-05-01');
    const taken = claimed(stored!.entry, now)!;
    const got = await Promise.all(Array.from({ length: 20 }, () => outbox.replace(stored!, taken)));
    expect(got.filter(Boolean)).toHaveLength(1);
    const [after] = await outbox.ofDay('2026-05-01');
    expect(after?.entry).toEqual(taken);
    // Whoever read it before may not overwrite what became of it.
    expect(await outbox.replace(after!, sent(taken, 'm-1', now))).toBe(true);
    expect(await outbox.replace(after!, stored!.entry)).toBe(false);
  });

  const address = (personId: string, tokenSha256: string) =>
    ({ personId, tokenSha256, locale: 'en', madeAt: now.toISOString() }) as const;
  it('an address leads to its person until another is made or it is revoked', async () => {
    const { calendars } = opened().stores;
    const [one, two] = ['a'.repeat(64), 'b'.repeat(64)];
    expect(await calendars.find(one)).toBeNull();
    await calendars.put(address('c-1', one));
    expect((await calendars.find(one))?.personId).toBe('c-1');
    await calendars.put(address('c-1', two));
    expect(await calendars.find(one)).toBeNull();
    expect((await calendars.find(two))?.personId).toBe('c-1');
    expect(await calendars.ofPerson('c-1')).toEqual(address('c-1', two));
    expect(await calendars.revoke('c-1')).toBe(true);
    expect(await calendars.find(two)).toBeNull();
    expect(await calendars.ofPerson('c-1')).toBeNull();
    expect(await calendars.revoke('c-1')).toBe(false);
    await calendars.put(address('c-1', 'c'.repeat(64)));
    expect((await calendars.find('c'.repeat(64)))?.personId).toBe('c-1');
  });
});
