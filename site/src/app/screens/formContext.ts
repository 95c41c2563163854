import { useEffect, useMemo, useState } from 'preact/hooks';
import { nextClaimNumber } from '../../../../shared/claims/claimNumber.ts';
import { useObservable } from '../core/observable.ts';
import { useClaim, useHydrant, useStrike, useStrikes } from '../core/records.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import type { About } from '../form/build.ts';
import { localDay } from '../form/localTime.ts';
import type { FormContext } from '../form/spec.ts';
import { aroundOnDevice } from '../offline/localStrike.ts';
import { entries } from '../outbox/outbox.ts';

/** On a line that neither answers nor ends, a crew's form opens with what the device has after this long. */
const PATIENCE_MS = 4_000;

export interface LoadedContext {
  readonly context: FormContext;
  /** Everything that will be known is known: each answer has come, or failed to. */
  readonly settled: boolean;
}

/** What is known of the job a form is about. */
export function useFormContext(
  about: About,
  claimNumberNeeded: boolean,
  asked: FormContext['asked'] = {},
): LoadedContext {
  const { zone } = useWords();
  const personId = useObservable(session)?.personId ?? '';
  const claim = useClaim(about.claimId);
  const strikeId = about.strikeId ?? claim.value?.claim.strikeId ?? null;
  const strike = useStrike(strikeId);
  const hydrantId = about.hydrantId ?? strike.value?.strike.hydrantId ?? null;
  const hydrant = useHydrant(hydrantId);
  const strikes = useStrikes(claimNumberNeeded);

  const waiting = (
    wanted: string | null | boolean,
    { value, failed }: { value: unknown; failed: unknown },
  ): boolean => wanted !== null && wanted !== false && value === null && failed === null;
  const queue = useObservable(entries);
  const around = useMemo(
    () =>
      aroundOnDevice(
        hydrantId,
        strike.value?.strike.memberIds ?? [],
        [strike.value?.ofHydrant, strike.value?.around, hydrant.value?.around],
        queue,
      ),
    [hydrantId, strike.value, hydrant.value, queue],
  );
  const now = new Date();
  // A claim moves while its page is open: a revision is issued, another person records a payment. What a form of it is
  // filled in with is read anew; the crew's forms take what the device has.
  const [openedAt] = useState(() => Date.now());
  const [late, setLate] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setLate(true), PATIENCE_MS);
    return () => clearTimeout(timer);
  }, []);
  const stale =
    about.claimId !== null &&
    claim.failed === null &&
    (claim.fetchedAt === null || claim.fetchedAt < openedAt);
  return {
    settled:
      !stale &&
      !waiting(about.claimId, claim) &&
      (late || !waiting(strikeId, strike)) &&
      (late || !waiting(hydrantId, hydrant)) &&
      !waiting(claimNumberNeeded, strikes),
    context: {
      now,
      zone,
      personId,
      hydrantId,
      hydrant: hydrant.value?.hydrant ?? strike.value?.hydrant ?? null,
      status: hydrant.value?.status ?? strike.value?.status ?? null,
      strike: strike.value?.strike ?? null,
      history: strike.value?.history.map(({ recorded }) => recorded) ?? [],
      ofHydrant: strike.value?.ofHydrant ?? [],
      around,
      flowTests: hydrant.value?.flowTests ?? [],
      claim: claim.value?.claim ?? null,
      events: claim.value?.events ?? [],
      asked,
      nextClaimNumber: nextClaimNumber(
        (strikes.value?.claims ?? []).map(({ claimNumber }) => claimNumber),
        Number(localDay(now, zone).slice(0, 4)),
      ),
    },
  };
}
