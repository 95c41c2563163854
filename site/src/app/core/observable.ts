import { useEffect, useState } from 'preact/hooks';

/** A value that screens follow. Small on purpose: what is read on one screen and changed on another, no more. */
export interface Observable<T> {
  get(): T;
  set(next: T): void;
  subscribe(listener: () => void): () => void;
}

export function observable<T>(initial: T): Observable<T> {
  let value = initial;
  const listeners = new Set<() => void>();
  return {
    get: () => value,
    set: (next) => {
      if (Object.is(next, value)) return;
      value = next;
      for (const listener of [...listeners]) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** The current value; the component is drawn again when it changes. */
export function useObservable<T>(source: Observable<T>): T {
  const [value, setValue] = useState(() => source.get());
  useEffect(() => {
    // It may have changed between the first drawing and this effect.
    setValue(() => source.get());
    return source.subscribe(() => setValue(() => source.get()));
  }, [source]);
  return value;
}
