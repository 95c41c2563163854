import * as z from 'zod';
import {
  flowTestRules,
  flowTestSettingsFrom,
  type FlowTestSettings,
} from '../../../../shared/hydraulics/flowTestSettings.ts';
import { getJson } from './api.ts';
import { observable, useObservable } from './observable.ts';
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
  /** A copy kept from before there were any has none. */
  flowTest: flowTestRules.default({}),
});
export type UtilityFacts = z.infer<typeof utilityFacts>;

export const utility = observable<UtilityFacts | null>(null);

/** The utility's rules of the flow test, as far as this device knows them. */
export const flowTestSettings = (): FlowTestSettings => flowTestSettingsFrom(utility.get()?.flowTest);
export const useFlowTestSettings = (): FlowTestSettings =>
  flowTestSettingsFrom(useObservable(utility)?.flowTest);

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
