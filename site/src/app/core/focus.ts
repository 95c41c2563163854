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
