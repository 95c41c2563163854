import { OutOfRange } from '../hydraulics/card.ts';
import { problem } from '../problems/problem.ts';
import { groups, passes, tighteningOrder, type Pass } from './order.ts';
import type { TorqueRecord } from './record.ts';
import { bothUnits, type Torque } from './torqueUnits.ts';

/** What a wrench of a stated tolerance really brings. */
export interface TorqueBetween {
  readonly least: Torque;
  readonly most: Torque;
}

export interface PlannedPass {
  readonly share: number;
  readonly pattern: Pass['pattern'];
  /** Null when the record has no torque: the maker's manual says it, and nothing else does. */
  readonly torque: Torque | null;
  readonly order: readonly number[];
}

export interface TighteningPlan {
  readonly bolts: number;
  readonly order: readonly number[];
  /** The order in the groups in which it is read out. */
  readonly groups: readonly (readonly number[])[];
  readonly passes: readonly PlannedPass[];
  readonly torque:
    (Torque & { readonly to: Torque | null; readonly manual: string; readonly page: string }) | null;
  /** Null without a torque, or without the wrench's tolerance. */
  readonly wrench: (TorqueBetween & { readonly toleranceFraction: number }) | null;
}

const times = ({ lbfFt, nM }: Torque, share: number): Torque => ({ lbfFt: lbfFt * share, nM: nM * share });

export interface TighteningQuestion {
  /** From the model's record; null when it has none. */
  readonly record: TorqueRecord | null;
  /** How many bolts are in the hand; else the record's. */
  readonly bolts?: number | undefined;
  /** As the wrench's certificate says, as a share of its setting; nothing is assumed. */
  readonly wrenchToleranceFraction?: number | undefined;
}

/**
 * How to tighten a joint: order, passes, torque of each. The torque is the record's and nobody else's; without one the
 * order still stands and every torque is null.
 *
 * @throws OutOfRange when the number of bolts is not known, is odd or out of range, or differs from the record's.
 */
export function tighteningPlan({
  record,
  bolts,
  wrenchToleranceFraction,
}: TighteningQuestion): TighteningPlan {
  const recorded = record?.bolts ?? null;
  const count = bolts ?? recorded;
  if (count === null) throw new OutOfRange([problem('required', 'bolts', { expected: 'number' })]);
  if (bolts !== undefined && recorded !== null && bolts !== recorded)
    throw new OutOfRange([problem('bolts-differ-from-record', 'bolts', { recorded })]);
  const order = tighteningOrder(count);
  const round = [...order].sort((a, b) => a - b);
  const torque = record ? bothUnits(record.torque, record.unit) : null;
  const to = record && record.torqueTo !== null ? bothUnits(record.torqueTo, record.unit) : null;
  return {
    bolts: count,
    order,
    groups: groups(count),
    passes: passes.map(({ share, pattern }) => ({
      share,
      pattern,
      torque: torque && times(torque, share),
      order: pattern === 'cross' ? order : round,
    })),
    torque: torque && record ? { ...torque, to, manual: record.manual, page: record.page } : null,
    wrench:
      torque && wrenchToleranceFraction !== undefined
        ? {
            toleranceFraction: wrenchToleranceFraction,
            least: times(torque, 1 - wrenchToleranceFraction),
            most: times(to ?? torque, 1 + wrenchToleranceFraction),
          }
        : null,
  };
}
