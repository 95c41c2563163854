import * as z from 'zod';
import { getJson } from './api.ts';
import { observable } from './observable.ts';
import { applyPreferences } from './preferences.ts';
import { readStored, writeStored } from './storage.ts';

/** What every screen needs to know of the utility. Kept on the device, so that a form opens with no signal. */
const utilityFacts = z.object({
  name: z.string(),
  timeZone: z.string(),
  locale: z.enum(['en', 'es']),
  units: z.enum(['us', 'metric']),
  emergencyPhone: z.string(),
  dispatch: z.object({ name: z.string(), phone: z.string() }),
});
export type UtilityFacts = z.infer<typeof utilityFacts>;

export const utility = observable<UtilityFacts | null>(null);

/** `'unknown'` when this device has never reached the server: then no time zone is known, and no form can open. */
export async function loadUtility(): Promise<'known' | 'unknown'> {
  const kept = utilityFacts.safeParse(readStored('utility'));
  if (kept.success) utility.set(kept.data);
  applyPreferences(utility.get());
  const fresh = async (): Promise<void> => {
    const answer = await getJson<unknown>('/api/utility');
    if (answer.outcome !== 'ok') return;
    const read = utilityFacts.safeParse(answer.value);
    if (!read.success) return;
    writeStored('utility', read.data);
    if (JSON.stringify(read.data) !== JSON.stringify(utility.get())) utility.set(read.data);
    applyPreferences(read.data);
  };
  // With a copy at hand nobody waits for the network.
  if (kept.success) void fresh();
  else await fresh();
  return utility.get() ? 'known' : 'unknown';
}
