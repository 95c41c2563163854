import type { AuditCase, AuditPhoto } from '../../shared/audit/case.ts';
import { objectionsTo, withAnswers, type AnsweredObjection } from '../../shared/audit/objections.ts';
import { declaredPhotos } from '../../shared/packet/photos.ts';
import { partitions } from '../../shared/projections/items.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { effectiveFacts, ofKind } from '../../shared/submissions/effective.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import { inTurns } from '../project/deps.ts';
import type { PacketsDeps } from './deps.ts';
import { loadClaim, type LoadedClaim } from './load.ts';
import { inspect } from './photos/gather.ts';

const DAY_MS = 86_400_000;
/** Jobs that began within this of the strike may claim the same person's time. */
const NEAR_DAYS = 14;
/** Photos are large: few are held at a time. */
const PHOTOS_AT_ONCE = 2;
/** How many of the utility's last repairs are read for a comparison. */
const PAST_READ = 40;

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
  const damage = new Set(ofKind(facts, 'repair').flatMap(({ fact }) => fact.body.damage ?? []));
  const [photos, others] = await Promise.all([
    lookAtPhotos(deps, claim),
    otherJobs(deps, claim.strike, damage),
  ]);
  const opened = claim.claim.fact.body;
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
    ...others,
    // No setting says when the right to sue ends; the claim's clocks will.
    limitation: null,
  };
  const claimFacts = claim.all.filter(
    ({ fact: { subject } }) => subject.type === 'claim' && subject.claimId === claimId,
  );
  return withAnswers(objectionsTo(audited), claimFacts);
}

/** Whether each photo is here, and what its camera wrote. */
async function lookAtPhotos({ evidence }: PacketsDeps, { facts }: LoadedClaim): Promise<AuditPhoto[]> {
  const look = async ({
    exhibit,
    submissionId,
    recordedAt,
  }: ReturnType<typeof declaredPhotos>[number]): Promise<AuditPhoto> => {
    const bytes = await evidence.get(exhibit.sha256);
    const head =
      bytes !== null && exhibit.mediaType.startsWith('image/') ? await inspect(exhibit, bytes) : null;
    const cameraTime = head === null || typeof head === 'string' ? null : head.exif.cameraTime;
    return { exhibit, submissionId, recordedAt, arrived: bytes !== null, cameraTime };
  };
  return inTurns(declaredPhotos(facts), look, PHOTOS_AT_ONCE);
}

type Others = Pick<AuditCase, 'elsewhere' | 'pastRepairs'>;

/** What the utility's other strikes say: the same people at the same time, and how long such a repair usually takes. */
async function otherJobs(
  { ledger, projections }: PacketsDeps,
  strike: StrikeState,
  ownDamage: ReadonlySet<string>,
): Promise<Others> {
  const since = Date.parse(strike.since);
  const others = (await projections.list<StrikeState>(partitions.strike))
    .map(({ value }) => value)
    .filter(({ strikeId }) => strikeId !== strike.strikeId);
  const near = others.filter((other) => Math.abs(Date.parse(other.since) - since) <= NEAR_DAYS * DAY_MS);
  const past = others
    .filter((other) => other.returnedAt !== null && Date.parse(other.since) < since)
    .sort((a, b) => Date.parse(b.since) - Date.parse(a.since))
    .slice(0, PAST_READ);
  const wanted = new Map([...near, ...past].map((other) => [other.strikeId, other]));
  const repairs = new Map<string, readonly BodyOf<'repair'>[]>();
  await inTurns([...wanted.values()], async ({ strikeId, memberIds }) => {
    const recorded = await Promise.all(
      memberIds.map((id) =>
        ledger.readStream(streamOf({ type: 'strike', strikeId: id }), { personal: false }),
      ),
    );
    const { facts } = effectiveFacts(recorded.flat().filter(({ submission }) => submission.test !== true));
    repairs.set(
      strikeId,
      ofKind(facts, 'repair').map(({ fact }) => fact.body),
    );
    return [];
  });
  const hours = (bodies: readonly BodyOf<'repair'>[]): number =>
    bodies
      .flatMap(({ crew }) => crew.flatMap(({ work }) => work))
      .reduce((sum, { from, to }) => sum + (Date.parse(to) - Date.parse(from)) / 3_600_000, 0);
  return {
    elsewhere: near.flatMap(({ strikeId }) =>
      (repairs.get(strikeId) ?? []).flatMap(({ crew }) =>
        crew.flatMap(({ workerId, work }) => work.map(({ from, to }) => ({ strikeId, workerId, from, to }))),
      ),
    ),
    pastRepairs: past.flatMap(({ strikeId }) => {
      const bodies = repairs.get(strikeId) ?? [];
      const alike = bodies.some(({ damage }) => damage !== null && ownDamage.has(damage));
      const people = new Set(bodies.flatMap(({ crew }) => crew.map(({ workerId }) => workerId))).size;
      return alike && people > 0 ? [{ people, laborHours: hours(bodies) }] : [];
    }),
  };
}
