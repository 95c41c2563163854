import type { claimFigures as english } from '../en/claimFigures.ts';

export const claimFigures: Record<keyof typeof english, string> = {};
