import type { AuditCase, AuditPhoto } from '../../shared/audit/case.ts';
import { objectionsTo, withAnswers, type AnsweredObjection } from '../../shared/audit/objections.ts';
import { openedAsAnswered } from '../../shared/claims/contact.ts';
import { limitationOf } from '../../shared/audit/limitation.ts';
import { otherStrikes, otherWork, type OtherStrikes } from '../../shared/audit/otherWork.ts';
import { declaredPhotos } from '../../shared/packet/photos.ts';
import { partitions } from '../../shared/projections/items.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { effectiveFacts, ofKind } from '../../shared/submissions/effective.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import { withoutTrials } from '../../shared/submissions/trials.ts';
import { inTurns } from '../project/deps.ts';
import type { PacketsDeps } from './deps.ts';
import { loadClaim, type LoadedClaim } from './load.ts';
import { inspect } from '../evidence/pictures/inspect.ts';

/** Photos are large: few are held at a time. */
const PHOTOS_AT_ONCE = 2;

/** The claim's packet as an insurer would read it, with what has been said to each objection. */
export async function claimObjections(deps: PacketsDeps, claimId: string): Promise<AnsweredObjection[]> {
  const claim = await loadClaim(deps, claimId);
  const own = new Set(claim.strike.memberIds);
  const { hydrantId } = claim.strike;
  const facts = claim.all.filter(
    ({ fact: { subject } }) =>
      (subject.type === 'strike' && own.has(subject.strikeId)) ||
      (subject.type === 'hydrant' && subject.hydrantId === hydrantId),
  );
  const others = otherStrikes(
    claim.strike,
    (await deps.projections.list<StrikeState>(partitions.strike)).map(({ value }) => value),
  );
  const [photos, repairs] = await Promise.all([lookAtPhotos(deps, claim), repairsOf(deps, others)]);
  const claimFacts = claim.all.filter(
    ({ fact: { subject } }) => subject.type === 'claim' && subject.claimId === claimId,
  );
  const opened = openedAsAnswered(claim.claim.fact.body, claimFacts);
  const modelId = claim.hydrant?.modelId ?? null;
  const audited: AuditCase = {
    now: deps.now().toISOString(),
    timeZone: deps.settings.timeZone,
    claim: opened,
    party: ofKind(facts, 'party').find(({ fact }) => fact.submissionId === opened.partyId)?.fact.body ?? null,
    strike: claim.strike,
    facts,
    hydrant: claim.hydrant,
    model:
      ofKind(claim.all, 'hydrant-model')
        .map(({ fact }) => fact.body)
        .filter((model) => model.modelId === modelId)
        .at(-1) ?? null,
    statement: claim.statement,
    editions: ofKind(claim.all, 'rate-book').map(({ fact, recordedAt }) => ({
      edition: fact.body,
      recordedAt,
    })),
    photos,
    ...otherWork(
      others,
      ofKind(facts, 'repair').map(({ fact }) => fact.body),
      repairs,
    ),
    limitation: limitationOf(deps.settings, claim.statement.strike.date),
  };
  return withAnswers(objectionsTo(audited), claimFacts);
}

/** Whether each photo is here, and what its camera wrote. */
async function lookAtPhotos({ evidence }: PacketsDeps, { facts }: LoadedClaim): Promise<AuditPhoto[]> {
  const look = async ({
    exhibit,
    submissionId,
    recordedAt,
  }: ReturnType<typeof declaredPhotos>[number]): Promise<AuditPhoto> => {
    const kept = await evidence.copies.readRecord(exhibit.sha256);
    if (kept !== null)
      return { exhibit, submissionId, recordedAt, arrived: true, cameraTime: kept.said?.cameraTime ?? null };
    const bytes = await evidence.get(exhibit.sha256);
    const head =
      bytes !== null && exhibit.mediaType.startsWith('image/') ? await inspect(exhibit, bytes) : null;
    const cameraTime = head === null || typeof head === 'string' ? null : head.said.exif.cameraTime;
    return { exhibit, submissionId, recordedAt, arrived: bytes !== null, cameraTime };
  };
  return inTurns(declaredPhotos(facts), look, PHOTOS_AT_ONCE);
}

/** The repairs of the strikes that say something of this one. */
async function repairsOf(
  { ledger }: PacketsDeps,
  { near, past }: OtherStrikes,
): Promise<ReadonlyMap<string, readonly BodyOf<'repair'>[]>> {
  const wanted = new Map([...near, ...past].map((other) => [other.strikeId, other.memberIds]));
  const read = await inTurns([...wanted], async ([strikeId, memberIds]) => {
    const recorded = await Promise.all(
      memberIds.map((id) =>
        ledger.readStream(streamOf({ type: 'strike', strikeId: id }), { personal: false }),
      ),
    );
    const { facts } = effectiveFacts(withoutTrials(recorded.flat()));
    return [strikeId, ofKind(facts, 'repair').map(({ fact }) => fact.body)] as const;
  });
  return new Map(read);
}
