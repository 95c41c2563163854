import { useEffect, useState } from 'preact/hooks';
import { getJson, type Answer } from './api.ts';
import { observable, useObservable, type Observable } from './observable.ts';
import { session } from './session.ts';
import { keepRead, mayKeep, readKept } from '../offline/reads.ts';

/** Something read from the server, with what is known while it is read and when it cannot be. */
export interface Resource<T> {
  /** The last good answer, which stays on screen when a later one fails. */
  readonly value: T | null;
  readonly fetchedAt: number | null;
  readonly loading: boolean;
  readonly failed: Exclude<Answer<never>, { outcome: 'ok' }> | null;
}

const resources = new Map<string, Observable<Resource<unknown>>>();
const nothing: Resource<never> = { value: null, fetchedAt: null, loading: false, failed: null };

function resourceAt(path: string): Observable<Resource<unknown>> {
  const known = resources.get(path);
  if (known) return known;
  const made = observable<Resource<unknown>>(nothing);
  resources.set(path, made);
  return made;
}

/** What this device kept of an earlier reading stands on screen until the answer is here, and when none comes. */
async function showKept(path: string, at: Observable<Resource<unknown>>): Promise<void> {
  const person = session.get()?.personId;
  if (person === undefined || !mayKeep(path) || at.get().value !== null) return;
  const kept = await readKept(person, path);
  if (kept && at.get().value === null && session.get()?.personId === person)
    at.set({ ...at.get(), value: kept.value, fetchedAt: kept.fetchedAt });
}

/** Reads a path again, now. Concurrent readers share one request. */
export async function load<T>(path: string): Promise<Resource<T>> {
  const at = resourceAt(path) as Observable<Resource<T>>;
  if (!at.get().loading) {
    at.set({ ...at.get(), loading: true });
    const person = session.get()?.personId;
    const shown = showKept(path, at);
    const answer = await getJson<T>(path);
    if (answer.outcome === 'ok') {
      at.set({ value: answer.value, fetchedAt: Date.now(), loading: false, failed: null });
      if (person !== undefined && mayKeep(path)) void keepRead(person, path, answer.value);
    } else {
      await shown;
      at.set({ ...at.get(), loading: false, failed: answer });
    }
    return at.get();
  }
  return new Promise((resolve) => {
    const stop = at.subscribe(() => {
      if (at.get().loading) return;
      stop();
      resolve(at.get());
    });
  });
}

/** An answer that was asked for before something was recorded does not hold it: it is asked for once more. */
async function loadAfter(path: string): Promise<void> {
  const early = resourceAt(path).get().loading;
  await load(path);
  if (early) await load(path);
}

/** What is shown of a path: read once when the screen opens, and again whenever something was recorded. */
export function useResource<T>(path: string | null): Resource<T> & { readonly reload: () => void } {
  const [fallback] = useState(() => observable<Resource<unknown>>(nothing));
  const resource = useObservable(path === null ? fallback : resourceAt(path)) as Resource<T>;
  useEffect(() => {
    if (path === null) return undefined;
    void load<T>(path);
    return recordedCount.subscribe(() => void loadAfter(path));
  }, [path]);
  return { ...resource, reload: () => void (path !== null && load(path)) };
}

/** Counts submissions that the server confirmed while this page was open. */
export const recordedCount = observable(0);

/** Everything read for one person goes when another signs in. */
export function forgetResources(): void {
  for (const at of resources.values()) at.set(nothing);
}
