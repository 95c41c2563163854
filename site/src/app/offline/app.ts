import { observable } from '../core/observable.ts';
import { route } from '../core/router.ts';

/** Whether the app opens on this device with no signal. */
export interface OfflineApp {
  /** `none`: this browser, or this address (no HTTPS), cannot; `preparing`: its files are on the way. */
  readonly state: 'none' | 'preparing' | 'ready';
  /** A newer version is on the device, and waits until somebody says so. */
  readonly newer: boolean;
}
export const offlineApp = observable<OfflineApp>({ state: 'none', newer: false });

const WORKER = '/crew/sw.js';
const SCOPE = '/crew/';
const HOUR_MS = 3_600_000;

let registration: ServiceWorkerRegistration | null = null;
let asked = false;

/** No form is open here, so a reload interrupts nobody. */
const idle = (): boolean => !['form', 'new', 'correct'].includes(route.get().parts[0] ?? '');

const look = (): void => {
  if (!registration) return;
  offlineApp.set({
    state: registration.active ? 'ready' : 'preparing',
    newer: registration.waiting !== null && registration.active !== null,
  });
};

/** Lets the newer version take over and opens the app anew with it. What is typed is kept at each keystroke. */
export function takeNewer(): void {
  if (!registration?.waiting) return;
  asked = true;
  registration.waiting.postMessage('take-over');
}

function follow(found: ServiceWorkerRegistration): void {
  registration = found;
  const watch = (worker: ServiceWorker | null): void => worker?.addEventListener('statechange', look);
  watch(found.installing);
  found.addEventListener('updatefound', () => {
    watch(found.installing);
    look();
  });
  look();
}

/**
 * Makes the crew app open with no signal. It begins once the page is there, so that it takes nothing from the first
 * opening. A newer version that was fetched last time takes over now, before anything is typed; one that arrives while
 * the app is open waits to be asked.
 */
export function startOffline(): void {
  // Typed as always there; a page without HTTPS has none.
  const container = (navigator as { readonly serviceWorker?: ServiceWorkerContainer }).serviceWorker;
  if (!container) return;
  container.addEventListener('controllerchange', () => {
    if (asked) location.reload();
  });
  const begin = async (): Promise<void> => {
    const before = await container.getRegistration(SCOPE);
    if (before?.active && before.waiting && idle()) {
      follow(before);
      takeNewer();
      return;
    }
    follow(await container.register(WORKER, { scope: SCOPE, updateViaCache: 'none' }));
  };
  // A browser that will not (a private window, a setting) works as before, with a signal.
  const safely = (): void => void begin().catch(() => undefined);
  if (document.readyState === 'complete') setTimeout(safely, 0);
  else window.addEventListener('load', () => setTimeout(safely, 0));
  let checkedAt = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - checkedAt < HOUR_MS) return;
    checkedAt = Date.now();
    void registration?.update().catch(() => undefined);
  });
}
