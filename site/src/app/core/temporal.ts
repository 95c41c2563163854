import type { Temporal as Polyfill } from 'temporal-polyfill';

/**
 * Stands in the place of `temporal-polyfill` in the browser's build (`asNeeded.ts`, which does the same for
 * words): the browser's own where it has one, and only else the library's 20 kB.
 */
const native = (globalThis as { readonly Temporal?: typeof Polyfill }).Temporal;

export const Temporal: typeof Polyfill = native ?? (await import('temporal-polyfill')).Temporal;
