import type { Problem } from '../../problems/problem.ts';
import type { RateBookEdition } from '../rateBook.ts';

type MachineRate = RateBookEdition['machines'][number];

/** A row of a published equipment schedule, as printed and as read. */
export interface ScheduleRow {
  /** Line of the file, counted from 1; the heading is line 1. */
  readonly line: number;
  /** As printed, with its decimals: `8701.1` is not `8701`. */
  readonly code: string;
  readonly equipment: string;
  readonly size: string;
  readonly hp: string;
  readonly notes: string;
  /** Null where the unit is blank or is none that a machine is billed by. */
  readonly unit: MachineRate['unit'] | null;
  /** Dollars, as a decimal without thousands commas; null where it cannot be read. */
  readonly rateUsd: string | null;
  readonly state: 'clean' | 'doubtful' | 'rejected';
  /** Why it is doubtful or rejected. Words: `problem.<code>`. */
  readonly reasons: readonly Problem[];
}

/** The name that a statement prints: what it is, its size, its power. */
export function scheduleTitle({ equipment, size, hp }: ScheduleRow): string {
  const power = hp === '' || /^n\/?a$/i.test(hp) ? '' : /\d/.test(hp) ? `${hp} HP` : hp;
  return [equipment, size, power]
    .filter((part) => part !== '')
    .join(', ')
    .slice(0, 200);
}

/**
 * The machine rate of a row. Such schedules hold what it costs to own and to run a machine, fuel and overhead among it,
 * and not its operator (44 CFR 206.228(a)(1); the schedule's own heading). Null for a rejected row.
 */
export function machineFromRow(row: ScheduleRow, authorityId: string): MachineRate | null {
  if (row.state === 'rejected' || row.unit === null || row.rateUsd === null) return null;
  const size = [row.size, row.hp === '' ? '' : `${row.hp} HP`].filter(Boolean).join(', ').slice(0, 200);
  return {
    machineCode: row.code,
    title: scheduleTitle(row),
    unit: row.unit,
    rateUsd: row.rateUsd,
    standbyUsd: null,
    schedule: { code: row.code, size: size === '' ? null : size },
    includes: ['fuel', 'overhead'],
    authorityId,
  };
}
