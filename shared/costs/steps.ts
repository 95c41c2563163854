import type { z } from 'zod';
import type { increment } from './book/labor.ts';
import { spell } from './line.ts';

export type Increment = z.infer<typeof increment>;

/** What rounding to steps adds to time worked (below zero: takes off), milliseconds, and why, in signs. */
export interface Stepped {
  readonly ms: number;
  readonly why: string;
}

/** Time counted in whole steps, up or to the nearest (half a step up, as 29 CFR 785.48(b) knows rounding to quarters). */
export function stepped(workedMs: number, { minutes, toward }: Increment): Stepped {
  const stepMs = minutes * 60_000;
  const steps = toward === 'up' ? Math.ceil(workedMs / stepMs) : Math.floor(workedMs / stepMs + 0.5);
  const step = spell(stepMs);
  return { ms: steps * stepMs - workedMs, why: `(${spell(workedMs)} → ${steps} × ${step})` };
}

/**
 * Where a difference falls: what is added, on the last piece; what is taken off, on the last and then those before it,
 * from none more than it has.
 */
export function spread<T extends { readonly ms: number }>(
  pieces: readonly T[],
  ms: number,
): { readonly piece: T; readonly ms: number }[] {
  const last = pieces.at(-1);
  if (ms === 0 || !last) return [];
  if (ms > 0) return [{ piece: last, ms }];
  const parts: { piece: T; ms: number }[] = [];
  let left = -ms;
  for (const piece of [...pieces].reverse()) {
    if (left === 0) break;
    const taken = Math.min(left, piece.ms);
    if (taken > 0) parts.push({ piece, ms: -taken });
    left -= taken;
  }
  return parts;
}
