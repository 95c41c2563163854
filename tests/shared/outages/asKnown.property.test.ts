import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bearingOnHolds } from '../../../shared/outages/around.ts';
import { valveClosed, type Outage } from '../../../shared/outages/hydrantStatus.ts';
import { returnAsKnown } from '../../../shared/outages/returnAsKnown.ts';
import { standingBreaches } from '../../../shared/procedure/breaches.ts';
import { breachCodeOf, missingBefore } from '../../../shared/procedure/holdPoints.ts';
import { holdRecord, saidOfRepair } from '../../../shared/procedure/holdRecord.ts';
import { project } from '../../../shared/projections/project.ts';
import type { StrikeState } from '../../../shared/strikes/state.ts';
import { effectiveFacts, ofKind, type Effective } from '../../../shared/submissions/effective.ts';
import type { FactKind } from '../../../shared/submissions/kinds.ts';
import type { Recorded } from '../../../shared/submissions/recorded.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { oneStrike, randomSubmissions } from '../../support/randomSubmissions.ts';
import { recorded } from '../../support/submissions.ts';

/**
 * What a form says before something is recorded, from the records that the server hands it, is what the record says
 * afterwards: of every return whether it takes effect and what holds it, of every step whether it is a breach.
 */
const typeOf = (hydrantId: string) => (hydrantId === 'B' ? ('wet-barrel' as const) : ('dry-barrel' as const));

interface Before {
  readonly hydrantId: string;
  readonly strike: StrikeState | null;
  /** The strike's own, and what the server hands out around it. */
  readonly own: readonly Effective[];
  readonly around: readonly Effective[];
  readonly open: readonly Outage[];
}

/** What a device has in hand just before this submission. */
function before(one: Submission, others: readonly Submission[]): Before | null {
  const everything = others.map((each) => recorded(each));
  const record = project(everything, typeOf);
  const { subject } = one;
  const strike =
    subject.type === 'strike'
      ? (record.strikes.find(({ memberIds }) => memberIds.includes(subject.strikeId)) ?? null)
      : null;
  const hydrantId = subject.type === 'hydrant' ? subject.hydrantId : strike?.hydrantId;
  const status = record.hydrants.find((each) => each.hydrantId === hydrantId);
  if (typeof hydrantId !== 'string' || !status) return null;
  const here = record.strikes.filter(({ hydrantIds }) => hydrantIds.includes(hydrantId));
  const ids = here.flatMap(({ memberIds }) => memberIds);
  const open = status.open.map(({ outageId }) => outageId);
  const openIds = here.flatMap(({ strikeId, memberIds }) => (open.includes(strikeId) ? memberIds : []));
  const isOwn = ({ submission }: Recorded): boolean =>
    submission.subject.type === 'strike' && (strike?.memberIds ?? []).includes(submission.subject.strikeId);
  const atHydrant = everything.filter(({ submission }) =>
    submission.subject.type === 'strike'
      ? ids.includes(submission.subject.strikeId)
      : submission.subject.type === 'hydrant' && submission.subject.hydrantId === hydrantId,
  );
  return {
    open: status.open,
    hydrantId,
    strike,
    own: effectiveFacts(everything.filter(isOwn)).facts,
    around: effectiveFacts(
      bearingOnHolds(atHydrant, new Set([...open, ...openIds])).filter((item) => !isOwn(item)),
    ).facts,
  };
}

const asFact = <K extends FactKind>(one: Submission): Effective<K> => {
  const { submission, recordedAt } = recorded(one);
  return { fact: submission, recordedAt, corrections: [] } as unknown as Effective<K>;
};

