import * as z from 'zod';
import { getJson } from './api.ts';
import { observable } from './observable.ts';
import { session } from './session.ts';
import { readStored, removeStored, writeStored } from './storage.ts';

const roll = z.array(z.object({ personId: z.string(), name: z.string() }));
export type Roll = z.infer<typeof roll>;

/** The utility's people, for signed-in members only. Kept on the device so that names are there with no signal. */
export const people = observable<Roll>([]);

export async function loadPeople(): Promise<void> {
  const kept = roll.safeParse(readStored('people'));
  if (kept.success && session.get()) people.set(kept.data);
  if (!session.get()) return;
  const answer = await getJson<{ people?: unknown }>('/api/me');
  if (answer.outcome !== 'ok') return;
  const read = roll.safeParse(answer.value.people);
  if (!read.success) return;
  writeStored('people', read.data);
  if (JSON.stringify(read.data) !== JSON.stringify(people.get())) people.set(read.data);
}

/** A colleague's names are no business of whoever picks this device up next. */
export function forgetPeople(): void {
  removeStored('people');
  people.set([]);
}

/** "Odalys Brennick (w-101)", or the id alone where the roll does not know it. */
export function nameOf(personId: string): string {
  const name = people.get().find((person) => person.personId === personId)?.name;
  return name === undefined ? personId : `${name} (${personId})`;
}
