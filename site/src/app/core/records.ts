import type { ClaimContact } from '../../../../shared/claims/contact.ts';
import type { ClaimState } from '../../../../shared/claims/state.ts';
import type { AnsweredObjection } from '../../../../shared/audit/objections.ts';
import type { ListedDeadline } from '../../../../shared/clocks/list.ts';
import type { JobCodes } from '../../../../shared/costs/codes.ts';
import type { EditionsOnRecord } from '../../../../shared/costs/editionsOnRecord.ts';
import type { Statement } from '../../../../shared/costs/statement.ts';
import type { Work } from '../../../../shared/costs/work.ts';
import type { Hydrant } from '../../../../shared/inventory/hydrant.ts';
import type { HydrantStatus } from '../../../../shared/outages/hydrantStatus.ts';
import type { Problem } from '../../../../shared/problems/problem.ts';
import type { Neighbour } from '../../../../shared/nearest/nearest.ts';
import type { MainsOfHydrant } from '../../../../shared/shutMain/ofHydrant.ts';
import type { StrikeState } from '../../../../shared/strikes/state.ts';
import type { HistoryEntry } from '../../../../shared/submissions/history.ts';
import type { Recorded } from '../../../../shared/submissions/recorded.ts';
import type { BodyOf } from '../../../../shared/submissions/submission.ts';
import { useMemo } from 'preact/hooks';
import { hydrantNearby, nearby } from '../offline/nearby.ts';
import type { StrikeAnswer } from './strikeAnswer.ts';
import { strikeOnDevice } from '../offline/localStrike.ts';
import { entries } from '../outbox/outbox.ts';
import { useObservable } from './observable.ts';
import { useResource, type Resource } from './resource.ts';

/** What the API answers, as the contract has it, and the hooks that read it. */

export interface StrikesAnswer {
  readonly strikes: readonly StrikeState[];
  readonly hydrants: Readonly<Record<string, Hydrant>>;
  readonly claims?: readonly ClaimState[];
}

export interface FoundHydrant {
  readonly hydrant: Hydrant;
  readonly inService: boolean;
  readonly distanceFt?: number;
}
export interface HydrantsAnswer {
  readonly hydrants: readonly FoundHydrant[];
}

export interface HydrantAnswer {
  /** Null for a hydrant that a crew named and the inventory lacks. */
  readonly hydrant: Hydrant | null;
  readonly status: HydrantStatus | null;
  readonly flowTests: readonly Recorded[];
  /** Hydrants in service in its stead, nearest first. */
  readonly nearest: readonly Neighbour<Hydrant>[];
  /** What hold points and returns of it are judged by, its strikes' among it; an answer of before has none. */
  readonly around?: readonly Recorded[];
  /** The mains that were shut from its page; left out where none was. */
  readonly mains?: MainsOfHydrant;
  /** From the list on this device: what the hydrant is, and nothing of how it stands. The server never says so. */
  readonly partial?: true;
}

export interface ClaimAnswer {
  readonly claim: ClaimState;
  readonly strike: StrikeState | null;
  readonly parties: readonly Recorded[];
  /** The other claims of its strike. */
  readonly others: readonly ClaimState[];
  /** Everything recorded of it, as it stands. */
  readonly events: readonly Recorded[];
  /** Everything ever said of it, and what became of that. */
  readonly history: readonly HistoryEntry[];
  /** Who is written to at the payer; an answer that was kept from before has none of these. */
  readonly contact?: ClaimContact | null;
  /** What the claims of one strike may ask together. */
  readonly shares?: { readonly problems: readonly (Problem & { readonly message: string })[] } | null;
  readonly cautions?: readonly { readonly submissionId: string; readonly sentences: readonly string[] }[];
}

export const strikePath = (strikeId: string): string => `/api/strikes/${encodeURIComponent(strikeId)}`;
export const hydrantPath = (hydrantId: string): string => `/api/hydrants/${encodeURIComponent(hydrantId)}`;
export const claimPath = (claimId: string): string => `/api/claims/${encodeURIComponent(claimId)}`;

export const useStrikes = (wanted = true) => useResource<StrikesAnswer>(wanted ? '/api/strikes' : null);
type Read<T> = Resource<T> & { readonly reload: () => void };

/** A strike as the server and this device's outbox know it. One that only waits here is no failure to be told of. */
export function useStrike(strikeId: string | null): Read<StrikeAnswer> {
  const read = useResource<StrikeAnswer>(strikeId === null ? null : strikePath(strikeId));
  const waiting = useObservable(entries);
  const around = useObservable(nearby);
  const value = useMemo(
    () =>
      strikeId === null
        ? null
        : strikeOnDevice(strikeId, read.value, waiting, (id) => hydrantNearby(id)?.hydrant ?? null),
    [strikeId, read.value, waiting, around],
  );
  const onlyHere = read.value === null && value !== null && read.failed?.outcome === 'refused';
  return { ...read, value, failed: onlyHere ? null : read.failed };
}

/** A hydrant as the server knows it; until it answers, and when it does not, from the list on this device. */
export function useHydrant(hydrantId: string | null): Read<HydrantAnswer> {
  const read = useResource<HydrantAnswer>(hydrantId === null ? null : hydrantPath(hydrantId));
  const around = useObservable(nearby);
  const listed = useMemo(
    () => (hydrantId === null || read.failed === null ? null : (hydrantNearby(hydrantId)?.hydrant ?? null)),
    [hydrantId, read.failed, around],
  );
  if (read.value !== null || listed === null || around === null) return read;
  return {
    ...read,
    value: { hydrant: listed, status: null, flowTests: [], nearest: [], partial: true },
    fetchedAt: around.fetchedAt,
  };
}
export const useModels = () =>
  useResource<{ readonly models: readonly BodyOf<'hydrant-model'>[] }>('/api/models');
/** Codes and titles of the rate book in force, for those who may not see its rates. */
export const useJobCodes = (wanted = true) => useResource<JobCodes>(wanted ? '/api/job-codes' : null);
export const useRateBooks = () => useResource<EditionsOnRecord>('/api/rate-books');
export const useClaim = (claimId: string | null) =>
  useResource<ClaimAnswer>(claimId === null ? null : claimPath(claimId));
export const useStatement = (claimId: string | null) =>
  useResource<Statement>(claimId === null ? null : `${claimPath(claimId)}/statement`);
/** The claim as an insurer would read it, with what was said to each objection. */
export const useObjections = (claimId: string | null) =>
  useResource<{ readonly objections: readonly AnsweredObjection[] }>(
    claimId === null ? null : `${claimPath(claimId)}/objections`,
  );
/** The dates of one claim, and the day on which they were read. */
export const useDeadlines = (claimId: string | null) =>
  useResource<{ readonly today: string; readonly deadlines: readonly ListedDeadline[] }>(
    claimId === null ? null : `${claimPath(claimId)}/deadlines`,
  );
/** What a strike's statement is computed from, apart from the rates. */
export const useWork = (strikeId: string | null) =>
  useResource<{ readonly work: Work }>(strikeId === null ? null : `${strikePath(strikeId)}/work`);