describe('what a form says before', { timeout: 120_000 }, () => {
  it('of a return is what the record says after', () => {
    let [effective, held, ofAnother] = [0, 0, 0];
    fc.assert(
      fc.property(fc.oneof(randomSubmissions(20), oneStrike()), (drawn) => {
        const real = drawn.filter(({ test }) => test !== true);
        for (const one of real) {
          if (one.kind !== 'return-to-service') continue;
          const others = real.filter(
            (each) =>
              each !== one && !(each.kind === 'correction' && each.body.targetId === one.submissionId),
          );
          const known = before(one, others);
          if (!known) continue;
          const after = project(
            [...others, one].map((each) => recorded(each)),
            typeOf,
          );
          const status = after.hydrants.find(({ hydrantId }) => hydrantId === known.hydrantId)!;
          const outages = [...status.open, ...status.past];
          const closed = one.body.closes.flatMap((id) => {
            const strike = after.strikes.find(({ memberIds }) => memberIds.includes(id));
            return outages.filter(({ outageId }) => outageId === (strike?.strikeId ?? id));
          });
          // The form offers what is open at this hydrant, and its own strike.
          const offered = [known.strike?.strikeId, ...known.open.map(({ outageId }) => outageId)];
          if (closed.length !== one.body.closes.length) continue;
          // A shut valve is no outage that a return ends: its reopening is.
          if (closed.some(({ cause }) => cause === valveClosed)) continue;
          if (!closed.every(({ outageId }) => offered.includes(outageId))) continue;
          const said = returnAsKnown(asFact<'return-to-service'>(one), {
            hydrantType: typeOf(known.hydrantId),
            facts: [...known.own, ...known.around],
            told: known.open,
          });
          const holds = closed.flatMap(
            ({ heldReturns }) =>
              heldReturns.find(({ returnId }) => returnId === one.submissionId)?.holds ?? [],
          );
          expect(said.takesEffect).toBe(holds.length === 0);
          expect(new Set(said.holds.map((hold) => JSON.stringify(hold)))).toEqual(
            new Set(holds.map((hold) => JSON.stringify(hold))),
          );
          if (said.takesEffect) effective += 1;
          else held += 1;
          if (closed.some(({ outageId }) => outageId !== known.strike?.strikeId)) ofAnother += 1;
        }
      }),
      { numRuns: 2000 },
    );
    // The draw reaches every answer often enough to mean something.
    expect(effective).toBeGreaterThan(10);
    expect(held).toBeGreaterThan(100);
    expect(ofAnother).toBeGreaterThan(10);
  });

  it('of a step is what the record says after', () => {
    let [breaches, none] = [0, 0];
    fc.assert(
      fc.property(randomSubmissions(20), (drawn) => {
        const real = drawn.filter(({ test }) => test !== true);
        for (const one of real) {
          if (one.kind !== 'repair') continue;
          const others = real.filter(
            (each) =>
              each !== one && !(each.kind === 'correction' && each.body.targetId === one.submissionId),
          );
          const known = before(one, others);
          if (!known?.strike) continue;
          const { strikeId } = known.strike;
          const record = holdRecord(
            typeOf(known.hydrantId),
            [asFact<'repair'>(one), ...ofKind(known.own, 'repair')].map((item) =>
              saidOfRepair(item.fact.body, item),
            ),
            known.own,
            known.around,
          );
          const said = one.body.steps
            .filter(({ step, doneAt }) => missingBefore(step, Date.parse(doneAt), record).length > 0)
            .map(({ step }) => step);
          const after = project(
            [...others, one].map((each) => recorded(each)),
            typeOf,
          ).strikes.find(({ memberIds }) => memberIds.includes(strikeId))!;
          // Which hydrant it is may be said by this repair alone.
          if (after.hydrantId !== known.hydrantId) continue;
          const shown = standingBreaches(after.breaches).filter(
            ({ submissionId }) => submissionId === one.submissionId,
          );
          expect(said).toEqual(said.filter((step) => breachCodeOf(step) !== null));
          expect(new Set(said)).toEqual(new Set(shown.map(({ step }) => step)));
          breaches += shown.length;
          none += shown.length === 0 && one.body.steps.length > 0 ? 1 : 0;
        }
      }),
      { numRuns: 2000 },
    );
    expect(breaches).toBeGreaterThan(100);
    expect(none).toBeGreaterThan(100);
  });
});
