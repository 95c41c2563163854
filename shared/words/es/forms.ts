import type { forms as english } from '../en/forms.ts';

export const forms: Record<keyof typeof english, string> = {};
