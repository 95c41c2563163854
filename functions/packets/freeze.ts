import { demandFor, type Demand } from '../../shared/costs/demand.ts';
import { asOfRecords, freezeProblems } from '../../shared/packet/ready.ts';
import { problem } from '../../shared/problems/problem.ts';
import type { Member } from '../../shared/roles.ts';
import { currentSchemaVersion } from '../../shared/submissions/envelope.ts';
import { parseSubmission, type BodyOf } from '../../shared/submissions/submission.ts';
import { refuse, Refused } from '../http/refused.ts';
import { append } from '../submissions/append.ts';
import { buildPacket } from './build.ts';
import { intend, otherDemands, type OtherDemand } from './demands.ts';
import type { PacketsDeps } from './deps.ts';
import { keepIssued, putBack, type KeptFiles } from './issued.ts';
import { letterProblems } from './letter.ts';
import { loadClaim, type LoadedClaim } from './load.ts';

export interface Packet {
  readonly revision: number | null;
  readonly pdfSha256: string;
  /** The companion archive and the PDF's signature; null for a preview, which has neither. */
  readonly archiveSha256: string | null;
  readonly signature: string | null;
  readonly demandCents: number;
  readonly claimNumber: string;
}

/** A freeze that loses to another starts over; each loss means that a revision was made. */
const MOST_TRIES = 5;

/**
 * Issues a claim's packet as its next revision, or answers the last one again when nothing has changed since.
 *
 * It may stop anywhere and be asked again (docs/decisions/0052). A revision's number and the id of the fact that will
 * issue it are taken together and first, so whoever asks again, or at the same time, goes on with the same number; the
 * file is kept before the fact that names it; and the ledger takes only one fact of that id. So revisions have no
 * holes, no revision has two contents, and no fact names a file that is not there.
 */
export async function freezePacket(
  deps: PacketsDeps,
  member: Member,
  claimId: string,
  askedCents: number | null,
  changes: string | null,
): Promise<Packet> {
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const claim = await loadClaim(deps, claimId);
    const again = await sameAsLast(deps, claimId, claim, askedCents);
    if (again) return again;
    const made = await nextRevision(deps, member, claimId, claim, askedCents, changes);
    if (made) return made;
  }
  return refuse('unavailable', problem('try-again'));
}

const totalOf = (others: readonly OtherDemand[]): number =>
  others.reduce((sum, { demandCents }) => sum + demandCents, 0);
const sameIds = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && [...a].sort().join() === [...b].sort().join();
const idsOf = ({ recorded }: LoadedClaim): string[] =>
  recorded.map(({ submission }) => submission.submissionId).sort();

/**
 * The last revision, if building it again gives the very bytes that were issued. A retry after a lost answer ends
 * here. Were the file missing from the store it is put back.
 */
async function sameAsLast(
  deps: PacketsDeps,
  claimId: string,
  claim: LoadedClaim,
  askedCents: number | null,
): Promise<Packet | null> {
  const last = claim.packets.at(-1)?.fact;
  if (!last) return null;
  const { revision, frozenAt, demandCents, pdfSha256, builtFrom } = last.body;
  if (!sameIds(builtFrom, idsOf(claim)) || (askedCents ?? demandCents) !== demandCents) return null;
  const others = await otherDemands(deps, claimId, claim);
  const built = await buildPacket(deps, claim, {
    issue: {
      state: 'frozen',
      revision,
      asOf: frozenAt,
      changes: last.body.changes ?? null,
      added: addedSince(claim.packets.at(-2), builtFrom),
    },
    preparedBy: last.person.personId,
    demandCents,
    otherDemandsCents: totalOf(others),
  });
  if (built.sha256 !== pdfSha256) return null;
  await putBack(deps, built, last.body);
  const { claimNumber } = claim.claim.fact.body;
  return { revision, demandCents, claimNumber, ...named(last.body) };
}

const named = ({
  pdfSha256,
  archiveSha256,
  signature,
}: Pick<KeptFiles, 'pdfSha256' | 'archiveSha256' | 'signature'>): Pick<
  Packet,
  'pdfSha256' | 'archiveSha256' | 'signature'
