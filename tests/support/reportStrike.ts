import { expect } from 'vitest';
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
  // Confirmed is recorded; the list of strikes follows a moment later.
  const listed = expect.poll(async () => (await strikesAt(server, hydrantId)).length, { timeout: 10_000 });
  await listed.toBeGreaterThan(0);
  return (await strikesAt(server, hydrantId))[0]!.strikeId;
}
