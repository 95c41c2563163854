import { foldClaim, type ClaimState } from '../claims/state.ts';
import type { Hydrant } from '../inventory/hydrant.ts';
import { foldHydrant, type HydrantStatus } from '../outages/hydrantStatus.ts';
import type { Problem } from '../problems/problem.ts';
import { joinedStrikes } from '../strikes/sameStrike.ts';
import { foldStrike, type StrikeState } from '../strikes/state.ts';
import { byTime, effectiveFacts, ofKind, type Effective } from '../submissions/effective.ts';
import type { Recorded } from '../submissions/recorded.ts';
import { withoutTrials } from '../submissions/trials.ts';

/** Everything that is computed from submissions and kept for reading. It can always be made anew. */
export interface Projections {
  readonly strikes: readonly StrikeState[];
  readonly hydrants: readonly HydrantStatus[];
  readonly claims: readonly ClaimState[];
  readonly problems: readonly Problem[];
}

/**
 * Folds submissions into strikes, hydrants and claims. Give it everything (a rebuild) or one closed neighbourhood
 * (a strike, those linked to it, their hydrant, that hydrant's other strikes): the answer for those is the same.
 * `hydrantType` reads the inventory; an unknown hydrant has type `unknown`.
 */
export function project(
  recorded: readonly Recorded[],
  hydrantType: (hydrantId: string) => Hydrant['type'],
): Projections {
  const { facts, withdrawn, problems } = effectiveFacts(withoutTrials(recorded));
  const joined = joinedStrikes(
    ofKind(facts, 'link').flatMap(({ fact }) =>
      fact.subject.type === 'strike' ? [{ a: fact.subject.strikeId, b: fact.body.sameAsStrikeId }] : [],
    ),
  );
  const goesBy = (strikeId: string): string => joined.get(strikeId) ?? strikeId;

  const ofStrike = new Map<string, Effective[]>();
  /** Withdrawn facts count nowhere; a hold point that one of them shows was passed stays told. */
  const withdrawnOf = new Map<string, Effective[]>();
  const members = new Map<string, Set<string>>();
  const ofHydrantStream = new Map<string, Effective[]>();
  const ofClaim = new Map<string, Effective[]>();
  const push = <T>(map: Map<string, T[]>, key: string, item: T): void => {
    const list = map.get(key);
    if (list) list.push(item);
    else map.set(key, [item]);
  };
  for (const item of facts) {
    const { subject } = item.fact;
    if (subject.type === 'strike') {
      const id = goesBy(subject.strikeId);
      push(ofStrike, id, item);
      members.set(id, (members.get(id) ?? new Set([id])).add(subject.strikeId));
    } else if (subject.type === 'hydrant') push(ofHydrantStream, subject.hydrantId, item);
    else if (subject.type === 'claim') push(ofClaim, subject.claimId, item);
  }
  for (const item of withdrawn) {
    const { subject } = item.fact;
    if (subject.type === 'strike') push(withdrawnOf, goesBy(subject.strikeId), item);
  }
  // A link may name a strike of which nothing has arrived: it is a member all the same, so a return that closes it counts.
  for (const [id, root] of joined) members.get(root)?.add(id);

  // First pass: which hydrants each strike is of, which needs only its own facts.
  const hydrantOf = new Map<string, string | null>();
  const strikesOf = new Map<string, string[]>();
  for (const [strikeId, own] of ofStrike) {
    const { hydrantId, hydrantIds } = foldStrike({
      strikeId,
      memberIds: [strikeId],
      facts: own,
      aroundFacts: [],
      hydrantType: 'unknown',
    });
    hydrantOf.set(strikeId, hydrantId);
    for (const named of hydrantIds) push(strikesOf, named, strikeId);
  }

  const strikes: StrikeState[] = [];
  const hydrants: HydrantStatus[] = [];
  const foldOne = (strikeId: string, hydrantId: string | null): StrikeState => {
    const own = ofStrike.get(strikeId) ?? [];
    const others =
      hydrantId === null
        ? []
        : (strikesOf.get(hydrantId) ?? [])
            .filter((id) => id !== strikeId)
            .flatMap((id) => ofStrike.get(id) ?? []);
    return foldStrike({
      strikeId,
      memberIds: [...(members.get(strikeId) ?? [strikeId])],
      facts: own,
      withdrawn: withdrawnOf.get(strikeId) ?? [],
      aroundFacts: hydrantId === null ? [] : [...(ofHydrantStream.get(hydrantId) ?? []), ...others],
      hydrantType: hydrantId === null ? 'unknown' : hydrantType(hydrantId),
    });
  };
  for (const hydrantId of new Set([...strikesOf.keys(), ...ofHydrantStream.keys()])) {
    const ids = strikesOf.get(hydrantId) ?? [];
    const states = ids.map((id) => foldOne(id, hydrantId));
    strikes.push(...states.filter((state) => state.hydrantId === hydrantId));
    hydrants.push(
      foldHydrant({
        hydrantId,
        hydrantType: hydrantType(hydrantId),
        strikes: states,
        facts: [
          ...(ofHydrantStream.get(hydrantId) ?? []),
          ...ids.flatMap((id) => ofStrike.get(id) ?? []),
        ].sort(byTime),
      }),
    );
  }
  for (const [strikeId, hydrantId] of hydrantOf)
    if (hydrantId === null) strikes.push(foldOne(strikeId, null));
  const claims = [...ofClaim].flatMap(([claimId, own]) => foldClaim(claimId, own) ?? []);

  const by =
    <T>(key: (item: T) => string) =>
    (a: T, b: T): number =>
      key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0;
  return {
    strikes: strikes.sort(by(({ strikeId }) => strikeId)),
    hydrants: hydrants.sort(by(({ hydrantId }) => hydrantId)),
    claims: claims.sort(by(({ claimId }) => claimId)),
    problems,
  };
}
