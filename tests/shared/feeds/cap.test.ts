import { describe, expect, it } from 'vitest';
import { alertFeed } from '../../../shared/feeds/alertFeed.ts';
import { nextAlerts, type AlertLog } from '../../../shared/feeds/alerts.ts';
import { alertIdentifier, capMessage } from '../../../shared/feeds/cap.ts';
import { nextChanges, type FeedChanges } from '../../../shared/feeds/changes.ts';
import { utilitySettings } from '../../../shared/utility/settings.ts';
import { anOutage, aStatus } from '../../support/town.ts';
import {
  alerting,
  at,
  editionOf,
  noneOut,
  oneOut,
  overAt,
  street,
  twoReasons,
  uuids,
  type Check,
} from '../../support/feeds.ts';
import { xmlFaults } from '../../support/xmllint.ts';

const settings = alerting.publishing.alerts!;
const publicUrl = 'https://hydrants.example/';

/** The log after each of the checks, and every message as it stood published after it. */
function alertsAfter(...checks: readonly Check[]): { log: AlertLog; messages: string[]; feed: string } {
  let changes: FeedChanges | null = null;
  let log: AlertLog | null = null;
  const messages: string[] = [];
  let feed = '';
  for (const [minutes, sources] of checks) {
    const edition = editionOf(sources, minutes, alerting);
    changes = nextChanges(changes, edition);
    // As it is read back: through a file.
    log = nextAlerts(log && (JSON.parse(JSON.stringify(log)) as AlertLog), changes);
    for (const alerted of log.outages)
      messages.push(capMessage({ alerted, snapshot: edition.snapshot, settings, publicUrl }));
    feed = alertFeed({ log, snapshot: edition.snapshot, publicUrl });
  }
  if (!log) throw new Error('no check');
  return { log, messages: [...new Set(messages)], feed };
}
const field = (message: string | undefined, name: string): string | undefined =>
  new RegExp(`<${name}>([^<]*)</${name}>`).exec(message ?? '')?.[1];
const later = (minutes: number) =>
  street([
    aStatus('H-1', [anOutage(uuids.strike, { since: '2026-03-04T18:40:00Z', expectedAt: at(minutes) })]),
  ]);

describe('the schema by which messages are checked', () => {
  /** After the standard's appendix A (example of an earthquake), shortened and with names that are invented; from memory. */
  const example = `<?xml version="1.0" encoding="UTF-8"?>
<alert xmlns="urn:oasis:names:tc:emergency:cap:1.2">
  <identifier>QK13970876.2</identifier><sender>quakes@seismic.example</sender><sent>2003-06-11T20:56:00-07:00</sent>
  <status>Actual</status><msgType>Update</msgType><scope>Public</scope>
  <references>quakes@seismic.example,QK13970876.1,2003-06-11T20:30:00-07:00</references>
  <info><category>Geo</category><event>Earthquake</event><urgency>Past</urgency><severity>Minor</severity>
  <certainty>Observed</certainty><senderName>Earthquake Network</senderName>
  <headline>EQ 3.4 Example County</headline><web>http://seismic.example/latest.html</web>
  <parameter><valueName>EventID</valueName><value>13970876</value></parameter>
  <area><areaDesc>1 mi. WSW of Example City</areaDesc><circle>32.9525,-115.5527 0</circle></area></info>
</alert>`;

  it('passes an example of the standard and refuses what it forbids', async () => {
    expect(await xmlFaults(example, 'cap-1.2.xsd')).toEqual([]);
    for (const [what, instead] of [
      ['20:56:00-07:00', '20:56:00Z'],
      ['QK13970876.2', 'QK 2'],
      ['<severity>Minor</severity>', ''],
      ['>Geo<', '>Water<'],
      [
        '<status>Actual</status><msgType>Update</msgType>',
        '<msgType>Update</msgType><status>Actual</status>',
      ],
      ['-115.5527 0', '-115.5527'],
      ['QK13970876.1,', ''],
    ] as const)
      expect(await xmlFaults(example.replace(what, instead), 'cap-1.2.xsd'), what).not.toEqual([]);
  });
});

