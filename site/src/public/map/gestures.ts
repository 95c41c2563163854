import type { Point } from './view.ts';

export interface Gestures {
  /** The hand moved the map by so many pixels. */
  readonly drag: (by: Point) => void;
  /** Nearer by a factor, about a point of the picture; about its middle where none is given. */
  readonly zoom: (factor: number, at?: Point) => void;
  readonly whole: () => void;
  /** A touch or a click that was no movement. */
  readonly choose: (at: Point) => void;
}

/** One step of a key or a button. */
export const STEP_PX = 80;
export const STEP_FACTOR = 1.6;
/** A finger trembles by as much. */
const STILL_PX = 6;

const keys: Readonly<Record<string, (gestures: Gestures) => void>> = {
  ArrowLeft: ({ drag }) => drag({ x: STEP_PX, y: 0 }),
  ArrowRight: ({ drag }) => drag({ x: -STEP_PX, y: 0 }),
  ArrowUp: ({ drag }) => drag({ x: 0, y: STEP_PX }),
  ArrowDown: ({ drag }) => drag({ x: 0, y: -STEP_PX }),
  '+': ({ zoom }) => zoom(STEP_FACTOR),
  '=': ({ zoom }) => zoom(STEP_FACTOR),
  '-': ({ zoom }) => zoom(1 / STEP_FACTOR),
  '0': ({ whole }) => whole(),
};

/**
 * Listens on the map's box. One finger scrolls the page as everywhere, so that nobody is caught in the map; two move and
 * zoom it. The wheel zooms with Ctrl or Command held, which is also what a pinch on a touch pad sends.
 */
export function listen(box: HTMLElement, gestures: Gestures): void {
  const held = new Map<number, Point>();
  let moved = 0;
  const at = ({ clientX, clientY }: PointerEvent | WheelEvent): Point => {
    const { left, top } = box.getBoundingClientRect();
    return { x: clientX - left, y: clientY - top };
  };

  box.addEventListener('pointerdown', (event) => {
    if (event.pointerType === 'mouse' && event.button !== 0) return;
    if (held.size === 0) moved = 0;
    held.set(event.pointerId, at(event));
    // A second finger is never a touch on a place.
    if (held.size > 1) moved = Infinity;
  });
  box.addEventListener('pointermove', (event) => {
    const before = held.get(event.pointerId);
    if (!before) return;
    const now = at(event);
    const [first, second] = [...held.values()];
    held.set(event.pointerId, now);
    const by = { x: now.x - before.x, y: now.y - before.y };
    moved += Math.hypot(by.x, by.y);
    if (held.size === 1) {
      if (event.pointerType === 'touch' || moved < STILL_PX) return;
      // Caught only now: a click on a sign must still reach its link.
      if (!box.hasPointerCapture(event.pointerId)) box.setPointerCapture(event.pointerId);
      gestures.drag(by);
      return;
    }
    if (!first || !second) return;
    const [a, b] = [...held.values()];
    if (!a || !b) return;
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    gestures.drag({ x: middle.x - (first.x + second.x) / 2, y: middle.y - (first.y + second.y) / 2 });
    const apart = Math.hypot(first.x - second.x, first.y - second.y);
    if (apart > 0) gestures.zoom(Math.hypot(a.x - b.x, a.y - b.y) / apart, middle);
  });
  const letGo = (event: PointerEvent): void => {
    held.delete(event.pointerId);
  };
  for (const name of ['pointerup', 'pointercancel'] as const) {
    box.addEventListener(name, letGo);
    // A mouse let go outside the box before it was caught.
    window.addEventListener(name, letGo);
  }
  // The browser's own pinch would enlarge the page instead of the map.
  for (const name of ['touchstart', 'touchmove'] as const)
    box.addEventListener(
      name,
      (event) => {
        if (event.touches.length > 1 && event.cancelable) event.preventDefault();
      },
      { passive: false },
    );

  box.addEventListener('click', (event) => {
    if (moved >= STILL_PX) {
      // The end of a movement is no click on the sign under it.
      event.preventDefault();
      moved = 0;
      return;
    }
    if (event.target instanceof Element && event.target.closest('a') === null) gestures.choose(at(event));
  });
  box.addEventListener(
    'wheel',
    (event) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      gestures.zoom(2 ** (-event.deltaY / (event.deltaMode === 0 ? 200 : 6)), at(event));
    },
    { passive: false },
  );
  box.addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const act = keys[event.key];
    if (!act) return;
    event.preventDefault();
    act(gestures);
  });
}
