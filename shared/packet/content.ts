import type { PayerKind } from '../submissions/forms/claimOpened.ts';
import type { RateBookEdition } from '../costs/rateBook.ts';
import type { Statement } from '../costs/statement.ts';
import type { Work } from '../costs/work.ts';
import { evaluateRecorded } from '../hydraulics/evaluateRecorded.ts';
import { flowTestSettingsFrom } from '../hydraulics/flowTestSettings.ts';
import type { Hydrant } from '../inventory/hydrant.ts';
import { letterOf, packetLetter, type Letter } from '../letters/letter.ts';
import type { LetterFacts } from '../letters/values.ts';
import type { StrikeState } from '../strikes/state.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import { history } from '../submissions/history.ts';
import type { Recorded } from '../submissions/recorded.ts';
import type { BodyOf } from '../submissions/submission.ts';
import type { UtilitySettings } from '../utility/settings.ts';
import type { Locale } from '../words/index.ts';
import { packetBasis } from './basis.ts';
import { namesAsIds } from './namesAsIds.ts';
import { packetPapers, type PaperFound } from './papers.ts';
import { packetPhotos, type PhotoFound } from './photos.ts';
import { tighteningOf, waterOf } from './repairFacts.ts';
import { packetContentSchema, type PacketContent } from './schema.ts';
import { packetTestOf } from './testOf.ts';
import { timelineOf } from './timeline.ts';

export interface PacketQuestion {
  readonly locale: Locale;
  readonly settings: UtilitySettings;
  readonly issue: PacketContent['issue'];
  /** Who freezes, by id: the letter bears the name that the utility's roll has for them. */
  readonly preparedBy: string;
  readonly claim: Effective<'claim-opened'>;
  readonly demandCents: number;
  readonly otherDemandsCents: number;
  readonly strike: StrikeState;
  /** The facts that the packet tells of (`usedFacts`), and everything recorded behind them (`usedRecords`). */
  readonly facts: readonly Effective[];
  readonly recorded: readonly Recorded[];
  readonly hydrant: Hydrant | null;
  /** Its neighbours in the inventory; left out: none are shown. */
  readonly near?: PacketContent['hydrant']['near'] | undefined;
  readonly statement: Statement;
  readonly work: Work;
  readonly editions: readonly RateBookEdition[];
  readonly photos: ReadonlyMap<string, PhotoFound>;
  /** Left out: none was looked for, and all are awaited. */
  readonly papers?: ReadonlyMap<string, PaperFound>;
  /** When the bytes of exhibits came, by hash; left out: nobody tells. */
  readonly arrived?: ReadonlyMap<string, string>;
}

const orNull = (value: string | null | undefined): string | null =>
  value === undefined || value === null || value.trim() === '' ? null : value;

/**
 * What a packet says, as data. Pure: dates and ids come from the facts and from `issue`, so the same question gives
 * the same packet. The result has passed the allow-list; a field that is not on it is a fault of ours and throws.
 */
export function packetContent(question: PacketQuestion): PacketContent {
  const said = saidBut(question);
  return packetContentSchema.parse({ ...said, letter: packetLetter(letterIn(question, said)) });
}

/** The letter of such a packet, with what stands in the way of sending it. */
export const packetLetterOf = (question: PacketQuestion): Letter => letterIn(question, saidBut(question));

/** What a letter of the claim may name, when it goes without its packet. */
export const packetLetterFacts = (question: PacketQuestion): LetterFacts => saidBut(question);

const letterIn = ({ facts }: PacketQuestion, said: LetterFacts): Letter =>
  letterOf(said, ofKind(facts, 'letter-text').at(-1) ?? null);

