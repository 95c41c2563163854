import { afterAll, beforeAll, expect, it } from 'vitest';
import { demoUtility } from '../../infra/local/demo/index.ts';
import { townInventoryCsv } from '../../infra/local/demo/town.ts';
import { loadInventoryCsv } from '../../infra/local/loadInventory.ts';
import { builtRenderer } from '../support/builtSite.ts';
import { ports } from '../support/ports.ts';
import { fact, onStrike } from '../support/submissions.ts';
import { runningServer, type Running } from './support/running.ts';

/** From the answer "accepted" to the page that somebody loads, over HTTP: what the issue allows on one machine. */
const ALLOWED_MS = 10_000;
const hydrantId = 'TH-0071';

let running: Running;
beforeAll(async () => {
  await builtRenderer();
  running = await runningServer(ports.toPublic);
  await loadInventoryCsv(townInventoryCsv(), 'town.csv', 'm-401');
  // As `npm start` begins.
  await running.server.following.publishNow();
  running.server.following.startPublishing(demoUtility.publishing.everyMinutes);
}, 180_000);
afterAll(() => running.close());

const page = async (path: string): Promise<string> => String((await running.ask('GET', path)).body);
async function until(path: string, shows: (text: string) => boolean): Promise<void> {
  const from = performance.now();
  while (!shows(await page(path))) {
    if (performance.now() - from > ALLOWED_MS) throw new Error(`${path} does not show it after 10 s`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

it('a strike stands on the public page within ten seconds of being accepted, with the hydrant’s own page', async () => {
  expect(await page('/')).toContain('0 of ');
  expect(await page('/')).not.toContain(hydrantId);
  const minutesAgo = (minutes: number): string => new Date(Date.now() - minutes * 60_000).toISOString();
  const strike = fact(
    'strike',
    1,
    onStrike(1),
    { hydrantId, photos: [] },
    { occurredAt: minutesAgo(5), sentAt: minutesAgo(0) },
  );
  expect(await running.submit('crew', strike)).toMatchObject({ status: 201 });
  const from = performance.now();
  await until('/', (html) => html.includes('1 of ') && html.includes(hydrantId));
  expect(await page(`/hydrants/${hydrantId}/`)).toContain(hydrantId);
  // The feeds are written after the pages that people read.
  await until('/v1/out-of-service.csv', (rows) => rows.includes(hydrantId));
  expect(performance.now() - from).toBeLessThan(ALLOWED_MS);
}, 30_000);
