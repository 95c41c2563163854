import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarFeed, type FeedItem } from '../../../shared/calendar/feed.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { dates, opened, rule, settingsWith, told, uuid } from '../clocks/support.ts';

/** The feed as another library reads it: ical.js, a general parser of RFC 5545. */
const settings = settingsWith([
  rule({
    clock: 'answer-by',
    from: 'demand-sent',
    count: 15,
    whose: 'payer-target',
    citation: 'Código Inventado § 1-2(a); “respuesta”, ñandú, 逐条逐条逐条逐条逐条逐条逐条逐条逐条逐条逐条',
  }),
  rule({ clock: 'limitation', from: 'strike', count: 2, unit: 'years' }),
  rule({ clock: 'retention-end', from: 'claim-closed', count: 5, unit: 'years' }),
]);
const items = (submissions: readonly Submission[], today: string, over: Partial<FeedItem> = {}): FeedItem[] =>
  Object.values(dates([opened(), ...submissions], settings, today)).map((deadline) => ({
    ...deadline,
    claimId: uuid(1),
    claimNumber: '2026-0007',
    strikeId: uuid(9),
    payerKind: 'drivers-insurer',
    payerName: 'Invented Mutual',
    changes: submissions.length + 1,
    lastRecordedAt: '2026-04-01T15:00:00.000Z',
    ...over,
  }));
const sent = told('demand-sent', 10, { sentOn: '2026-04-01', amountCents: 500_000, to: 'Ann Example' });
const feedOf = (
  submissions: readonly Submission[],
  today: string,
  locale: 'en' | 'es' = 'en',
  utilityName = 'Water, Light; Power',
) =>
  calendarFeed({
    items: items(submissions, today),
    today,
    locale,
    utilityName,
    publicUrl: 'https://status.example/',
  });
const eventsOf = (text: string) =>
  new ICAL.Component(ICAL.parse(text) as never).getAllSubcomponents('vevent').map((one) => {
    const event = new ICAL.Event(one);
    return {
      uid: event.uid,
      on: event.startDate.toString(),
      allDay: event.startDate.isDate,
      sequence: event.sequence,
      summary: event.summary,
      description: event.description,
      status: one.getFirstPropertyValue('status'),
      stamp: String(one.getFirstPropertyValue('dtstamp')),
      url: one.getFirstPropertyValue('url'),
      alarms: one
        .getAllSubcomponents('valarm')
        .map(
          (alarm) =>
            `${String(alarm.getFirstPropertyValue('action'))} ${String(alarm.getFirstPropertyValue('trigger'))}`,
        ),
    };
  });

