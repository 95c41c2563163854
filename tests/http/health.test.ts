import { describe, expect, it } from 'vitest';
import { createHealthApp, type HealthDeps } from '../../functions/health/app.ts';
import { publishAndReport } from '../../functions/publish/report.ts';
import { knownAnswers, wrongAnswers } from '../../shared/compute/knownAnswers.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import { townSettings, townSources } from '../support/town.ts';
import { testWorld } from './support/world.ts';

/** A utility whose page is published every five minutes and may be relied on for twenty. */
async function world() {
  const { deps } = await testWorld();
  const published = memoryPublished();
  const publish = (at: string, sources = async () => townSources()) =>
    publishAndReport(
      {
        settings: townSettings,
        store: published,
        renderer: {
          render: async (path, { edition: { snapshot } }) =>
            `<a href="tel:5550142"></a><time datetime="${snapshot.checkedAt}"></time><time datetime="${snapshot.relyUntil}"></time>${path}`,
          asset: async () => new Uint8Array(),
        },
        readSources: sources,
        stillRecorded: async () => true,
      },
      new Date(at),
      () => undefined,
    );
  const health = async (
    at: string,
    store: Parameters<typeof createHealthApp>[0]['published'] = published,
    more: Partial<HealthDeps> = {},
  ) => {
    const app = createHealthApp({
      ...deps,
      ...more,
      settings: townSettings,
      published: store,
      now: () => new Date(at),
    });
    const response = await app.request('/api/health');
    return { status: response.status, body: (await response.json()) as Record<string, unknown> };
  };
  return { publish, health };
}

describe('the health route', () => {
  it('is green while the page that stands may be relied on, and red from that minute on', async () => {
    const { publish, health } = await world();
    await publish('2026-03-04T20:05:00.000Z');
    expect(await health('2026-03-04T20:24:59.000Z')).toMatchObject({
      status: 200,
      body: {
        status: 'ok',
        publicPage: {
          state: 'good',
          checkedAt: '2026-03-04T20:05:00.000Z',
          relyUntil: '2026-03-04T20:25:00.000Z',
          // From 20:05:00 to 20:24:59.
          ageSeconds: 1199,
        },
      },
    });
    expect(await health('2026-03-04T20:25:00.000Z')).toMatchObject({
      status: 503,
      body: {
        status: 'failing',
        checks: { arithmetic: true, store: true, publicPage: false },
        publicPage: { state: 'old' },
      },
    });
  });

  it('turns red when publications fail for too long, and green with the next that does not', async () => {
    const { publish, health } = await world();
    await publish('2026-03-04T20:05:00.000Z');
    const broken = () => Promise.reject(new StoreUnavailable('no answer'));
    await expect(publish('2026-03-04T20:20:00.000Z', broken)).rejects.toThrow();
    expect((await health('2026-03-04T20:20:00.000Z')).status).toBe(200);
    expect((await health('2026-03-04T20:30:00.000Z')).status).toBe(503);
    await publish('2026-03-04T20:31:00.000Z');
    expect((await health('2026-03-04T20:31:30.000Z')).status).toBe(200);
  });

  it('is red when nothing was ever published, and when nobody can tell', async () => {
    const { health } = await world();
    expect(await health('2026-03-04T20:05:00.000Z')).toMatchObject({
      status: 503,
      body: { publicPage: { state: 'none', ageSeconds: null } },
    });
    const away = { head: () => Promise.reject(new StoreUnavailable('no answer')) };
    expect(await health('2026-03-04T20:05:00.000Z', away)).toMatchObject({
      status: 503,
      body: { publicPage: null, checks: { publicPage: false } },
    });
  });

  it('is red when a worked example that somebody else printed does not come out, and says which', async () => {
    const { publish, health } = await world();
    await publish('2026-03-04T20:05:00.000Z');
    const at = '2026-03-04T20:06:00.000Z';
    expect(await health(at, undefined, { wrong: () => ['bill'] })).toMatchObject({
      status: 503,
      body: { status: 'failing', checks: { arithmetic: false }, wrong: ['bill'] },
    });
    expect((await health(at)).body).not.toHaveProperty('wrong');
  });
});

describe('what is recomputed', () => {
  it('comes out as printed, each from a source of its own', () => {
    expect(wrongAnswers()).toEqual([]);
    expect(knownAnswers.map(({ id }) => id)).toEqual(['flow-test', 'bill', 'units']);
    expect(new Set(knownAnswers.map(({ source }) => source)).size).toBe(3);
  });

  it('counts as wrong where it differs, and where it cannot be computed at all', () => {
    const broken = () => {
      throw new RangeError('no');
    };
    expect(
      wrongAnswers([
        { id: 'a', source: '', isRight: () => false },
        { id: 'b', source: '', isRight: broken },
        { id: 'c', source: '', isRight: () => true },
      ]),
    ).toEqual(['a', 'b']);
  });
});
