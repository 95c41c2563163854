import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { returnsFeed } from '../../../shared/calendar/returnsFeed.ts';
import {
  at,
  changesAfter,
  editionOf,
  noneOut,
  oneOut,
  overAt,
  street,
  uuids,
  workPlanned,
  type Check,
} from '../../support/feeds.ts';
import { aStatus } from '../../support/town.ts';

const feedOf = (
  checks: readonly Check[],
  locale: 'en' | 'es' = 'en',
  publicUrl: string | null = null,
): string => {
  const [minutes, sources] = checks.at(-1)!;
  return returnsFeed({
    edition: editionOf(sources, minutes),
    changes: changesAfter(...checks),
    locale,
    publicUrl,
  });
};
/** The feed as another library reads it: ical.js, a general parser of RFC 5545. */
function read(text: string) {
  const calendar = new ICAL.Component(ICAL.parse(text) as never);
  const events = calendar.getAllSubcomponents('vevent').map((one) => {
    const event = new ICAL.Event(one);
    return {
      uid: event.uid,
      from: event.startDate.toJSDate().toISOString(),
      to: event.endDate.toJSDate().toISOString(),
      sequence: event.sequence,
      summary: event.summary,
      description: event.description,
      status: one.getFirstPropertyValue('status'),
      stamp: String(one.getFirstPropertyValue('dtstamp')),
      url: one.getFirstPropertyValue('url'),
      busy: one.getFirstPropertyValue('transp'),
    };
  });
  return { calendar, events };
}

describe('expected returns and planned work (iCalendar, RFC 5545)', () => {
  it('with nothing expected is no empty calendar: one event states the count from its check until its end', () => {
    const { calendar, events } = read(feedOf([[0, noneOut]]));
    expect(events).toMatchObject([
      {
        from: '2026-03-04T20:05:00.000Z',
        to: '2026-03-04T20:25:00.000Z',
        summary: expect.stringMatching(
          /^0 of 3 hydrants are out of service\. Checked Wed, Mar 4, 14:05 CST\./,
        ) as string,
        description: expect.stringContaining('CC0 1.0') as string,
        busy: 'TRANSPARENT',
      },
    ]);
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    // Asked for again as often as it is made anew.
    expect(String(calendar.getFirstPropertyValue('refresh-interval'))).toBe('PT5M');
  });

  it('an expected return is tentative, and cancelled once the outage is over, under the same UID', () => {
    const before = read(feedOf([[0, oneOut]], 'en', 'https://hydrants.example/')).events[1];
    expect(before).toMatchObject({
      uid: `urn:uuid:${uuids.strike}`,
      from: '2026-03-06T22:00:00.000Z',
      summary: 'Expected back: Hydrant H-1, Elm St at First Ave',
      status: 'TENTATIVE',
      sequence: 0,
      stamp: '2026-03-04T20:05:00Z',
      url: 'https://hydrants.example/hydrants/H-1/',
    });
    expect(
      read(
        feedOf([
          [0, oneOut],
          [5, overAt(at(4))],
        ]),
      ).events[1],
    ).toMatchObject({
      uid: `urn:uuid:${uuids.strike}`,
      status: 'CANCELLED',
      sequence: 1,
      stamp: '2026-03-04T20:10:00Z',
    });
  });

  it('planned work stands with its hours, and says whether the hydrant is out for it', () => {
    expect(read(feedOf([[0, workPlanned]])).events[1]).toMatchObject({
      uid: `urn:uuid:${uuids.work}`,
      from: '2026-03-10T14:00:00.000Z',
      to: '2026-03-10T18:00:00.000Z',
      summary: 'Planned: Replacement. Hydrant H-3',
      description: 'The hydrant is to be out of service for this work.',
    });
    expect(read(feedOf([[0, workPlanned]], 'es')).events[1]?.summary).toBe(
      'Planificado: Sustitución. Hidrante H-3',
    );
  });

  it('work long over, in a far year, or at a hydrant that is in no inventory is not told', () => {
    const planned = workPlanned.statuses[0]!.planned[0]!;
    const work = (hydrantId: string, times: Partial<typeof planned>) =>
      aStatus(hydrantId, [], { planned: [{ ...planned, ...times }] });
    const sources = street([
      work('H-1', { from: '2026-02-01T00:00:00Z', to: '2026-02-01T09:00:00Z' }),
      work('H-2', { from: '2062-03-10T14:00:00Z', to: '2062-03-10T18:00:00Z' }),
      work('Z-9', {}),
    ]);
    expect(editionOf(sources).plannedWork).toEqual([]);
  });

  it('every line ends as the standard says and is at most 75 octets', () => {
    const text = feedOf([[0, street([...oneOut.statuses, ...workPlanned.statuses])]], 'es');
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    for (const line of text.split('\r\n'))
      expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });
});
