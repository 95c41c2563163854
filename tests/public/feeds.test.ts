import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { feedFiles } from '../../functions/publish/feeds.ts';
import { publishOnce } from '../../functions/publish/publish.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { nearestIndex } from '../../shared/nearest/nearest.ts';
import { project } from '../../shared/projections/project.ts';
import { buildEdition, type PublicSources } from '../../shared/public/build.ts';
import type { FactKind } from '../../shared/submissions/kinds.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import { aPublisher } from '../support/aPublisher.ts';
import { allKinds, bodyWithCanary } from '../support/canaries.ts';
import { alerting, at, feedSettings, noneOut, oneOut, overAt, uuids } from '../support/feeds.ts';
import { sampleSubjectTypes } from '../support/sampleBodies.ts';
import { fact, onClaim, onHydrant, onStrike, onUtility, recorded } from '../support/submissions.ts';
import {
  aHydrant,
  inventoryOf,
  townHydrants,
  townNow,
  townSources,
  anOutage,
  aStatus,
} from '../support/town.ts';

type Store = ReturnType<typeof memoryPublished>;
const publish = (store: Store, sources: PublicSources, minutes = 0, settings = alerting) =>
  publishOnce(aPublisher(store, sources, settings), new Date(at(minutes)));
const textAt = (store: Store, key: string): string =>
  new TextDecoder().decode(store.objects.get(key)?.bytes ?? new Uint8Array());
const feedKeys = (store: Store): string[] => [...store.objects.keys()].filter((key) => key.startsWith('v1/'));

describe('what is published for machines', () => {
  test('has the time of the check and the time after which it does not hold in every feed', async () => {
    const store = memoryPublished();
    await publish(store, townSources());
    const unaged = ['v1/openapi.json', 'v1/alerts.json', 'v1/published.json'];
    const feeds = feedKeys(store).filter(
      (key) => !unaged.includes(key) && !key.startsWith('v1/map') && !key.endsWith('.cap.xml'),
    );
    expect(feeds.length).toBeGreaterThanOrEqual(11);
    for (const key of feeds) {
      // RFC 5545 writes instants without their signs; lines of it are folded.
      const text = textAt(store, key).replaceAll('\r\n ', '');
      expect(text, key).toMatch(
        key.endsWith('.ics') ? 'DTSTART:20260304T200500Z' : '2026-03-04T20:05:00.000Z',
      );
      expect(text, key).toMatch(key.endsWith('.ics') ? 'DTEND:20260304T202500Z' : '2026-03-04T20:25:00.000Z');
      expect(text, key).toContain('CC0 1.0');
      if (key !== 'v1/changes.json') expect(text, key).toContain('555-0142');
    }
  });

  test('its index leads to every feed, and to nothing that there is not', async () => {
    const store = memoryPublished();
    await publish(store, oneOut);
    const { feeds } = JSON.parse(textAt(store, 'v1/index.json')) as {
      feeds: { href: string; type: string }[];
    };
    for (const { href, type } of feeds) {
      const found = store.objects.get(new URL(href).pathname.slice(1));
      expect(found?.contentType.split(';')[0], href).toBe(type);
    }
    expect(feeds.length).toBe(12);
  });

  test('alerts are off unless the settings have them', async () => {
    const store = memoryPublished();
    await publish(store, oneOut, 0, feedSettings);
    expect(feedKeys(store).filter((key) => key.includes('alert'))).toEqual([]);
    expect(textAt(store, 'v1/index.json')).not.toContain('alerts');
    await publish(store, oneOut, 5, alerting);
    expect(feedKeys(store)).toContain(`v1/alerts/${uuids.strike}.1.cap.xml`);
  });

  test('news is news once, over publications and a restart', async () => {
    const store = memoryPublished();
    const entry = (): string =>
      /<entry>.*?<\/entry>/s.exec(textAt(store, 'v1/en/out-of-service.atom'))?.[0] ?? '';
    await publish(store, oneOut);
    const first = entry();
    expect(first).toContain(`<id>urn:uuid:${uuids.strike}</id>`);
    const { written } = await publish(store, oneOut, 5);
    expect(entry()).toBe(first);
    // The one message stands as it was sent.
    expect(written.filter((key) => key.endsWith('.cap.xml'))).toEqual([]);
    await publish(store, overAt(at(8)), 10);
    expect(entry()).toContain(`<updated>${at(10)}</updated>`);
    expect(textAt(store, `v1/alerts/${uuids.strike}.2.cap.xml`)).toContain('<msgType>Cancel</msgType>');
  });

  test('a damaged memory is no reason to stop, and everything is told as listed now', async () => {
    const store = memoryPublished();
    await publish(store, oneOut);
    for (const damage of ['{', '[]']) {
      const { etag, ...standing } = (await store.get('v1/changes.json'))!;
      await store.put('v1/changes.json', { ...standing, bytes: new TextEncoder().encode(damage) }, etag);
      const minutes = damage === '{' ? 5 : 10;
      expect(await publish(store, oneOut, minutes)).toMatchObject({ outcome: 'published' });
      expect(textAt(store, 'v1/en/out-of-service.atom')).toContain(`<published>${at(minutes)}</published>`);
    }
  });

  test('a memory that cannot be read stops the publication, and the last feeds stay', async () => {
    const store = memoryPublished();
    await publish(store, oneOut);
    const before = textAt(store, 'v1/out-of-service.geojson');
    const faulty: Store = {
      ...store,
      get: async (key) => {
        if (key === 'v1/changes.json') throw new StoreUnavailable('cut off');
        return store.get(key);
      },
    };
    await expect(publish(faulty, overAt(at(4)), 5)).rejects.toBeInstanceOf(StoreUnavailable);
    expect(textAt(store, 'v1/out-of-service.geojson')).toBe(before);
  });

  test('a publication cut off anywhere among the feeds leaves no news out', async () => {
    for (let last = 0; last < 24; last++) {
      const store = memoryPublished();
      await publish(store, noneOut);
      let writes = 0;
      const cut: Store = {
        ...store,
        put: async (...given) => {
          if (++writes > last) throw new StoreUnavailable('cut off');
          return store.put(...given);
        },
      };
      await publish(cut, oneOut, 5).catch(() => undefined);
      await publish(store, oneOut, 10);
      expect(textAt(store, 'v1/en/out-of-service.atom'), `after ${last}`).toContain(uuids.strike);
      expect(
        feedKeys(store).filter((key) => key.endsWith('.cap.xml')),
        `after ${last}`,
      ).toEqual([`v1/alerts/${uuids.strike}.1.cap.xml`]);
    }
  });
});

