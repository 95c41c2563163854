import type { Hydrant } from '../inventory/hydrant.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import type { BodyOf } from '../submissions/submission.ts';
import { breachCodeOf, missingBefore, type BreachCode } from './holdPoints.ts';
import { holdRecord, saidOfRepair } from './holdRecord.ts';
import type { ProcedureStep } from './steps.ts';

/** A hold point that the record shows was passed without its condition. It is kept and shown, never refused. */
export interface Breach {
  readonly code: BreachCode;
  /** The step that was done too soon; a breach kept before this does not say, and was a take-down. */
  readonly step?: ProcedureStep;
  /** The repair submission that shows it. */
  readonly submissionId: string;
  readonly at: string;
  readonly byWorkerId: string;
  readonly missing: readonly ProcedureStep[];
  /** The correction since which the record shows it no more. Left out while it stands. */
  readonly corrected?: {
    readonly submissionId: string;
    readonly at: string;
    readonly byPersonId: string;
    readonly reason: string;
    /** It withdrew the record, instead of putting another wording in its place. */
    readonly withdrawn: boolean;
  };
}

export interface BreachQuestion {
  readonly hydrantType: Hydrant['type'];
  /** Effective facts of the strike. */
  readonly facts: readonly Effective[];
  /** Those that a correction withdrew. */
  readonly withdrawn: readonly Effective[];
  /** Effective facts of the hydrant's own stream and of its other strikes: its valves may be turned there. */
  readonly aroundFacts: readonly Effective[];
}

type Repair = BodyOf<'repair'>;

/**
 * Every hold point that was passed without its condition, of all that was ever recorded of this strike (design decision
 * 7). A record that was corrected or withdrawn shows its breach still, with the correction beside it: putting a record
 * right is open to everybody, making a breach disappear to nobody. Pure; the order of arrival makes no difference.
 */
export function breachesOf({ hydrantType, facts, withdrawn, aroundFacts }: BreachQuestion): Breach[] {
  const repairs = ofKind(facts, 'repair');
  const judge = (body: Repair, item: Effective<'repair'>): Breach[] => {
    const others = repairs.filter((other) => other !== item);
    const said = [saidOfRepair(body, item), ...others.map((other) => saidOfRepair(other.fact.body, other))];
    const record = holdRecord(hydrantType, said, facts, aroundFacts);
    return body.steps.flatMap(({ step, doneAt, byWorkerId }) => {
      const code = breachCodeOf(step);
      const missing = code === null ? [] : missingBefore(step, Date.parse(doneAt), record);
      if (code === null || missing.length === 0) return [];
      return [{ code, step, submissionId: item.fact.submissionId, at: doneAt, byWorkerId, missing }];
    });
  };
  const standing = repairs.flatMap((item) => judge(item.fact.body, item));
  const corrected = [...repairs, ...ofKind(withdrawn, 'repair')].flatMap((item) =>
    (item.earlier ?? []).flatMap((fact, index) => {
      const correction = item.corrections[index];
      if (!correction) return [];
      const { submission, recordedAt } = correction;
      return judge(fact.body, item).map((breach): Breach => ({
        ...breach,
        corrected: {
          submissionId: submission.submissionId,
          at: recordedAt,
          byPersonId: submission.person.personId,
          reason: submission.body.reason,
          withdrawn: submission.body.replacement === null,
        },
      }));
    }),
  );
  return [...standing, ...oncePerStep(corrected, standing)].sort(
    (a, b) => Date.parse(a.at) - Date.parse(b.at) || (a.submissionId < b.submissionId ? -1 : 1),
  );
}

/** One per record and step, the latest correction's: what still stands is not told a second time. */
function oncePerStep(corrected: readonly Breach[], standing: readonly Breach[]): Breach[] {
  const key = ({ submissionId, step }: Breach): string => `${submissionId} ${step ?? ''}`;
  const shown = new Set(standing.map(key));
  const latest = new Map<string, Breach>();
  for (const breach of corrected) if (!shown.has(key(breach))) latest.set(key(breach), breach);
  return [...latest.values()];
}

/** Those that the record shows now. */
export const standingBreaches = <B extends { readonly corrected?: unknown }>(breaches: readonly B[]): B[] =>
  breaches.filter(({ corrected }) => corrected === undefined);