/** All of it but the letter, which is worded from the rest. */
function saidBut(question: PacketQuestion): LetterFacts {
  const { settings, claim, strike, facts } = question;
  const party = ofKind(facts, 'party').find(({ fact }) => fact.submissionId === claim.fact.body.partyId);
  const byId = (workerId: string): ReturnType<typeof workerOf> => workerOf(settings, workerId);
  return {
    schemaVersion: 1,
    locale: question.locale,
    units: settings.units,
    timeZone: settings.timeZone,
    issue: question.issue,
    utility: utilityOf(question),
    claim: {
      claimNumber: claim.fact.body.claimNumber,
      payerKind: claim.fact.body.payerKind,
      payer: {
        name: orNull(claim.fact.body.payer.name),
        address: orNull(claim.fact.body.payer.address),
        attention: orNull(claim.fact.body.payer.attention),
        reference: orNull(
          claim.fact.body.payer.reference ??
            (needsPolicy(claim.fact.body.payerKind) ? party?.fact.body.insurer?.claimNumber : null),
        ),
      },
      demandCents: question.demandCents,
      otherDemandsCents: question.otherDemandsCents,
      // What a driver or another insurer is asked for does not hang on the utility's own policy.
      deductibleCents:
        claim.fact.body.payerKind === 'own-policy' ? (claim.fact.body.deductibleCents ?? null) : null,
    },
    party: party ? partyOf(party.fact.body, needsPolicy(claim.fact.body.payerKind)) : null,
    hydrant: hydrantOf(question),
    strike: strikeOf(question),
    statement: structuredClone(question.statement) as PacketContent['statement'],
    timeline: timelineOf(facts, strike, byId),
    tightening: tighteningOf(facts, orNull(question.hydrant?.modelId), byId),
    waterLost: waterOf(facts, byId, (workerId) => nameOf(settings, workerId)),
    flowTestRules: settings.flowTest ?? {},
    ...testsOf(question),
    photos: packetPhotos(facts, question.photos, question.arrived),
    papers: packetPapers(facts, question.papers ?? new Map(), question.arrived),
    basis: packetBasis(question.work, question.editions, question.statement),
    manifest: {
      submissions: history(question.recorded).map(({ recorded: { submission, recordedAt }, standing }) => ({
        submissionId: submission.submissionId,
        kind: submission.kind,
        schemaVersion: submission.schemaVersion,
        occurredAt: submission.occurredAt,
        recordedAt,
        standing,
      })),
    },
  };
}

function workerOf({ people }: UtilitySettings, workerId: string): { workerId: string; trade: string | null } {
  return { workerId, trade: orNull(people.find(({ personId }) => personId === workerId)?.trade) };
}

const nameOf = ({ people }: UtilitySettings, workerId: string): string | null =>
  people.find(({ personId }) => personId === workerId)?.name ?? null;

function utilityOf(question: PacketQuestion): PacketContent['utility'] {
  const { settings, preparedBy } = question;
  const { name, letterhead, people } = settings;
  const signer = people.find(({ personId }) => personId === preparedBy);
  return {
    name,
    // The name stands above the address in its own size; many letterheads repeat it as their first line.
    addressLines: letterhead.addressLines.filter((line) => line !== name),
    phone: letterhead.phone,
    email: orNull(letterhead.email),
    remitTo: letterhead.remitTo,
    taxFormReference: orNull(letterhead.taxFormReference),
    checkUrl:
      settings.publicUrl === null
        ? null
        : new URL(question.locale === 'es' ? '/verify/es/' : '/verify/', settings.publicUrl).href,
    signedBy: signer ? { name: signer.name, trade: orNull(signer.trade) } : null,
  };
}

/** The driver's policy and its insurer's number go to that insurer and to the driver; nobody else has need of them. */
const needsPolicy = (payerKind: PayerKind): boolean =>
  payerKind === 'drivers-insurer' || payerKind === 'driver';

function partyOf(
  { hitAndRun, vehicles, insurer, police, crashReport }: BodyOf<'party'>,
  withPolicy: boolean,
): PacketContent['party'] {
  return {
    hitAndRun,
    policyNumber: withPolicy ? orNull(insurer?.policyNumber) : null,
    vehicles: vehicles.map(({ kind, plate, plateRegion, description }) => ({
      kind,
      plate: orNull(plate),
      plateRegion: orNull(plateRegion),
      description: orNull(description),
    })),
    police: { agency: orNull(police?.agency), reportNumber: orNull(police?.reportNumber) },
    crashReport: {
      codeSystem: orNull(crashReport?.codeSystem),
      code: orNull(crashReport?.code),
      text: orNull(crashReport?.text),
    },
  };
}