describe('what is private', () => {
  const subjects = {
    strike: onStrike(1),
    hydrant: onHydrant('H-0012'),
    claim: onClaim(2),
    utility: onUtility,
  };

  function sourcesOf(kinds: readonly FactKind[], word: string): PublicSources {
    const submissions = kinds.map((kind, index) => {
      const body = bodyWithCanary(kind, word) as BodyOf<FactKind>;
      const person = { person: { personId: word }, device: { deviceId: word } };
      return fact(kind, index + 1, subjects[sampleSubjectTypes[kind]], body, person);
    });
    const { hydrants, strikes } = project(
      submissions.map((submission) => recorded(submission)),
      () => 'dry-barrel',
    );
    const town = [aHydrant('H-12'), aHydrant('H-0012', { latitudeDeg: 39.2012 })];
    return {
      inventory: { ...inventoryOf(town), index: nearestIndex(town) },
      statuses: hydrants,
      strikes,
      flowTests: new Map(),
    };
  }

  /** Publishes it, and once more when all of it was withdrawn: what is remembered is private no less. */
  async function feedsOf(kinds: readonly FactKind[], word: string): Promise<Store> {
    const store = memoryPublished();
    const sources = sourcesOf(kinds, word);
    await publish(store, sources);
    const gone = { ...sources, statuses: [], strikes: [] };
    await publishOnce(
      { ...aPublisher(store, gone, alerting), stillRecorded: async () => false },
      new Date(at(5)),
    );
    return store;
  }

  test('is in no feed, whatever was typed into any field of any form', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.subarray([...allKinds], { minLength: 1 }),
        fc.stringMatching(/^QX[a-z0-9]{10}$/),
        async (kinds, word) => {
          const store = await feedsOf(kinds, word);
          for (const key of feedKeys(store)) expect(textAt(store, key).includes(word), key).toBe(false);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('and the property is not empty: what was read has the words, and the feeds have the events', async () => {
    expect(JSON.stringify(sourcesOf([...allKinds], 'QXcanary'))).toContain('QXcanary');
    const store = memoryPublished();
    await publish(store, sourcesOf([...allKinds], 'QXcanary'));
    expect(textAt(store, 'v1/en/out-of-service.atom')).toContain('<entry>');
    expect(textAt(store, 'v1/alerts.atom')).toContain('<entry>');
  });
});

describe('at scale', () => {
  test('2,000 outages make feeds that a phone can still read', { timeout: 60_000 }, async () => {
    const town = townHydrants(4000);
    const statuses = town
      .slice(0, 2000)
      .map(({ hydrantId }, index) =>
        aStatus(hydrantId, [
          anOutage(`0195639e-2c00-7a3b-8d1e-${String(index).padStart(12, '0')}`, { since: at(-index) }),
        ]),
      );
    const sources: PublicSources = { ...townSources(town), statuses, strikes: [], flowTests: new Map() };
    const edition = buildEdition(sources, feedSettings, townNow.toISOString());
    const { feeds } = feedFiles(edition, { changes: null, alerts: null }, feedSettings);
    const kilobytes = (key: string): number =>
      (feeds.find((file) => file.key === key)?.bytes.length ?? Number.NaN) / 1000;
    // News is the newest alone; the rest is as long as the list is.
    for (const locale of ['en', 'es']) {
      expect(kilobytes(`v1/${locale}/out-of-service.atom`)).toBeLessThan(200);
      expect(kilobytes(`v1/${locale}/out-of-service.feed.json`)).toBeLessThan(200);
    }
    expect(kilobytes('v1/out-of-service.geojson')).toBeLessThan(1200);
    expect(kilobytes('v1/out-of-service.csv')).toBeLessThan(500);
  });
});
