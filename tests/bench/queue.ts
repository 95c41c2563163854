import { setTimeout as wait } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { photoBytes } from '../../infra/local/demo/photos.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { appServer, goTo, signedIn, type AppServer } from '../support/app.ts';
import { launchBrowser } from '../support/browser.ts';
import { ports } from '../support/ports.ts';
import { sampleBodies } from '../support/sampleBodies.ts';
import type { BenchRow } from './row.ts';

/** A thousand uploads while the server is away every few seconds. */
export const limitS = 1_200;
const HOW_MANY = 1000;
const KILL_EVERY_MS = 5_000;
const AWAY_MS = 500;

/** Puts strikes with a photo each into the outbox of this page's device, as its forms would. */
const fill = (page: Page, count: number, photo: readonly number[]): Promise<void> =>
  page.evaluate(
    async ({ howMany, bytes, body }) => {
      const hex = (buffer: ArrayBuffer): string =>
        [...new Uint8Array(buffer)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
      const claims = JSON.parse(
        atob((localStorage.getItem('hsl.token') ?? '').split('.')[1]!.replace(/-/g, '+').replace(/_/g, '/')),
      ) as { sub: string; name: string };
      const db = await new Promise<IDBDatabase>((resolve) => {
        const request = indexedDB.open('hsl');
        request.onsuccess = () => resolve(request.result);
      });
      const now = Date.now();
      // UUID version 7: time first, so that ids sort as they were made.
      const id = (index: number, part: string): string => {
        const ms = (now + index).toString(16).padStart(12, '0');
        const tail = `${part}${index.toString(16).padStart(11, '0')}`;
        return `${ms.slice(0, 8)}-${ms.slice(8)}-7000-8000-${tail}`;
      };
      for (let from = 0; from < howMany; from += 100) {
        const made = await Promise.all(
          Array.from({ length: Math.min(100, howMany - from) }, async (_, at) => {
            const index = from + at;
            // Another photo each: a comment of its own before the picture's end (JPEG: what follows EOI is no picture).
            const own = new Uint8Array([
              ...bytes,
              ...new TextEncoder().encode(String(index).padStart(6, '0')),
            ]);
            const sha256 = hex(await crypto.subtle.digest('SHA-256', own));
            const strikeId = id(index, 'a');
            const submissionId = id(index, 'b');
            const when = new Date(now - 3_600_000 + index).toISOString();
            const subject = { type: 'strike', strikeId };
            const author = { personId: claims.sub, name: claims.name };
            const exhibit = {
              sha256,
              bytes: own.length,
              mediaType: 'image/jpeg',
              view: 'overall',
              takenAt: null,
              caption: null,
            };
            return {
              file: { sha256, bytes: new Blob([own], { type: 'image/jpeg' }), keptAt: now },
              entry: {
                submissionId,
                submission: {
                  schemaVersion: 1,
                  submissionId,
                  kind: 'strike',
                  subject,
                  occurredAt: when,
                  sentAt: when,
                  person: { personId: claims.sub },
                  device: { deviceId: 'bench' },
                  enteredUnits: 'us',
                  body: { ...body, hydrantId: null, placeDescription: `Post ${index}`, photos: [exhibit] },
                },
                author,
                draft: {
                  submissionId,
                  kind: 'strike',
                  subject,
                  authorId: claims.sub,
                  openedAt: when,
                  touched: true,
                  values: {},
                  about: { hydrantId: null, strikeId: null },
                },
                state: 'waiting',
                problems: [],
                lastError: null,
                lastTriedAt: null,
                tries: 0,
                queuedAt: when,
                recordedAt: null,
                photos: [{ sha256, state: 'awaited' }],
              },
            };
          }),
        );
        const transaction = db.transaction(['outbox', 'files'], 'readwrite');
        for (const { file, entry } of made) {
          transaction.objectStore('files').put(file);
          transaction.objectStore('outbox').put(entry);
        }
        await new Promise<void>((resolve) => {
          transaction.oncomplete = () => resolve();
        });
      }
      db.close();
    },
    { howMany: count, bytes: [...photo], body: { ...sampleBodies.strike, dispatch: null } },
  );

const states = (page: Page): Promise<Record<string, number>> =>
  page.evaluate(
    () =>
      new Promise<Record<string, number>>((resolve) => {
        const request = indexedDB.open('hsl');
        request.onsuccess = () => {
          const all = request.result.transaction('outbox').objectStore('outbox').getAll();
          all.onsuccess = () => {
            request.result.close();
            const counts: Record<string, number> = {};
            for (const { state } of all.result as { state: string }[])
              counts[state] = (counts[state] ?? 0) + 1;
            resolve(counts);
          };
        };
      }),
  );

async function arrivedOnce(server: AppServer): Promise<{ strikes: number; reports: number; photos: number }> {
  const { strikes } = await server.ask<{ strikes: StrikeState[] }>('manager', '/api/strikes');
  const posts = strikes.filter(({ placeDescription }) => placeDescription?.startsWith('Post '));
  let photos = 0;
  for (const { strikeId } of posts) {
    const { evidence } = await server.ask<{ evidence: Record<string, string> }>(
      'manager',
      `/api/strikes/${strikeId}`,
    );
    photos += Object.values(evidence).filter((state) => state === 'arrived').length;
  }
  return {
    strikes: new Set(posts.map(({ placeDescription }) => placeDescription)).size,
    reports: posts.reduce((sum, { submissionIds }) => sum + submissionIds.length, 0),
    photos,
  };
}

/**
 * A thousand strikes with a photo each leave a device while the server is killed (SIGKILL) every few seconds and started
 * again on the same data. Throws unless each is there once, with its photo.
 */
export async function bench(): Promise<readonly BenchRow[]> {
  const server = appServer(ports.benchQueue);
  const browser = await launchBrowser();
  try {
    await server.start();
    const { page } = await signedIn(browser, server, 'crew');
    await goTo(page, server, '/crew/#/outbox');
    await fill(page, HOW_MANY, [...photoBytes('quince-overall')]);
    const began = performance.now();
    await goTo(page, server, '/crew/#/outbox');
    let kills = 0;
    for (;;) {
      await wait(KILL_EVERY_MS);
      const left = await states(page);
      if (left['refused']) throw new Error(`refused: ${JSON.stringify(left)}`);
      if (Object.keys(left).length === 0) break;
      await server.kill();
      kills += 1;
      await wait(AWAY_MS);
      await server.start();
      // The signal is back: what the browser says of its own line, said here of the server's.
      await page.evaluate(() => window.dispatchEvent(new Event('online')));
    }
    const seconds = (performance.now() - began) / 1000;
    const there = await arrivedOnce(server);
    if (there.strikes !== HOW_MANY || there.reports !== HOW_MANY || there.photos !== HOW_MANY)
      throw new Error(`not everything once: ${JSON.stringify(there)}`);
    const beside = { name: 'asked for', value: HOW_MANY };
    return [
      { name: 'queued strikes there once, server killed every 5 s', value: there.reports, unit: '', beside },
      { name: 'their photos there', value: there.photos, unit: '', beside },
      { name: 'kills meanwhile', value: kills, unit: '' },
      { name: 'until the queue was empty', value: seconds, unit: 's' },
    ];
  } finally {
    await browser.close();
    await server.end();
  }
}
