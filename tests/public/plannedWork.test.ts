import { beforeAll, describe, expect, test } from 'vitest';
import { publishOnce } from '../../functions/publish/publish.ts';
import type { SiteRenderer } from '../../functions/publish/renderer.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import { builtRenderer } from '../support/builtSite.ts';
import { anOutage, aStatus, townNow, townSettings, townSources } from '../support/town.ts';

let renderer: SiteRenderer;
beforeAll(async () => {
  renderer = await builtRenderer();
}, 120_000);

const DAY_MS = 86_400_000;
/** Work at each hydrant, a day after the one before; the first of them is over at the check. */
const planned = (ids: readonly string[]) =>
  ids.map((hydrantId, index) =>
    aStatus(hydrantId, [], {
      planned: [
        {
          submissionId: `w-${hydrantId}`,
          work: index % 2 === 0 ? 'flushing' : 'replacement',
          from: new Date(townNow.getTime() + (index - 1) * DAY_MS).toISOString(),
          to: new Date(townNow.getTime() + (index - 1) * DAY_MS + 3_600_000).toISOString(),
          takesOutOfService: index % 2 === 1,
        },
      ],
    }),
  );

/** The words of the section, in a language; null when the page has none. */
async function workOf(
  ids: readonly string[],
  key = 'index.html',
  statuses = planned(ids),
): Promise<string | null> {
  const store = memoryPublished();
  const sources = { ...townSources(), statuses, strikes: [] };
  await publishOnce(
    {
      settings: townSettings,
      store,
      renderer,
      readSources: async () => sources,
      stillRecorded: async () => true,
    },
    townNow,
  );
  const html = new TextDecoder().decode(store.objects.get(key)?.bytes);
  const [section = null] = /<section[^>]* aria-labelledby="work-title"[\s\S]*?<\/section>/.exec(html) ?? [];
  return section?.replace(/<[^>]+>/g, ' ').replaceAll(/\s+/g, ' ') ?? null;
}

describe('planned work on the list', () => {
  test('says which hydrant, what, from when to when, and whether it will be out; what is over is left off', async () => {
    const words = await workOf(['H-0100', 'H-0101', 'H-0102']);
    // The check is at 14:05 CST of March 4: work of the 4th begins then, that of the 3rd is over.
    expect(words).not.toContain('H-0100');
    expect(words).toMatch(
      /H-0101 .*Replacement: *Wed, Mar 4, 14:05 CST *– *Wed, Mar 4, 15:05 CST +The hydrant is to be out of service for this work\./,
    );
    expect(words).toMatch(/H-0102.*Flushing: *Thu, Mar 5, 14:05 CST.*The hydrant is to stay in service\./);
    expect(words).not.toMatch(/planned later/);
    expect(await workOf(['H-0100', 'H-0101', 'H-0102'], 'es/index.html')).toMatch(
      /Sustitución: *mié, 4 de mar/,
    );
  });

  test('is the next twenty, and how many more; with none there is no such part', async () => {
    const ids = Array.from({ length: 26 }, (_, index) => `H-0${String(100 + index)}`);
    const words = (await workOf(ids)) ?? '';
    expect(words.match(/H-01\d\d/g)).toHaveLength(20);
    expect(words).toContain('5 more are planned later.');
    expect(await workOf(['H-0100'])).toBeNull();
  });
});

describe('planned work on a hydrant\u2019s own page', () => {
  // With an earlier outage, or it would have no page.
  const [over, toCome] = planned(['H-0100', 'H-0101']).map((status) => ({
    ...status,
    past: [
      anOutage(`past-${status.hydrantId}`, {
        endedAt: '2026-02-04T12:00:00Z',
        since: '2026-02-03T12:00:00Z',
      }),
    ],
  }));
  const statuses = [over!, toCome!];

  test('says what, from when to when, and whether it will be out, in both languages', async () => {
    const page = 'hydrants/H-0101/index.html';
    expect(await workOf([], page, statuses)).toMatch(
      /Replacement: *Wed, Mar 4, 14:05 CST *– *Wed, Mar 4, 15:05 CST +The hydrant is to be out of service for this work\./,
    );
    expect(await workOf([], `es/${page}`, statuses)).toMatch(/Sustitución: *mié, 4 de mar/);
  });

  test('leaves off what is over, and names no work of another', async () => {
    expect(await workOf([], 'hydrants/H-0100/index.html', statuses)).toBeNull();
  });
});