/** Its flow tests: those of this strike, and the latest of before it with nothing said of who made them. */
function testsOf({
  facts,
  settings,
  strike,
}: PacketQuestion): Pick<PacketContent, 'flowTests' | 'earlierTests'> {
  const tests = ofKind(facts, 'flow-test')
    .map(({ fact }) => fact)
    .sort((a, b) => Date.parse(a.body.testedAt) - Date.parse(b.body.testedAt));
  const isBefore = ({ body }: (typeof tests)[number]): boolean =>
    Date.parse(body.testedAt) < Date.parse(strike.since);
  const { timeZone } = settings;
  return {
    flowTests: tests
      .filter((test) => !isBefore(test))
      .map(({ submissionId, body }) =>
        packetTestOf(
          submissionId,
          body,
          timeZone,
          body.testedByWorkerIds.map((id) => workerOf(settings, id)),
        ),
      ),
    earlierTests: tests
      .filter(isBefore)
      .map(({ submissionId, body }) => packetTestOf(submissionId, body, timeZone, [])),
  };
}

function hydrantOf({ strike, hydrant, near, facts, settings }: PacketQuestion): PacketContent['hydrant'] {
  const onHydrant = facts.filter(({ fact }) => fact.subject.type === 'hydrant');
  const inspection = ofKind(onHydrant, 'inspection').at(-1)?.fact;
  const test = ofKind(facts, 'flow-test')
    .map(({ fact }) => fact)
    .filter(({ body }) => Date.parse(body.testedAt) < Date.parse(strike.since))
    .sort((a, b) => Date.parse(a.body.testedAt) - Date.parse(b.body.testedAt))
    .at(-1);
  return {
    hydrantId: strike.hydrantId,
    place: orNull(hydrant?.place) ?? orNull(strike.placeDescription),
    position: hydrant
      ? { latitudeDeg: hydrant.latitudeDeg, longitudeDeg: hydrant.longitudeDeg }
      : strike.position,
    near: (near ?? []).map(({ hydrantId, latitudeDeg, longitudeDeg, distanceFt }) => ({
      hydrantId,
      latitudeDeg,
      longitudeDeg,
      distanceFt,
    })),
    type: hydrant?.type ?? 'unknown',
    modelId: orNull(hydrant?.modelId),
    installedOn: hydrant?.installedOn ?? null,
    lastInspection: inspection
      ? {
          inspectedAt: inspection.body.inspectedAt,
          result: inspection.body.result,
          submissionId: inspection.submissionId,
        }
      : null,
    lastFlowTest: test
      ? {
          testedAt: test.body.testedAt,
          hydrantClass:
            evaluateRecorded(test.body, flowTestSettingsFrom(settings.flowTest))?.hydrantClass ?? null,
          submissionId: test.submissionId,
        }
      : null,
  };
}

/** What two records say alike stands once. */
const once = <T>(items: readonly T[]): T[] => [
  ...new Map(items.map((item) => [JSON.stringify(item), item])).values(),
];

function strikeOf({ strike, facts, settings }: PacketQuestion): PacketContent['strike'] {
  const repairs = ofKind(facts, 'repair').map(({ fact }) => fact.body);
  return {
    struckAt: strike.struckAt,
    since: strike.since,
    repairedAt: strike.repairedAt,
    returnedAt: strike.returnedAt,
    found: ofKind(facts, 'strike').flatMap(({ fact }) => (fact.body.found ? [fact.body.found] : [])),
    damage: [...new Set(repairs.flatMap(({ damage }) => (damage === null ? [] : [damage])))],
    steps: once(
      repairs
        .flatMap(({ steps }) => steps)
        .sort((a, b) => Date.parse(a.doneAt) - Date.parse(b.doneAt))
        .map(({ step, doneAt, byWorkerId }) => ({ step, doneAt, by: workerOf(settings, byWorkerId) })),
    ),
    breaches: once(
      strike.breaches.map(({ code, at, byWorkerId, missing, corrected }) => ({
        code,
        at,
        by: workerOf(settings, byWorkerId),
        missing: [...missing],
        ...(corrected && {
          corrected: {
            submissionId: corrected.submissionId,
            at: corrected.at,
            by: workerOf(settings, corrected.byPersonId),
            withdrawn: corrected.withdrawn,
            reason: namesAsIds(corrected.reason, settings.people),
          },
        }),
      })),
    ),
    deferred: strike.deferred.map(({ proof, reason, byWorkerId }) => ({
      proof,
      reason,
      by: { ...workerOf(settings, byWorkerId), name: nameOf(settings, byWorkerId) },
    })),
  };
}
