import type { StrikeState } from '../strikes/state.ts';
import type { BodyOf } from '../submissions/submission.ts';
import type { AuditCase } from './case.ts';
import { at, DAY_MS, HOUR_MS } from './reading.ts';

/** Jobs that began within this of the strike may claim the same person's time (common practice, no source). */
const NEAR_DAYS = 14;
/** How many of the utility's last returned strikes are looked at for repairs of the same extent. */
const PAST_LOOKED_AT = 40;

export interface OtherStrikes {
  /** Those whose people may have been on this one too. */
  readonly near: readonly StrikeState[];
  /** Those that came before it and are over, the latest first. */
  readonly past: readonly StrikeState[];
}

/** Which of the utility's other strikes say something of this one. Few, so that only these need be read whole. */
export function otherStrikes(strike: StrikeState, all: readonly StrikeState[]): OtherStrikes {
  const since = at(strike.since);
  const others = all.filter(({ strikeId }) => strikeId !== strike.strikeId);
  return {
    near: others.filter((other) => Math.abs(at(other.since) - since) <= NEAR_DAYS * DAY_MS),
    past: others
      .filter((other) => other.returnedAt !== null && at(other.since) < since)
      .sort((a, b) => at(b.since) - at(a.since))
      .slice(0, PAST_LOOKED_AT),
  };
}

type Repairs = readonly BodyOf<'repair'>[];

/**
 * What the other strikes' repairs say: the same people at the same time, and what repairs of the same extent took.
 * `own` are this strike's repairs, `repairsOf` those of another by its id.
 */
export function otherWork(
  { near, past }: OtherStrikes,
  own: Repairs,
  repairsOf: ReadonlyMap<string, Repairs>,
): Pick<AuditCase, 'elsewhere' | 'pastRepairs'> {
  const extent = new Set(own.flatMap(({ damage }) => damage ?? []));
  return {
    elsewhere: near.flatMap(({ strikeId }) =>
      (repairsOf.get(strikeId) ?? []).flatMap(({ crew }) =>
        crew.flatMap(({ workerId, work }) => work.map(({ from, to }) => ({ strikeId, workerId, from, to }))),
      ),
    ),
    pastRepairs: past.flatMap(({ strikeId }) => {
      const repairs = repairsOf.get(strikeId) ?? [];
      const crew = repairs.flatMap((repair) => repair.crew);
      const alike = repairs.some(({ damage }) => damage !== null && extent.has(damage));
      if (!alike || crew.length === 0) return [];
      const laborHours = crew
        .flatMap(({ work }) => work)
        .reduce((hours, { from, to }) => hours + (at(to) - at(from)) / HOUR_MS, 0);
      return [{ people: new Set(crew.map(({ workerId }) => workerId)).size, laborHours }];
    }),
  };
}
