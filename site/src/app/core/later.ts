/** A part that the first page does not carry. */
export interface Later<T> {
  /** The part, once it is here. */
  readonly here: () => T | null;
  /** Reads it; one that could not be had is asked for again the next time. */
  readonly read: () => Promise<T>;
}

const soon: Later<unknown>[] = [];

/**
 * A part that is read when it is needed. What a crew may need without a signal is read soon after the first screen
 * stands all the same (`readSoon`); `asked` leaves it until somebody asks.
 */
export function later<T>(load: () => Promise<T>, when: 'soon' | 'asked' = 'soon'): Later<T> {
  let known: T | null = null;
  let reading: Promise<T> | null = null;
  const part: Later<T> = {
    here: () => known,
    read: () =>
      (reading ??= load()
        .then((value) => (known = value))
        .catch((error: unknown) => {
          reading = null;
          throw error;
        })),
  };
  if (when === 'soon') soon.push(part);
  return part;
}

/** Everything that may be needed without a signal, one after another so that a slow line stays free for what is asked. */
export async function readSoon(): Promise<void> {
  for (const part of soon) await part.read().catch(() => undefined);
}
