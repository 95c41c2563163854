import type { hydraulics as english } from '../en/hydraulics.ts';

export const hydraulics: Record<keyof typeof english, string> = {};
