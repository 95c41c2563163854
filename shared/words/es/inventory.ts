import type { inventory as english } from '../en/inventory.ts';

export const inventory: Record<keyof typeof english, string> = {};
