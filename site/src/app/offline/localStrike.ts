import type { Hydrant } from '../../../../shared/inventory/hydrant.ts';
import { sinceStrike } from '../../../../shared/strikes/sinceStrike.ts';
import { foldStrike, type StrikeState } from '../../../../shared/strikes/state.ts';
import { effectiveFacts, type Effective } from '../../../../shared/submissions/effective.ts';
import { history } from '../../../../shared/submissions/history.ts';
import type { Recorded } from '../../../../shared/submissions/recorded.ts';
import type { StrikeAnswer } from '../core/strikeAnswer.ts';
import type { Entry } from '../outbox/database.ts';

/** What waits on this device and is about this strike, in the order in which it was written. */
export const queuedOf = (strikeId: string, entries: readonly Entry[]): readonly Entry[] =>
  entries.filter(
    ({ submission: { subject }, state }) =>
      state !== 'recorded' && subject.type === 'strike' && subject.strikeId === strikeId,
  );

/** What waits on this device and was written from the hydrant's own page, as the ledger will hold it. */
export const queuedOfHydrant = (hydrantId: string, entries: readonly Entry[]): readonly Recorded[] =>
  entries
    .filter(
      ({ submission: { subject }, state }) =>
        state !== 'recorded' && subject.type === 'hydrant' && subject.hydrantId === hydrantId,
    )
    .map(asRecorded);

/** Each record once, whichever answer it came with; a later list has the last word. */
const onceEach = (...lists: readonly (readonly Recorded[])[]): readonly Recorded[] => [
  ...new Map(lists.flat().map((item) => [item.submission.submissionId, item])).values(),
];

/**
 * What is known here of the streams around a job: what the server said with the strike and with the hydrant, and what
 * waits on this device for the hydrant's own page or for another strike of it.
 *
 * @param ownIds every id of the job's own strike; none for a job without one
 */
export function aroundOnDevice(
  hydrantId: string | null,
  ownIds: readonly string[],
  said: readonly (readonly Recorded[] | undefined)[],
  entries: readonly Entry[],
): readonly Recorded[] {
  if (hydrantId === null) return [];
  const known = said.flatMap((list) => list ?? []);
  const waiting = entries.filter(({ state }) => state !== 'recorded').map(asRecorded);
  const reported = waiting.filter(
    ({ submission }) => submission.kind === 'strike' && submission.body.hydrantId === hydrantId,
  );
  const strikes = new Set(
    [...known, ...reported].flatMap(({ submission: { subject } }) =>
      subject.type === 'strike' ? [subject.strikeId] : [],
    ),
  );
  return onceEach(known, waiting).filter(({ submission: { subject } }) =>
    subject.type === 'strike'
      ? strikes.has(subject.strikeId) && !ownIds.includes(subject.strikeId)
      : subject.type === 'hydrant' && subject.hydrantId === hydrantId,
  );
}

/** As the ledger will hold it, once it is there: read by the same folds. */
const asRecorded = ({ submission, queuedAt }: Entry): Recorded =>
  ({ submission, recordedAt: queuedAt, deliveredBy: null, erased: false }) as unknown as Recorded;

/**
 * A strike as this device knows it: what the server last said, and what waits here on top of it, through the same fold
 * as the server's. So a repair, a flow test and a return follow a strike that has not been sent, and each form sees the
 * steps and the valves of the one before. `null` when neither is known.
 */
export function strikeOnDevice(
  strikeId: string,
  said: StrikeAnswer | null,
  entries: readonly Entry[],
  hydrantOf: (hydrantId: string) => Hydrant | null,
): StrikeAnswer | null {
  const memberIds = said?.strike.memberIds ?? [strikeId];
  const queued = memberIds.flatMap((id) => queuedOf(id, entries)).map(asRecorded);
  if (queued.length === 0) return said && withHydrants(said, entries);
  const known = new Set(queued.map(({ submission }) => submission.submissionId));
  const recorded = [
    ...(said?.history.map((entry) => entry.recorded) ?? []).filter(
      ({ submission }) => !known.has(submission.submissionId),
    ),
    ...queued,
  ];
  const { facts, problems } = effectiveFacts(recorded);
  const fold = (type: Hydrant['type'], aroundFacts: readonly Effective[]): StrikeState =>
    foldStrike({ strikeId, memberIds, facts, aroundFacts, hydrantType: type });
  // Which hydrant it is comes out of the fold; its type and what is known around it go into it.
  const named = said?.hydrant?.hydrantId ?? fold('unknown', []).hydrantId;
  const hydrant = said?.hydrant ?? (named === null ? null : hydrantOf(named));
  const around = aroundOnDevice(named, memberIds, [said?.ofHydrant, said?.around], entries);
  const folded = fold(hydrant?.type ?? 'unknown', effectiveFacts(around).facts);
  const answer: StrikeAnswer = {
    // An outage that the server knows to be over is over: it has read more than this strike's own records.
    strike:
      said === null
        ? folded
        : {
            ...said.strike,
            ...folded,
            ...(said.strike.returnedAt === null
              ? {}
              : { returnedAt: said.strike.returnedAt, stage: said.strike.stage }),
          },
    history: history(recorded),
    hydrant,
    status: said?.status ?? null,
    evidence: said?.evidence ?? {},
    problems: said?.problems ?? problems,
    possibleDuplicates: said?.possibleDuplicates ?? [],
    ...(said?.claims ? { claims: said.claims } : {}),
    ...(said?.ofHydrant ? { ofHydrant: said.ofHydrant } : {}),
    around,
  };
  return withHydrants(answer, entries);
}

/** With what waits here from the hydrant's own page: a later look bears on the damage before it is sent. */
function withHydrants(answer: StrikeAnswer, entries: readonly Entry[]): StrikeAnswer {
  const { hydrantId } = answer.strike;
  const queued = hydrantId === null ? [] : sinceStrike(queuedOfHydrant(hydrantId, entries), answer.strike);
  if (queued.length === 0) return answer;
  const known = new Set(queued.map(({ submission }) => submission.submissionId));
  const said = (answer.ofHydrant ?? []).filter(({ submission }) => !known.has(submission.submissionId));
  return { ...answer, ofHydrant: [...said, ...queued] };
}
