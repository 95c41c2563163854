import { check } from '@placemarkio/check-geojson';
import { Ajv } from 'ajv';
import schema from 'geojson-schema/FeatureCollection.json' with { type: 'json' };
import { describe, expect, it } from 'vitest';
import { geoJsonFeed } from '../../../shared/feeds/geojson.ts';
import { anOutage, aStatus, aStrike, townSettings, townSources } from '../../support/town.ts';
import { editionOf, noneOut, oneOut, street, twoReasons, uuids } from '../../support/feeds.ts';

// The schema that geojson.org publishes, by a general validator; and a linter of RFC 7946.
const valid = new Ajv().compile(schema);
const feedOf = (sources: Parameters<typeof editionOf>[0]): ReturnType<typeof geoJsonFeed> =>
  geoJsonFeed(editionOf(sources).snapshot);
const nowhere = { ...street(), strikes: [aStrike(uuids.strike, { since: '2026-03-04T18:40:00Z' })] };

describe('GeoJSON (RFC 7946)', () => {
  it.each([
    ['a town', townSources()],
    ['one out', oneOut],
    ['none out', noneOut],
    ['no inventory', { ...oneOut, inventory: null }],
    ['a place that nobody knows', nowhere],
  ])('of %s is valid by its published schema and by a linter', (_, sources) => {
    const text = JSON.stringify(feedOf(sources));
    expect(valid(JSON.parse(text)), JSON.stringify(valid.errors)).toBe(true);
    expect(() => check(text)).not.toThrow();
  });

  it('the checks tell: latitude before longitude, a point of one number, a feature without a geometry', () => {
    const feed = feedOf(oneOut);
    const broken = (change: object): string =>
      JSON.stringify({ ...feed, features: feed.features.map((feature) => ({ ...feature, ...change })) });
    expect(() => check(broken({ geometry: { type: 'Point', coordinates: [1] } }))).toThrow();
    expect(valid(JSON.parse(broken({ geometry: undefined })))).toBe(false);
    // 98.4° W is no latitude, which the feed's own schema says before it leaves.
    expect(feed.features[0]?.geometry?.coordinates).toEqual([-98.4, 39.2]);
  });

  it('is one feature a hydrant, named by it, with every reason it is out', () => {
    const [feature] = feedOf(twoReasons).features;
    expect(feature).toMatchObject({
      id: 'H-2',
      properties: {
        hydrantId: 'H-2',
        cause: 'main-shut',
        since: '2026-03-04T09:00:00Z',
        // The main has no time yet, so nobody knows when the hydrant is back.
        expectedAt: null,
        outages: [{ id: `urn:uuid:${uuids.main}` }, { id: `urn:uuid:${uuids.strike}` }],
      },
    });
  });

  it('says when it is expected back where every outage has a time', () => {
    expect(feedOf(oneOut).features[0]?.properties.expectedAt).toBe('2026-03-06T22:00:00Z');
    const expected = ['2026-03-05T22:00:00Z', '2026-03-09T22:00:00Z', '2026-03-06T22:00:00Z'];
    const ids = [uuids.strike, uuids.main, uuids.past];
    const threeReasons = street([
      aStatus(
        'H-1',
        expected.map((expectedAt, index) => anOutage(ids[index]!, { cause: 'frozen', expectedAt })),
      ),
    ]);
    // It is back when the last of them is over.
    expect(feedOf(threeReasons).features[0]?.properties.expectedAt).toBe('2026-03-09T22:00:00Z');
  });

  it('a place that nobody knows is a feature without a position, named by its outage', () => {
    expect(feedOf(nowhere).features).toMatchObject([{ id: `urn:uuid:${uuids.strike}`, geometry: null }]);
  });

  it('with nothing out says so as a checked fact, with its times, the number to call and the terms', () => {
    expect(feedOf(noneOut)).toMatchObject({
      features: [],
      hydrants: 3,
      outOfService: 0,
      // 20:05 UTC is 14:05 Central standard time.
      statement:
        '0 of 3 hydrants are out of service. Checked Wed, Mar 4, 14:05 CST. Do not rely on this after Wed, Mar 4, 14:25 CST.',
      checkedAt: '2026-03-04T20:05:00.000Z',
      relyUntil: '2026-03-04T20:25:00.000Z',
      emergencyPhone: townSettings.emergencyPhone,
      license: { name: 'CC0 1.0' },
    });
  });

  it('with no inventory says that it is not set up, and gives no count', () => {
    const feed = feedOf({ ...noneOut, inventory: null });
    expect(feed).toMatchObject({ hydrants: null, outOfService: null, features: [] });
    expect(feed.statement).toMatch(/^Not set up/);
  });
});