describe('alerts (CAP 1.2)', () => {
  it('are off unless the settings say as whom, and nothing of them has a default', () => {
    const parsed = (alerts: unknown): boolean =>
      utilitySettings.safeParse({ ...alerting, publishing: { ...alerting.publishing, alerts } }).success;
    expect(parsed(undefined)).toBe(true);
    expect(parsed(settings)).toBe(true);
    for (const key of ['sender', 'status', 'urgency', 'severity'] as const)
      expect(parsed({ ...settings, [key]: undefined }), key).toBe(false);
    expect(parsed({ ...settings, sender: 'Water Dept, Millrace' })).toBe(false);
    expect(parsed({ ...settings, status: 'Exercise' })).toBe(false);
  });

  it('of a whole outage are an alert, an update and a cancel, each valid, each naming those before it', async () => {
    const { messages } = alertsAfter(
      [0, oneOut],
      [5, oneOut],
      [10, later(900)],
      [20, overAt(at(19))],
      [25, overAt(at(19))],
    );
    for (const message of messages) expect(await xmlFaults(message, 'cap-1.2.xsd')).toEqual([]);
    expect(messages.map((message) => field(message, 'msgType'))).toEqual(['Alert', 'Update', 'Cancel']);
    expect(messages.map((message) => field(message, 'identifier'))).toEqual(
      [1, 2, 3].map((n) => `${uuids.strike}.${n}`),
    );
    const first = `hydrants.example,${uuids.strike}.1,2026-03-04T20:05:00-00:00`;
    const second = `hydrants.example,${uuids.strike}.2,2026-03-04T20:15:00-00:00`;
    expect(messages.map((message) => field(message, 'references'))).toEqual([
      undefined,
      first,
      `${first} ${second}`,
    ]);
    expect(messages.map((message) => field(message, 'scope'))).toEqual(['Public', 'Public', 'Public']);
    expect(field(messages[2], 'responseType')).toBe('AllClear');
    expect(field(messages[2], 'urgency')).toBe('Past');
    // What to do is for while it lasts.
    expect(messages.map((message) => message.includes('<instruction>'))).toEqual([true, true, false]);
  });

  it('speak in both languages, of the place as a point, with whom to call', async () => {
    const [message] = alertsAfter([0, oneOut]).messages;
    expect(message?.match(/<language>[^<]*/g)).toEqual(['<language>en-US', '<language>es-US']);
    expect(field(message, 'circle')).toBe('39.2,-98.4 0');
    expect(field(message, 'contact')).toBe('555-0142');
    expect(field(message, 'web')).toBe('https://hydrants.example/hydrants/H-1/');
    expect(field(message, 'onset')).toBe('2026-03-04T18:40:00-00:00');
  });

  it('one message is the same bytes at every check', () => {
    expect(alertsAfter([0, oneOut], [5, oneOut], [10, oneOut]).messages).toHaveLength(1);
    // And in the new year: sent at 14:05 on New Year's Eve in Chicago, looked at again at five past midnight.
    const eve = 302 * 24 * 60;
    expect(alertsAfter([eve, oneOut], [eve + 600, oneOut]).messages).toHaveLength(1);
  });

  it('run out after a day, and are told again before that while the hydrant is out', () => {
    const hours = (count: number): number => count * 60;
    const { messages } = alertsAfter(
      [0, oneOut],
      [hours(11), oneOut],
      [hours(12), oneOut],
      [hours(24), oneOut],
      [hours(37), oneOut],
    );
    expect(messages.map((message) => field(message, 'sent')?.slice(0, 16))).toEqual([
      '2026-03-04T20:05',
      '2026-03-05T08:05',
      '2026-03-05T20:05',
      '2026-03-06T09:05',
    ]);
    expect(field(messages[0], 'expires')).toBe('2026-03-05T20:05:00-00:00');
    // What ran out by itself needs nobody to take its place.
    expect(field(messages[3], 'references')).toBe(
      `hydrants.example,${uuids.strike}.3,2026-03-05T20:05:00-00:00`,
    );
  });

  it('a cancel does not say all clear while the hydrant is out for another reason, or where no end is known', () => {
    const still = alertsAfter([0, twoReasons], [5, overAt(at(4), 'main-shut')]).messages;
    const cancel = still.find((message) => field(message, 'msgType') === 'Cancel');
    expect(cancel).toBeDefined();
    expect(cancel).not.toContain('AllClear');
    expect(field(cancel, 'headline')).toMatch(/still out of service/);
    const gone = alertsAfter([0, oneOut], [5, noneOut]).messages.at(-1);
    expect(field(gone, 'msgType')).toBe('Cancel');
    expect(gone).not.toContain('AllClear');
  });

  it('an outage that opens again is a new alert that refers to nothing', () => {
    const { messages } = alertsAfter([0, oneOut], [5, overAt(at(4))], [10, oneOut]);
    expect(messages.map((message) => field(message, 'msgType'))).toEqual(['Alert', 'Cancel', 'Alert']);
    expect(field(messages[2], 'identifier')).toBe(`${uuids.strike}.3`);
    expect(field(messages[2], 'references')).toBeUndefined();
  });

  it('have identifiers of signs that the standard allows (§3.2.1) and a file’s name may have', () => {
    expect(alertIdentifier(uuids.strike, 3)).toBe(`${uuids.strike}.3`);
    for (const id of ['a b', 'a,b', '<a&b>', 'ñ/7', '(7)'])
      expect(alertIdentifier(id, 1)).toMatch(/^[A-Za-z0-9_.-]+\.1$/);
  });

  it('what was over before anything was sent is not told', () => {
    expect(alertsAfter([0, overAt(at(-5))]).messages).toEqual([]);
    // Alerting was set after it ended, while the other feeds still tell of it.
    const changes = nextChanges(nextChanges(null, editionOf(oneOut)), editionOf(overAt(at(4)), 5));
    expect(changes.outages).toHaveLength(1);
    expect(nextAlerts(null, changes).outages).toEqual([]);
  });

  it('of words with signs that XML escapes are valid, with a place that nobody knows too', async () => {
    for (const message of alertsAfter([0, twoReasons]).messages)
      expect(await xmlFaults(message, 'cap-1.2.xsd')).toEqual([]);
    const placeless = street([aStatus('G 7', [anOutage(uuids.past, { since: at(-10) })])]);
    const [message] = alertsAfter([0, placeless]).messages;
    expect(await xmlFaults(message ?? '', 'cap-1.2.xsd')).toEqual([]);
    expect(message).not.toContain('<circle>');
  });

  it('stand in a valid feed that leads to each, under an id of its own', async () => {
    const { feed } = alertsAfter([0, oneOut], [5, later(900)]);
    expect(await xmlFaults(feed, 'atom.rng')).toEqual([]);
    expect(feed).toContain(
      `<link rel="alternate" type="application/cap+xml" href="https://hydrants.example/v1/alerts/${uuids.strike}.2.cap.xml"/>`,
    );
    expect(await xmlFaults(alertsAfter([0, noneOut]).feed, 'atom.rng')).toEqual([]);
  });
});
