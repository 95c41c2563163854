import type { Say } from '../pageWords.ts';

/** How long one part of a list that does not fit is shown. */
const TURN_EVERY_MS = 15_000;
/** On anything smaller one scrolls, as everywhere. */
const LARGE = '(min-width: 60rem) and (min-height: 40rem)';

/**
 * A list that is longer than the screen is shown part by part, because nobody scrolls a wall. It can be held, and
 * turned by hand, as whatever moves by itself must (WCAG 2.2, 2.2.2).
 */
export function turning(say: Say): { readonly lay: () => void } {
  const large = window.matchMedia(LARGE);
  const bar = document.querySelector<HTMLElement>('.wall-turn');
  const place = document.querySelector<HTMLElement>('[data-turn-place]');
  const hold = document.querySelector<HTMLElement>('[data-turn="hold"]');
  let starts: number[] = [0];
  let part = 0;
  let held = false;

  const entries = (): HTMLElement[] => [...document.querySelectorAll<HTMLElement>('.wall-entry')];
  const show = (from: number, to: number): void => {
    entries().forEach((entry, index) => {
      entry.hidden = index < from || index >= to;
    });
  };
  const fits = (): boolean => {
    const main = document.querySelector('main');
    return main === null || main.scrollHeight <= main.clientHeight + 1;
  };

  function showPart(): void {
    part %= starts.length;
    show(starts[part] ?? 0, starts[part + 1] ?? Infinity);
    if (bar) bar.hidden = starts.length < 2;
    if (place) place.textContent = say('place', { page: part + 1, pages: starts.length });
  }

  /** Finds where each part begins, by trying: entries are as high as their words. */
  function lay(): void {
    const root = document.documentElement;
    root.classList.toggle('wall-turns', large.matches);
    const all = entries();
    starts = [0];
    // Measured with its bar, which takes room as soon as there are parts.
    if (bar) bar.hidden = !large.matches;
    if (large.matches) {
      for (let from = 0, to = 1; to <= all.length; to++) {
        show(from, to);
        if (to - from > 1 && !fits()) {
          from = to - 1;
          starts.push(from);
        }
      }
    }
    showPart();
  }

  const next = (): void => {
    part += 1;
    showPart();
  };
  document.querySelector('[data-turn="next"]')?.addEventListener('click', next);
  hold?.addEventListener('click', () => {
    held = !held;
    hold.textContent = (held ? hold.dataset['goOn'] : hold.dataset['hold']) ?? '';
  });
  setInterval(() => {
    if (!held && starts.length > 1) next();
  }, TURN_EVERY_MS);
  return { lay };
}
