import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/** Moves the focus to where the work goes on, once the next drawing stands; a control that vanished takes none along. */
export function focusSoon(selector: string): void {
  requestAnimationFrame(() => document.querySelector<HTMLElement>(selector)?.focus());
}

/** For a control that takes another's place: it takes its focus as well. */
export function useFocusOnMount<T extends HTMLElement>(): RefObject<T | null> {
  const control = useRef<T>(null);
  useEffect(() => control.current?.focus(), []);
  return control;
}

export interface FocusOfList<T extends HTMLElement> {
  /** Where the focus goes on: the heading of the list, which stays. */
  readonly heading: RefObject<T | null>;
  /** On the element around heading and list. */
  readonly onFocusIn: (event: FocusEvent) => void;
}

/** For a list whose entries leave by themselves: one that had the focus, or its button, hands it to the heading. */
export function useFocusOfList<T extends HTMLElement>(count: number): FocusOfList<T> {
  const heading = useRef<T>(null);
  const last = useRef<EventTarget | null>(null);
  useEffect(() => {
    const gone = last.current instanceof Node && !last.current.isConnected;
    if (gone && document.activeElement === document.body) heading.current?.focus();
  }, [count]);
  return {
    heading,
    onFocusIn: ({ target }) => {
      last.current = target;
    },
  };
}
