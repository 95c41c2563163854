import type { claimLife as english } from '../en/claimLife.ts';

export const claimLife: Record<keyof typeof english, string> = {
  'problem.lines-above-payment': 'Los renglones suman más que el pago. Baje un renglón o corrija el importe.',
  'problem.short-without-reason':
    'Diga por qué se pagó menos en este renglón; «otro» admite las palabras del pagador.',
};
