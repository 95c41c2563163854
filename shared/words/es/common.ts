import type { common as english } from '../en/common.ts';

export const common: Record<keyof typeof english, string> = {};
