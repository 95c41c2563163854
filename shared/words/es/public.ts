import type { publicPages as english } from '../en/public.ts';

export const publicPages: Record<keyof typeof english, string> = {};
