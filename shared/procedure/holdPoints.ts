import type { Hydrant } from '../inventory/hydrant.ts';
import { barrelOf, type Barrel } from './procedureFor.ts';
import type { ProcedureStep } from './steps.ts';

/** A hold point passed without its condition. Words: `breach.<code>`. */
export const breachCodes = [
  'take-down-before-safe',
  'opened-before-safe',
  'main-opened-before-safe',
  'dug-before-locate',
  'entered-before-protected',
] as const;
export type BreachCode = (typeof breachCodes)[number];

interface HoldPoint {
  readonly code: BreachCode;
  readonly needs: (barrel: Barrel) => readonly ProcedureStep[];
}

/**
 * Water that is still held can kill: shut, shown to be without pressure, and empty. A wet barrel has no drain; its water
 * is shut and its pressure shown to be gone. Common practice, no source.
 */
const safe = (barrel: Barrel): readonly ProcedureStep[] =>
  barrel === 'dry' ? ['isolated', 'pressure-gone', 'drained'] : ['isolated', 'pressure-gone'];

/** Steps that are not offered before others stand, each by a named person and before it. */
const holdPoints: Readonly<Partial<Record<ProcedureStep, HoldPoint>>> = {
  'taken-down': { code: 'take-down-before-safe', needs: safe },
  'top-opened': { code: 'opened-before-safe', needs: safe },
  'old-hydrant-out': { code: 'opened-before-safe', needs: safe },
  'main-opened': { code: 'main-opened-before-safe', needs: () => ['isolated', 'pressure-gone'] },
  // Utilities located before the ground is opened: 29 CFR 1926.651(b), seen.
  dug: { code: 'dug-before-locate', needs: () => ['locate-ticket'] },
  // A protective system before anybody is in it: 29 CFR 1926.652(a)(1), from memory.
  'in-excavation': { code: 'entered-before-protected', needs: () => ['trench-protected'] },
};

/** What shows a step: itself, and, for a drain that is blocked, that the barrel was pumped out instead. */
export const shownBy = (needed: ProcedureStep): readonly ProcedureStep[] =>
  needed === 'drained' ? ['drained', 'pumped-out'] : [needed];

/** Confirmations that hold only until water is let in again. */
const undoneByWater: readonly ProcedureStep[] = ['isolated', 'pressure-gone', 'drained', 'pumped-out'];

export const breachCodeOf = (step: ProcedureStep): BreachCode | null => holdPoints[step]?.code ?? null;
/** What this step waits for, whether or not it is there. */
export const neededBefore = (step: ProcedureStep, type: Hydrant['type']): readonly ProcedureStep[] =>
  holdPoints[step]?.needs(barrelOf(type)) ?? [];

/** A step that somebody named did, epoch milliseconds. */
export interface DoneStep {
  readonly step: ProcedureStep;
  readonly atMs: number;
}

/** What the record holds for the judgement of a hold point. */
export interface HoldRecord {
  readonly type: Hydrant['type'];
  /** Only those by a named person, and not dated later than they were recorded. */
  readonly done: readonly DoneStep[];
  /** Moments at which water was let in again: a refill, a reopened valve that had stopped it. Epoch milliseconds. */
  readonly waterLetInMs: readonly number[];
  /** Whether any standing record names the locate ticket. */
  readonly locateTicketKnown: boolean;
}

/**
 * What was missing when a step was done (or is, if it were done now): everything it waits for that nobody named had
 * confirmed by that moment. A confirmation from before water was let in again shows nothing of what stood afterwards. In
 * the very minute of the step it counts: people give times to the minute, and tick when the hands are free.
 */
export function missingBefore(step: ProcedureStep, atMs: number, record: HoldRecord): ProcedureStep[] {
  const wetAgainMs = Math.max(
    Number.NEGATIVE_INFINITY,
    ...record.waterLetInMs.filter((letIn) => letIn < atMs),
  );
  const stands = (needed: ProcedureStep): boolean =>
    shownBy(needed).some((code) =>
      record.done.some(
        (each) =>
          each.step === code &&
          each.atMs <= atMs &&
          (!undoneByWater.includes(code) || each.atMs > wetAgainMs),
      ),
    ) &&
    (needed !== 'locate-ticket' || record.locateTicketKnown);
  return neededBefore(step, record.type).filter((needed) => !stands(needed));
}
