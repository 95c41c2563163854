import type { desk as english } from '../en/desk.ts';

export const desk: Record<keyof typeof english, string> = {};
