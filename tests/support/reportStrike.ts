import { vi } from 'vitest';
import { goTo, sendAndConfirm, type AppServer } from './app.ts';
import type { AppTest } from './browserTest.ts';
import { strikesAt } from './records.ts';

/** Reports a strike at this hydrant with the form, as a crew does, and gives its id. */
export async function reportStrike(
  signIn: AppTest['signIn'],
  server: AppServer,
  hydrantId: string,
): Promise<string> {
  const { page, close } = await signIn('crew');
  await goTo(page, server, `/crew/#/new/strike?hydrant=${hydrantId}`);
  await sendAndConfirm(page);
  await close();
  // Confirmed is recorded; the list of strikes follows a moment later. Before a test as well as in one.
  const strike = await vi.waitUntil(async () => (await strikesAt(server, hydrantId))[0], {
    timeout: 10_000,
  });
  return strike.strikeId;
}
