import * as z from 'zod';
import {
  flowTestRules,
  flowTestSettingsFrom,
  type FlowTestSettings,
} from '../../../../shared/hydraulics/flowTestSettings.ts';
import { getJson } from './api.ts';
import { provider } from './oidc.ts';
import { observable, useObservable } from './observable.ts';
import { loadAllWords, loadFirstWords, startWords } from '../words/load.ts';
import { applyPreferences, preferences, wordsAreDrawn } from './preferences.ts';
import { refuseLink } from './session.ts';
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
  /** Where people sign in; null where they are given links. */
  signIn: provider.nullable().default(null),
});
export type UtilityFacts = z.infer<typeof utilityFacts>;

export const utility = observable<UtilityFacts | null>(null);

/** The utility's rules of the flow test, as far as this device knows them. */
export const flowTestSettings = (): FlowTestSettings => flowTestSettingsFrom(utility.get()?.flowTest);
export const useFlowTestSettings = (): FlowTestSettings =>
  flowTestSettingsFrom(useObservable(utility)?.flowTest);

/** What the device kept of the utility; asks nobody. */
function showKept(): boolean {
  const kept = utilityFacts.safeParse(readStored('utility'));
  if (kept.success) utility.set(kept.data);
  applyPreferences(utility.get());
  return kept.success;
}

/** The words that this device will need, before anything is drawn: the first screens' of a crew, all of the desk. */
export async function loadWords(all: boolean): Promise<void> {
  showKept();
  const { locale } = preferences.get();
  // Without the network and without a copy there is nothing to say it with; what comes later is drawn when it comes.
  await (all ? loadAllWords(locale) : loadFirstWords(locale));
  wordsAreDrawn();
  startWords(() => preferences.get().locale);
}

/** What a form writes by itself is in the utility's language. False when its words cannot be had now. */
export const loadUtilityWords = (): Promise<boolean> =>
  loadAllWords(utility.get()?.locale ?? preferences.get().locale);

/** `'unknown'` when this device has never reached the server: then no time zone is known, and no form can open. */
export async function loadUtility(): Promise<'known' | 'unknown'> {
  const kept = showKept();
  const fresh = async (): Promise<void> => {
    const answer = await getJson<unknown>('/api/utility');
    if (answer.outcome !== 'ok') return;
    const read = utilityFacts.safeParse(answer.value);
    if (!read.success) return;
    writeStored('utility', read.data);
    if (read.data.signIn !== null) refuseLink();
    if (JSON.stringify(read.data) !== JSON.stringify(utility.get())) utility.set(read.data);
    applyPreferences(read.data);
  };
  // With a copy at hand nobody waits for the network.
  if (kept) void fresh();
  else await fresh();
  return utility.get() ? 'known' : 'unknown';
}
