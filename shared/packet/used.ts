import { letterTextOf } from '../letters/recorded.ts';
import type { Recorded } from '../submissions/recorded.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import { correctionKind } from '../submissions/kinds.ts';

/** What one packet is about: the ids that decide which facts belong in it. */
export interface PacketScope {
  /** Every id that the strike goes or went by. */
  readonly strikeIds: readonly string[];
  readonly partyId: string | null;
  readonly claimId: string;
  /** Editions of the rate book from which the statement took a rate. */
  readonly editionIds: readonly string[];
  /** Submissions on which a line of the statement stands. */
  readonly billedIds: ReadonlySet<string>;
  /** Start of the outage and its end, null while open: which turns of a valve belong to it. */
  readonly since: string;
  readonly returnedAt: string | null;
  /** The struck hydrant, whose earlier tests are told of; null when nobody knows which it was. */
  readonly hydrantId: string | null;
  /** Its model by the inventory, for the maker's torques. */
  readonly modelId: string | null;
}

/** As many as a packet may tell of, and no more than are read. */
export const MOST_EARLIER_TESTS = 9;

/**
 * What of a strike's stream is the utility's own preparation: a counter-calculation that is not applied, and time on
 * the claim that is not billed. Neither is what the claim stands on, so neither goes out with it.
 */
const staysInside = ({ fact }: Effective, billed: ReadonlySet<string>): boolean =>
  // Between the utility, its customers and their agency; nobody pays for it.
  fact.kind === 'water-quality-answer' ||
  (fact.kind === 'counter-calculation' && fact.body.applied === null) ||
  (fact.kind === 'claim-handling' && !billed.has(fact.submissionId));

const time = (instant: string): number => Date.parse(instant);
const last = <T>(items: readonly T[]): T[] => items.slice(-1);

/**
 * The facts that a packet tells of: those of the strike, without other parties; of the hydrant's own stream its return,
 * the valves turned meanwhile, the last inspection and the flow tests before the strike, and the test that its repair
 * asked for; its model; the claim's opening and the words of its letter; and the editions of the rate book that
 * priced a line.
 */
export function usedFacts(facts: readonly Effective[], scope: PacketScope): readonly Effective[] {
  const before = (at: string): boolean => time(at) < time(scope.since);
  const onHydrant = facts.filter(({ fact }) => fact.subject.type === 'hydrant');
  const ofHydrant = onHydrant.filter(
    ({ fact }) => fact.subject.type === 'hydrant' && fact.subject.hydrantId === scope.hydrantId,
  );
  const ofStrike = ({ fact }: Effective): boolean =>
    fact.subject.type === 'strike' && scope.strikeIds.includes(fact.subject.strikeId);
  // A test may have been filed with the hydrant, or with an earlier strike of it.
  const tests = ofKind(facts, 'flow-test').filter(
    (item) => !ofStrike(item) && item.fact.body.residualHydrantId === scope.hydrantId,
  );
  const testsSince = tests
    .filter(({ fact }) => fact.subject.type === 'hydrant' && !before(fact.body.testedAt))
    .sort((a, b) => time(a.fact.body.testedAt) - time(b.fact.body.testedAt));
  const during = (at: string): boolean =>
    time(at) >= time(scope.since) && (scope.returnedAt === null || time(at) <= time(scope.returnedAt));
  const byTime = <T>(items: readonly T[], at: (item: T) => string): T[] =>
    items.filter((item) => before(at(item))).sort((a, b) => time(at(a)) - time(at(b)));
  const letter = letterTextOf(facts, scope);
  return [
    ...facts.filter((item) => {
      const { fact } = item;
      return (
        ofStrike(item) &&
        (fact.kind !== 'party' || fact.submissionId === scope.partyId) &&
        !staysInside(item, scope.billedIds)
      );
    }),
    ...ofKind(facts, 'return-to-service').filter(
      ({ fact }) =>
        !(fact.subject.type === 'strike' && scope.strikeIds.includes(fact.subject.strikeId)) &&
        fact.body.closes.some((id) => scope.strikeIds.includes(id)),
    ),
    ...ofKind(onHydrant, 'valve-operation').filter(({ fact }) => during(fact.body.at)),
    ...last(byTime(ofKind(ofHydrant, 'inspection'), ({ fact }) => fact.body.inspectedAt)),
    ...byTime(tests, ({ fact }) => fact.body.testedAt).slice(-MOST_EARLIER_TESTS),
    ...testsSince.filter(({ fact }) => during(fact.body.testedAt)),
    ...testsSince
      .filter(({ fact }) => !during(fact.body.testedAt) && fact.body.purpose === 'after-repair')
      .slice(0, 1),
    ...last(
      ofKind(facts, 'hydrant-model')
        .filter(({ fact }) => fact.body.modelId === scope.modelId)
        .sort((a, b) => time(a.fact.occurredAt) - time(b.fact.occurredAt)),
    ),
    ...ofKind(facts, 'claim-opened').filter(
      ({ fact }) => fact.subject.type === 'claim' && fact.subject.claimId === scope.claimId,
    ),
    ...(letter ? [letter] : []),
    ...ofKind(facts, 'rate-book').filter(({ fact }) => scope.editionIds.includes(fact.body.editionId)),
  ];
}

/**
 * Everything recorded that belongs to those facts: they themselves and every correction that led to them, and what was
 * withdrawn from the strike's own streams. Other parties stay out, corrected or not.
 */
export function usedRecords(
  recorded: readonly Recorded[],
  facts: readonly Effective[],
  scope: PacketScope,
): readonly Recorded[] {
  const byId = new Map(recorded.map((item) => [item.submission.submissionId, item]));
  const rootOf = (item: Recorded): Recorded => {
    let root = item;
    for (let steps = 0; steps < recorded.length && root.submission.kind === correctionKind; steps += 1) {
      const target = byId.get(root.submission.body.targetId);
      if (!target) break;
      root = target;
    }
    return root;
  };
  const kept = new Set<string>(['party', 'counter-calculation', 'claim-handling']);
  const used = new Set(facts.map(({ fact }) => fact.submissionId));
  return recorded.filter((item) => {
    const { submission } = rootOf(item);
    if (used.has(submission.submissionId)) return true;
    return (
      submission.subject.type === 'strike' &&
      scope.strikeIds.includes(submission.subject.strikeId) &&
      !kept.has(submission.kind === correctionKind ? submission.body.targetKind : submission.kind)
    );
  });
}
