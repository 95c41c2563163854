import type { RateBookEdition } from '../costs/rateBook.ts';
import { statementOf, type Statement } from '../costs/statement.ts';
import { workOf, type WaterLost, type Work } from '../costs/work.ts';
import type { Hydrant } from '../inventory/hydrant.ts';
import { project } from '../projections/project.ts';
import type { StrikeState } from '../strikes/state.ts';
import { effectiveFacts, ofKind, type Effective } from '../submissions/effective.ts';
import type { Recorded } from '../submissions/recorded.ts';
import { withoutTrials } from '../submissions/trials.ts';
import { usedFacts, usedRecords } from './used.ts';

/** A claim with everything that its statement and packet are made from. */
export interface ClaimCase {
  readonly claim: Effective<'claim-opened'>;
  readonly strike: StrikeState;
  readonly statement: Statement;
  /** What the statement was computed from. */
  readonly work: Work;
  readonly editions: readonly RateBookEdition[];
  /** The facts that the packet tells of, and everything recorded behind them. */
  readonly facts: readonly Effective[];
  readonly recorded: readonly Recorded[];
  /** Every effective fact that was read, also what the packet does not tell: for the utility's own eyes. */
  readonly all: readonly Effective[];
}

export interface ClaimQuestion {
  readonly claimId: string;
  /**
   * The claim's stream, every stream of its strike, its hydrant's stream, those of the hydrant's other strikes (a
   * return or a valve may stand there), and the utility's, for the rate book.
   */
  readonly recorded: readonly Recorded[];
  readonly hydrantType: (hydrantId: string) => Hydrant['type'];
  /** The inventory's model of a hydrant, for the maker's torques; left out, none are told of. */
  readonly modelOf?: ((hydrantId: string) => string | null) | undefined;
  readonly timeZone: string;
  readonly waterLost?: WaterLost | null | undefined;
}

/** Null when the claim, or the strike that it names, is not among the records. Trials are left out, as everywhere. */
export function claimCase({
  claimId,
  recorded,
  hydrantType,
  modelOf,
  timeZone,
  waterLost,
}: ClaimQuestion): ClaimCase | null {
  const real = withoutTrials(recorded);
  const { facts } = effectiveFacts(real);
  const claim = ofKind(facts, 'claim-opened').find(
    ({ fact }) => fact.subject.type === 'claim' && fact.subject.claimId === claimId,
  );
  if (!claim) return null;
  const { strikeId, partyId } = claim.fact.body;
  const strike = project(real, hydrantType).strikes.find(({ memberIds }) => memberIds.includes(strikeId));
  if (!strike) return null;
  const ofStrike = facts.filter(
    ({ fact }) => fact.subject.type === 'strike' && strike.memberIds.includes(fact.subject.strikeId),
  );
  const work = workOf(ofStrike, timeZone, waterLost ?? null);
  const editions = ofKind(facts, 'rate-book').map(({ fact }) => fact.body);
  const statement = statementOf(work, editions);
  const scope = {
    strikeIds: strike.memberIds,
    partyId,
    claimId,
    editionIds: statement.lines.flatMap(({ editionId }) => (editionId === null ? [] : [editionId])),
    billedIds: new Set(statement.lines.flatMap(({ submissionIds }) => submissionIds)),
    since: strike.since,
    returnedAt: strike.returnedAt,
    hydrantId: strike.hydrantId,
    modelId: strike.hydrantId === null ? null : (modelOf?.(strike.hydrantId) ?? null),
  };
  const used = usedFacts(facts, scope);
  return {
    claim,
    strike,
    statement,
    work,
    editions,
    all: facts,
    facts: used,
    recorded: usedRecords(real, used, scope),
  };
}
