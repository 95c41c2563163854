import { describe, expect, test } from 'vitest';
import Papa from 'papaparse';
import { feedFiles } from '../../functions/publish/feeds.ts';
import { mapFiles } from '../../functions/publish/mapFiles.ts';
import type { LogEntry } from '../../functions/log/log.ts';
import { publishOnce } from '../../functions/publish/publish.ts';
import { publishAndReport } from '../../functions/publish/report.ts';
import { snapshotFile } from '../../functions/publish/pages.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import { aPublisher } from '../support/aPublisher.ts';
import { alerting, at, editionOf, oneOut } from '../support/feeds.ts';

/** Two reports that no projection had when the publisher read: 14:03 and 14:04 in the town's own time. */
const behind = { ...oneOut, unprojected: [at(-2), at(-1)] };
const missing = { reports: 2, since: at(-2) };
const publish = (sources: typeof behind | typeof oneOut) => {
  const edition = editionOf(sources, 0, alerting);
  const { feeds, memory } = feedFiles(edition, { changes: null, alerts: null }, alerting);
  const files = [snapshotFile(edition), ...feeds, ...memory, mapFiles(edition, []).index];
  // RFC 5545 folds its lines and writes some signs with a backslash before them.
  return new Map(
    files.map(({ key, bytes }) => {
      const text = new TextDecoder().decode(bytes);
      return [key, key.endsWith('.ics') ? text.replaceAll('\r\n ', '').replaceAll('\\', '') : text];
    }),
  );
};
/** What says nothing of the whole: the description of the addresses, one alert, the publisher's own list of alerts. */
const ofTheWhole = (key: string): boolean =>
  key !== 'v1/openapi.json' && key !== 'v1/alerts.json' && !key.endsWith('.cap.xml');

describe('reports that are in no feed yet', () => {
  test('are said to be missing in every feed, with the time since when', () => {
    const files = [...publish(behind)].filter(([key]) => ofTheWhole(key));
    expect(files.length).toBeGreaterThanOrEqual(13);
    for (const [key, text] of files)
      expect(text, key).toMatch(
        /"reports": ?2|2 reports received since Wed, Mar 4, 14:03 CST|2 avisos recibidos desde el mié, 4 de mar, 14:03/,
      );
  });

  test('in codes where a program reads codes', () => {
    const files = publish(behind);
    const json = (key: string) => JSON.parse(files.get(key) ?? 'null') as Record<string, unknown>;
    for (const key of ['v1/snapshot.json', 'v1/out-of-service.geojson', 'v1/changes.json', 'v1/index.json'])
      expect(json(key)['notYetShown'], key).toEqual(missing);
    expect(json('v1/map/index.json')['notYetShown']).toEqual(missing);
    expect(json('v1/en/out-of-service.feed.json')['_checked']).toMatchObject({ notYetShown: missing });
    const [summary] = Papa.parse<object>(files.get('v1/out-of-service.csv') ?? '', { header: true }).data;
    expect(summary).toMatchObject({ reports_not_yet_shown: '2', not_yet_shown_since: missing.since });
  });

  test('with none, no feed says that anything is missing', () => {
    for (const [key, text] of publish(oneOut))
      if (ofTheWhole(key)) expect(text, key).not.toMatch(/"reports"|received since|recibidos? desde/);
  });

  test('a page that would be left as it stands is made anew, to say so and to say so no more', async () => {
    const store = memoryPublished();
    const made = async (sources: typeof oneOut, minutes: number): Promise<readonly string[]> =>
      (await publishOnce(aPublisher(store, sources, alerting), new Date(at(minutes)))).written;
    const pages = (await made(oneOut, 0)).filter((key) => key.endsWith('.html'));
    expect(pages).toContain('404.html');
    expect(await made(oneOut, 1)).not.toContain('404.html');
    for (const [minutes, sources] of [
      [2, { ...oneOut, unprojected: [at(1)] }],
      [3, oneOut],
    ] as const)
      expect((await made(sources, minutes)).filter((key) => key.endsWith('.html')).toSorted()).toEqual(
        pages.toSorted(),
      );
  });

  test('is a line of its own beside the publication, by the name that the alarm counts, and none when nothing is', async () => {
    const store = memoryPublished();
    const lines = async (sources: typeof oneOut, minutes: number): Promise<readonly LogEntry[]> => {
      const said: LogEntry[] = [];
      const deps = aPublisher(store, sources, alerting);
      await publishAndReport(deps, new Date(at(minutes)), (line) => said.push(line));
      return said;
    };
    // The metric filter of the deployment is `{ $.event = "public-page-behind" }` (tests/infra/aws/watch.test.ts).
    expect(await lines(behind, 0)).toMatchObject([
      { event: 'public-page-published' },
      { level: 'warn', event: 'public-page-behind', reports: 2, since: at(-2) },
    ]);
    expect(await lines(oneOut, 5)).toMatchObject([{ event: 'public-page-published' }]);
  });
});
