import { ageing, type Aged } from './ageing.ts';
import { lostByReason, type Lost } from './lost.ts';
import { groupings, recovery, recoveryBy, type Grouping, type Recovery } from './recovery.ts';
import type { FigureRow } from './row.ts';
import { speed } from './speed.ts';

/** Everything that the desk counts. */
export interface ClaimFigures {
  /** The day they are as of, in the utility's zone. */
  readonly today: string;
  readonly whole: Recovery;
  readonly by: Readonly<Record<Grouping, readonly Recovery[]>>;
  readonly ageing: readonly Aged[];
  readonly speed: ReturnType<typeof speed>;
  readonly lost: readonly Lost[];
}

/** The desk's figures of these claims as of a day (`YYYY-MM-DD`). Pure; the order of the rows makes no difference. */
export function claimFigures(rows: readonly FigureRow[], today: string): ClaimFigures {
  return {
    today,
    whole: recovery(rows),
    by: Object.fromEntries(
      groupings.map((grouping) => [grouping, recoveryBy(rows, grouping)]),
    ) as unknown as ClaimFigures['by'],
    ageing: ageing(rows, today),
    speed: speed(rows),
    lost: lostByReason(rows),
  };
}