describe('the feed, read by another library', () => {
  const events = eventsOf(feedOf([sent], '2026-04-02'));

  it('holds each date once, all day, with its number, its clock and its source', () => {
    expect(events.map(({ uid, on, allDay }) => [uid, on, allDay])).toEqual([
      [`${uuid(1)}/answer-by:${uuid(10)}`, '2026-04-16', true],
      [`${uuid(1)}/limitation`, '2028-03-03', true],
    ]);
    expect(events[0]).toMatchObject({
      summary: '2026-0007: Answer by the payer',
      sequence: 2,
      status: 'CONFIRMED',
      stamp: '2026-04-01T15:00:00Z',
      url: `https://status.example/desk/#/claim/${uuid(1)}`,
    });
    // Commas, semicolons, quotes and other scripts come back as they were written.
    expect(events[0]?.description).toContain(
      'Target set for insurers by Código Inventado § 1-2(a); “respuesta”, ñandú, 逐条',
    );
    expect(events[0]?.description).toContain('15 days after the demand of Apr 1, 2026');
  });

  it('reminds at nine in the morning of each day of warning', () => {
    // Nine hours into the day three days before: 2 days and 15 hours before midnight of the day itself.
    expect(events[0]?.alarms).toEqual(['DISPLAY -P2DT15H']);
    // 365, 180, 90 and 30 days before.
    expect(events[1]?.alarms).toEqual([
      'DISPLAY -P364DT15H',
      'DISPLAY -P179DT15H',
      'DISPLAY -P89DT15H',
      'DISPLAY -P29DT15H',
    ]);
  });

  it('reminds on the day itself, counted from its start: RFC 5545 takes a day without an end to last until midnight', () => {
    const today = settingsWith([
      rule({ clock: 'answer-by', from: 'demand-sent', count: 15, warnDays: [1, 0] }),
    ]);
    const [item] = Object.values(dates([opened(), sent], today, '2026-04-02'));
    const text = calendarFeed({
      items: [{ ...items([sent], '2026-04-02')[0]!, ...item! }],
      today: '2026-04-02',
      locale: 'en',
      utilityName: 'Water',
      publicUrl: null,
    });
    const [event] = new ICAL.Component(ICAL.parse(text) as never).getAllSubcomponents('vevent');
    const alarms = event!.getAllSubcomponents('valarm').map((alarm) => {
      const trigger = alarm.getFirstProperty('trigger')!;
      return [trigger.getParameter('related') ?? 'START', String(trigger.getFirstValue())];
    });
    expect(alarms).toEqual([
      ['START', '-PT15H'],
      ['START', 'PT9H'],
    ]);
  });

  it('keeps the id and says it is cancelled once it is met, with a higher sequence and no reminder', () => {
    const denied = told('claim-denied', 11, { deniedOn: '2026-04-10' });
    const met = eventsOf(feedOf([sent, denied], '2026-04-12')).find(({ uid }) => uid === events[0]?.uid);
    expect(met).toMatchObject({ uid: events[0]?.uid, status: 'CANCELLED', sequence: 3, alarms: [] });
    // Two months later it is left out.
    expect(eventsOf(feedOf([sent, denied], '2026-07-01')).map(({ uid }) => uid)).toEqual([
      `${uuid(1)}/limitation`,
    ]);
  });

  it('moves with its date under the same id', () => {
    const put = told('deadline-answered', 12, {
      deadline: `answer-by:${uuid(10)}`,
      dueOn: '2026-04-16',
      answer: 'put-off',
      until: '2026-04-30',
    });
    expect(eventsOf(feedOf([sent, put], '2026-04-12'))[0]).toMatchObject({
      uid: events[0]?.uid,
      on: '2026-04-30',
      sequence: 3,
    });
  });

  it('leaves retention out', () => {
    const closed = told('claim-closed', 11, { closedOn: '2026-04-10', how: 'written-off' });
    expect(feedOf([sent, closed], '2026-04-12')).not.toContain('retention');
  });

  it('says who made it, and the name as it is', () => {
    const calendar = new ICAL.Component(ICAL.parse(feedOf([sent], '2026-04-02', 'es')) as never);
    // RFC 7986, 5.1: NAME is a text, and so written with its marks escaped (RFC 5545, 3.3.11).
    expect(feedOf([sent], '2026-04-02', 'es')).toContain(
      '\r\nNAME:Reclamaciones de Water\\, Light\\; Power\r\n',
    );
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('prodid')).toBe('-//Hydrant Strike Ledger//Claims//ES');
    expect(calendar.getFirstPropertyValue('method')).toBe('PUBLISH');
  });
});

describe('the file, as RFC 5545 has it', () => {
  const text = feedOf([sent], '2026-04-02', 'es');
  it('ends every line with CR LF (3.1), and the last too', () => {
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
  });
  it('has no line of more than 75 octets, and breaks no character (3.1)', () => {
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line, 'utf8')).toBeLessThanOrEqual(75);
    expect(text).not.toContain('\uFFFD');
  });
  it('is the same for the same facts and day', () => {
    expect(feedOf([sent], '2026-04-02', 'es')).toBe(text);
  });
  it('knows nothing of a person', () => {
    expect(text).not.toMatch(/Ann Example|Invented Mutual/);
  });
  it('of very many claims stays under the 6 MB that Lambda answers with, and keeps what still asks for something', () => {
    const open = items([sent], '2026-04-02');
    const over = items([sent, told('claim-denied', 11, { deniedOn: '2026-04-10' })], '2026-04-02').slice(
      0,
      1,
    );
    const many = [
      ...Array.from({ length: 3000 }, () => over).flat(),
      ...Array.from({ length: 1900 }, () => open).flat(),
    ];
    const big = calendarFeed({
      items: many,
      today: '2026-04-02',
      locale: 'en',
      utilityName: 'W',
      publicUrl: null,
    });
    expect(Buffer.byteLength(big)).toBeLessThan(6 * 1024 * 1024);
    expect(big.match(/STATUS:CONFIRMED/g)).toHaveLength(3800);
    expect(big.match(/STATUS:CANCELLED/g)).toHaveLength(200);
  });
  it('of no claim is still a calendar', () => {
    const none = calendarFeed({
      items: [],
      today: '2026-04-02',
      locale: 'en',
      utilityName: 'W',
      publicUrl: null,
    });
    expect(eventsOf(none)).toEqual([]);
  });
});
