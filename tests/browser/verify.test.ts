import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContextOptions, FileChooser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { builtSite } from '../../infra/local/buildSite.ts';
import { filesFor, readBelow } from '../../infra/local/staticFiles.ts';
import { expectAccessible, expectNoSideScroll } from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { browserScreens, refusal, shot } from '../support/browserTest.ts';
import { ensureBuilt } from '../support/builtSite.ts';
import { issuedPacket, type IssuedPacket } from '../support/issuedPacket.ts';
import { withPrinted } from '../support/tamperPdf.ts';

/** As narrow as the page's own: what a host may send beside it. */
const policy =
  "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; worker-src 'self'; img-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

const screens = browserScreens();
let server: Server;
let url: string;
let folder: string;
let issued: IssuedPacket;
let path: (name: string) => string;
/** What the host is asked for, and whether it has an API beside it. */
const asked: { method: string; url: string; length: string | undefined }[] = [];
let keysHere = true;

beforeAll(async () => {
  await ensureBuilt();
  issued = await issuedPacket();
  folder = await mkdtemp(join(tmpdir(), 'verify-'));
  path = (name) => join(folder, name);
  await writeFile(path('packet.pdf'), issued.pdf);
  await writeFile(path('originals.zip'), issued.archive);
  await writeFile(path('packet.pdf.jws'), issued.jws);
  await writeFile(path('keys.json'), issued.keys);
  await writeFile(path('tampered.pdf'), await withPrinted(issued.pdf, 3, '$187.43', '$187.44'));
  await writeFile(path('letter.txt'), 'Dear adjuster');
  server = createServer((request, response) => {
    void (async () => {
      asked.push({
        method: request.method ?? '',
        url: request.url ?? '',
        length: request.headers['content-length'],
      });
      const { pathname } = new URL(request.url ?? '/', 'http://x.invalid');
      if (pathname === '/api/packet-keys' && keysHere) {
        response.writeHead(200, { 'content-type': 'application/json' });
        response.end(issued.keys);
        return;
      }
      for (const name of filesFor(pathname)) {
        const served = await readBelow(builtSite.client, name);
        if (!served) continue;
        response.writeHead(200, {
          'content-type': served.contentType,
          'content-security-policy': policy,
        });
        response.end(served.bytes);
        return;
      }
      response.writeHead(404, { 'content-type': 'text/plain' });
      response.end('Not found');
    })();
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}, 240_000);
afterAll(async () => {
  server.closeAllConnections();
  await new Promise((resolve) => server.close(resolve));
  await rm(folder, { recursive: true, force: true });
});

async function open(at = '/verify/', options: BrowserContextOptions = {}): Promise<Looking> {
  const looking = await screens.open({ viewport: { width: 1280, height: 900 }, ...options });
  await looking.page.goto(`${url}${at}`);
  await looking.page.locator('#files').waitFor({ state: 'attached' });
  return looking;
}
const choose = (page: Page, ...names: string[]): Promise<void> =>
  page.setInputFiles('#files', names.map(path));
const verdict = async (page: Page): Promise<string> => (await page.locator('.verdict').textContent()) ?? '';

/** Drops files on the place that is there for it, as a hand would. */
async function drop(page: Page, name: string, bytes: Uint8Array): Promise<void> {
  const transfer = await page.evaluateHandle(
    ({ encoded, file }) => {
      const data = new DataTransfer();
      data.items.add(new File([Uint8Array.from(atob(encoded), (sign) => sign.charCodeAt(0))], file));
      return data;
    },
    { encoded: Buffer.from(bytes).toString('base64'), file: name },
  );
  await page.dispatchEvent('.drop', 'dragover', { dataTransfer: transfer });
  await page.dispatchEvent('.drop', 'drop', { dataTransfer: transfer });
}

describe('a packet in the browser', () => {
  it('dropped: consistent, and nothing left the browser', async () => {
    const { page, close } = await open();
    await page.waitForLoadState('networkidle');
    asked.length = 0;
    await drop(page, 'packet.pdf', issued.pdf);
    expect(await verdict(page)).toBe(
      'Consistent: nothing in it contradicts itself. This does not show who issued it.',
    );
    expect(await page.textContent('.answer')).toContain('claim 2026-0001, revision 1');
    // Its own program and nothing else: no body, no address but the page's own, no keys without a signature.
    expect(asked.filter(({ method, length }) => method !== 'GET' || length !== undefined)).toEqual([]);
    expect(asked.length).toBeGreaterThan(0);
    expect(asked.filter((one) => !one.url.startsWith('/_assets/'))).toEqual([]);
    await close();
  });

  it('chosen with its archive: issued by the utility, by the keys of this address', async () => {
    const { page, close } = await open();
    await choose(page, 'packet.pdf', 'originals.zip');
    expect(await verdict(page)).toMatch(/^Issued by this utility/);
    expect(await page.textContent('.answer')).toContain('The keys were asked of this address.');
    await close();
  });

  it('where no API is, by keys that come along', async () => {
    screens.tolerate(refusal);
    keysHere = false;
    const { page, close } = await open();
    await choose(page, 'packet.pdf', 'packet.pdf.jws');
    expect(await verdict(page)).toMatch(/^Consistent/);
    expect(await page.textContent('.answer')).toContain('no keys to check it by');
    await choose(page, 'keys.json');
    await page.locator('.verdict', { hasText: 'Issued by this utility' }).waitFor();
    keysHere = true;
    await close();
  });

  it('with one cent changed on paper: where, and what its own data give', async () => {
    const { page, close } = await open();
    await choose(page, 'tampered.pdf');
    expect(await verdict(page)).toBe('It contradicts itself in one place.');
    expect(await page.locator('.answer li').allTextContents()).toEqual([
      expect.stringMatching(/^Page 3, .*“\$187\.44”, the packet’s data give “\$187\.43”\.$/),
    ]);
    await close();
  });

  it('in Spanish', async () => {
    const { page, close } = await open('/verify/es/');
    await choose(page, 'tampered.pdf');
    expect(await verdict(page)).toBe('Se contradice en un lugar.');
    expect(await page.textContent('main')).not.toMatch(/\[verify\.|undefined/);
    await close();
  });

  it('by keyboard alone', async () => {
    const { page, close } = await open();
    const focused = (): Promise<string> => page.evaluate(() => document.activeElement?.id ?? '');
    for (let presses = 0; presses < 12 && (await focused()) !== 'files'; presses += 1)
      await page.keyboard.press('Tab');
    expect(await focused()).toBe('files');
    // A busy browser may drop the first opening of its own window; a person presses again.
    const asksForFile = async (tries: number): Promise<FileChooser> => {
      const chooser = page.waitForEvent('filechooser', { timeout: 6_000 });
      await page.keyboard.press('Enter');
      return tries > 1 ? chooser.catch(() => asksForFile(tries - 1)) : chooser;
    };
    await (await asksForFile(3)).setFiles([path('letter.txt')]);
    await page.getByText('Add the packet itself, a PDF.').waitFor({ timeout: 10_000 });
    await page.keyboard.press('Tab');
    await page.waitForFunction(() => Boolean(document.activeElement?.closest('.handed')), undefined, {
      timeout: 5_000,
    });
    await page.keyboard.press('Enter');
    await page.locator('.handed').waitFor({ state: 'detached', timeout: 5_000 });
    await close();
  });

  it('that is none: says why', async () => {
    const { page, close } = await open();
    await drop(page, 'half.pdf', issued.pdf.slice(0, 20_000));
    expect(await verdict(page)).toBe('It could not be checked.');
    expect(await page.textContent('.answer li')).toContain('cut short');
    await close();
  });
});

describe.each([
  ['light', {}],
  ['dark', { colorScheme: 'dark' }],
  ['narrow', { viewport: { width: 360, height: 740 } }],
] as const)('the page, %s', (name, look) => {
  it('has nothing that axe objects to, and fits', async () => {
    const { page, close } = await open('/verify/', look);
    for (const files of [[], ['packet.pdf', 'originals.zip'], ['tampered.pdf']]) {
      if (files.length > 0) {
        await choose(page, ...files);
        await page.locator('.verdict').waitFor();
        await page.locator('[role=status]', { hasText: 'Checking' }).waitFor({ state: 'detached' });
      }
      await expectAccessible(page);
      await expectNoSideScroll(page);
      await shot(page, `verify-${name}-${files[0] ?? 'empty'}`);
    }
    await close();
  });
});

it('without script says that it needs one', async () => {
  const { page } = await screens.open({ javaScriptEnabled: false });
  await page.goto(`${url}/verify/`);
  expect(await page.textContent('main')).toContain('This page needs a script to work');
});