> => ({ pdfSha256, archiveSha256: archiveSha256 ?? null, signature: signature ?? null });

/** Records that were not behind the revision before; none for the first, of which everything is new. */
function addedSince(before: LoadedClaim['packets'][number] | undefined, ids: readonly string[]): string[] {
  if (!before) return [];
  const known = new Set(before.fact.body.builtFrom);
  return ids.filter((id) => !known.has(id));
}

/** Null when somebody else issued that revision first, with other contents. */
async function nextRevision(
  deps: PacketsDeps,
  member: Member,
  claimId: string,
  claim: LoadedClaim,
  askedCents: number | null,
  changes: string | null,
): Promise<Packet | null> {
  const revision = (claim.packets.at(-1)?.fact.body.revision ?? 0) + 1;
  const told = revision > 1 ? changes : null;
  const added = addedSince(claim.packets.at(-1), idsOf(claim));
  const before = await otherDemands(deps, claimId, claim);
  const demand = demandFor({ statement: claim.statement, others: before, askedCents });
  const inTheWay = [
    ...(revision > 1 && changes === null
      ? [problem('changes-needed', 'changes', { revision: revision - 1 })]
      : []),
    ...freezeProblems(claim),
    ...letterProblems(deps, claim, {
      issue: { state: 'frozen', revision, asOf: deps.now().toISOString(), changes: told, added },
      preparedBy: member.personId,
      demandCents: demand.ok ? demand.demandCents : claim.statement.totalCents,
      otherDemandsCents: totalOf(before),
    }),
  ];
  if (inTheWay.length > 0 || !demand.ok)
    return refuse('invalid', [...inTheWay, ...(demand.ok ? [] : demand.problems)]);
  const { demandCents } = demand;

  const { owner: submissionId } = await deps.unique.take(
    `packet-revision:${claimId}`,
    String(revision),
    deps.newId(),
  );
  const now = deps.now();
  await intend(deps, claim, { claimId, revision, atMs: now.getTime(), demandCents });
  const others = await otherDemands(deps, claimId, claim);
  const still: Demand = demandFor({ statement: claim.statement, others, askedCents: demandCents });
  if (!still.ok) {
    // Another claim of the strike spoke at the same moment: neither may have both.
    await intend(deps, claim, { claimId, revision, atMs: now.getTime() + 1, demandCents: 0 });
    return refuse('invalid', still.problems);
  }

  const frozenAt = asOfRecords(claim.recorded, now.toISOString());
  const built = await buildPacket(deps, claim, {
    issue: { state: 'frozen', revision, asOf: frozenAt, changes: told, added },
    preparedBy: member.personId,
    demandCents,
    otherDemandsCents: totalOf(others),
  });
  const { claimNumber } = claim.claim.fact.body;
  const files = await keepIssued(deps, built, { claimNumber, revision });
  const issued = await issue(deps, member, claimId, submissionId, {
    revision,
    frozenAt,
    builtFrom: idsOf(claim),
    demandCents,
    ...files,
    ...(told === null ? {} : { changes: told }),
  });
  if (!issued) return null;
  return { revision, demandCents, claimNumber, ...named(files) };
}

/** Appends the fact by the same way in as everyone's. False when the id already issued other contents. */
async function issue(
  deps: PacketsDeps,
  member: Member,
  claimId: string,
  submissionId: string,
  body: BodyOf<'packet-frozen'>,
): Promise<boolean> {
  const parsed = parseSubmission({
    schemaVersion: currentSchemaVersion,
    submissionId,
    kind: 'packet-frozen',
    subject: { type: 'claim', claimId },
    occurredAt: body.frozenAt,
    sentAt: body.frozenAt,
    person: { personId: member.personId },
    device: { deviceId: 'server' },
    enteredUnits: deps.settings.units,
    body,
  });
  if (!parsed.ok) throw new Error(`a packet's own fact is refused: ${JSON.stringify(parsed.problems)}`);
  try {
    await append(deps, parsed.value, member);
    return true;
  } catch (error) {
    if (error instanceof Refused && error.reason === 'clash') return false;
    throw error;
  }
}
