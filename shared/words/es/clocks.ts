import type { clocks as english } from '../en/clocks.ts';

export const clocks: Record<keyof typeof english, string> = {};
