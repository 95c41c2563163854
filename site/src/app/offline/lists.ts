import { observable } from '../core/observable.ts';
import { load } from '../core/resource.ts';
import { session } from '../core/session.ts';
import { keepRead, readKept } from './reads.ts';

/** What the forms look things up in: models with their torques and kits, shelves, and codes of people, machines, parts. */
const lists = ['/api/models', '/api/stock', '/api/job-codes'] as const;
/** A shift old: read anew. */
const OLD_MS = 6 * 3_600_000;

/** Whether this device has all of them for whoever is signed in, so that a repair can be written with no signal. */
export const listsHere = observable(false);

const keptAt = async (person: string): Promise<number | null> => {
  const all = await Promise.all(lists.map((path) => readKept(person, path)));
  const times = all.flatMap((kept) => kept?.fetchedAt ?? []);
  return times.length === lists.length ? Math.min(...times) : null;
};

/** Puts the lists on the device, where it has none or old ones. Without an answer those that it has go on standing. */
export async function refreshLists(now = Date.now()): Promise<void> {
  const person = session.get()?.personId;
  if (person === undefined) return;
  const before = await keptAt(person);
  if (before === null || now - before >= OLD_MS)
    await Promise.all(
      lists.map(async (path) => {
        const { value, failed } = await load(path);
        // Waited for: whoever reads that the device is ready drives out of reach.
        if (value !== null && failed === null && session.get()?.personId === person)
          await keepRead(person, path, value);
      }),
    );
  if (session.get()?.personId === person) listsHere.set((await keptAt(person)) !== null);
}

export const forgetLists = (): void => listsHere.set(false);
