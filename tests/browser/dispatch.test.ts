import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { v7 } from 'uuid';
import {
  expectAccessible,
  expectNoSideScroll,
  goTo,
  minutesAgo as typedAgo,
  sendAndConfirm,
} from '../support/app.ts';
import type { Looking } from '../support/browser.ts';
import { appTest } from '../support/browserTest.ts';
import { ports } from '../support/ports.ts';
import { fact } from '../support/submissions.ts';

/** What fire dispatch was sent stands where the crew looks, and asks for a call until somebody has made it. */
const { server, signIn } = appTest(ports.dispatch);

const look = (role: 'crew' | 'clerk', options = {}): Promise<Looking> => signIn(role, options);
const iso = (minutesAgo: number): string => new Date(Date.now() - minutesAgo * 60_000).toISOString();

/** A strike of some minutes ago, of which nobody has told dispatch. */
async function strikeAt(hydrantId: string, minutesAgo = 12): Promise<string> {
  const strikeId = v7();
  const strike = fact(
    'strike',
    1,
    { type: 'strike', strikeId },
    {
      hydrantId,
      position: null,
      dispatch: null,
      photos: [],
      struckAt: iso(minutesAgo),
      reportedBy: { source: 'police', name: null, phone: null, reportedAt: null },
      lastSeenSoundAt: null,
      calledOutAt: null,
      arrivedAt: null,
    },
    { submissionId: v7(), occurredAt: iso(minutesAgo), sentAt: iso(0), person: { personId: 'w-101' } },
  );
  await server.ask('crew', '/api/submissions', strike);
  return strikeId;
}
const strikePage = async (page: Page, strikeId: string): Promise<void> => {
  await goTo(page, server, `/crew/#/strike/${strikeId}`);
  await page.getByRole('heading', { name: /Messages to dispatch|Avisos a la central/ }).waitFor();
};
const mailFolder = (): string => join(server.folder, 'mail');

test('a strike is told within seconds; the page asks for a call until it is recorded who took it', async () => {
  const { page } = await look('crew');
  await strikePage(page, await strikeAt('T-101'));
  await page.getByText(/^Dispatch floor, by email: sent /).waitFor();
  await page.getByText(/^Duty officer’s telephone, by text message: sent /).waitFor();
  await page.getByText('Nobody has confirmed yet: call Tansy Harbor Fire Dispatch.').waitFor();
  expect(await page.locator('.dispatch a.phone').getAttribute('href')).toBe('tel:555-0111');
  await page.getByText('What the text says').click();
  await page.getByText(/HYDRANT OUT OF SERVICE: T-101, 1 Test St\./).waitFor();
  await expectNoSideScroll(page);
  await expectAccessible(page);

  const files = (await readdir(mailFolder())).filter((name) => name.startsWith('dispatch-'));
  expect(files).toHaveLength(2);
  const text = await readFile(
    join(
      mailFolder(),
      files.find((name) => name.includes('duty'))!,
    ),
    'utf8',
  );
  // The town's other hydrants stand in a line to the north: 364 ft to each next.
  expect(text).toMatch(/T-102 36\d ft north/);

  await page.getByRole('link', { name: 'Record who took it' }).click();
  await page.waitForSelector('h1[tabindex]');
  await page.getByLabel('Who took the message').fill('Desk two');
  await page.getByLabel('Dispatch told at').fill(typedAgo(0));
  await sendAndConfirm(page);
  await page.goBack();
  await page.getByText(/^Dispatch was told by a person on /).waitFor();
  expect(await page.getByText('Nobody has confirmed yet').count()).toBe(0);
});

test('in Spanish, in the dark, at 320 px', async () => {
  const { page } = await look('crew', { viewport: { width: 320, height: 640 }, colorScheme: 'dark' });
  const strikeId = await strikeAt('T-102');
  await page.getByRole('button', { name: 'Español' }).click();
  await strikePage(page, strikeId);
  await page.getByText(/^Dispatch floor, por correo: enviado /).waitFor();
  await page.getByText(/^Nadie lo ha confirmado aún/).waitFor();
  await expectNoSideScroll(page);
  await expectAccessible(page);
});

test('what could not be sent stands in the accent, at the desk too, and is sent again by a person', async () => {
  // A folder that is none: nothing can be written there.
  const aside = `${mailFolder()}-aside`;
  await mkdir(mailFolder(), { recursive: true });
  await rename(mailFolder(), aside);
  await writeFile(mailFolder(), '');
  const { page } = await look('crew');
  const strikeId = await strikeAt('T-103');
  await strikePage(page, strikeId);
  const warned = page.locator('.dispatch .warning');
  await warned.getByText(/^Dispatch floor, by email: NOT sent, tried once/).waitFor();
  await expectAccessible(page);
  const desk = await look('clerk');
  await goTo(desk.page, server, '/desk/');
  await desk.page.getByRole('heading', { name: /Messages to dispatch that did not go out/ }).waitFor();
  await desk.page.getByRole('link', { name: 'Out of service: T-103' }).waitFor();
  await expectAccessible(desk.page);
  const health = (await (await fetch(`${server.origin}/api/health`)).json()) as {
    dispatchMessages: { failed: number };
  };
  expect(health.dispatchMessages.failed).toBe(2);

  await rm(mailFolder());
  await rename(aside, mailFolder());
  await warned.getByRole('button', { name: 'Send again now' }).click();
  // The local clock that sends again runs every 15 seconds.
  await page.getByText(/^Dispatch floor, by email: sent /).waitFor({ timeout: 30_000 });
  await page.getByText(/^Duty officer’s telephone, by text message: sent /).waitFor();
}, 90_000);

test('what was typed in late says that it was not sent, and why', async () => {
  const { page } = await look('crew');
  await strikePage(page, await strikeAt('T-104', 13 * 60));
  await page.getByText('Not sent: it happened more than 12 hours before it was recorded.').waitFor();
  await page.getByText(/^Nobody has confirmed yet/).waitFor();
  await page.getByRole('button', { name: 'Send it all the same' }).waitFor();
  await expectNoSideScroll(page);
});
