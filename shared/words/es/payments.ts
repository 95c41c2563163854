import type { payments as english } from '../en/payments.ts';

export const payments: Record<keyof typeof english, string> = {};
