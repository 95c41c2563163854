import { createHash } from 'node:crypto';
import * as z from 'zod';
import { foldClaim, type ClaimState } from '../../shared/claims/state.ts';
import { todayIn } from '../../shared/clocks/clocks.ts';
import type { LaterDraft } from '../../shared/letters/later/answer.ts';
import { laterDocument } from '../../shared/letters/later/document.ts';
import {
  addressee,
  isToPayer,
  laterTemplate,
  sendingProblems,
  sumAsked,
  type LaterLetterKind,
} from '../../shared/letters/later/letter.ts';
import { contraryTo, pointsOf } from '../../shared/letters/later/reply.ts';
import { laterValues } from '../../shared/letters/later/values.ts';
import type { LaterValues } from '../../shared/letters/later/fields.ts';
import { mergeLetter } from '../../shared/letters/merge.ts';
import type { LetterFacts } from '../../shared/letters/values.ts';
import { packetLetterOf, packetLetterFacts } from '../../shared/packet/content.ts';
import { readerOf } from '../../shared/packet/reader.ts';
import { asOfRecords } from '../../shared/packet/ready.ts';
import { problem, type Problem } from '../../shared/problems/problem.ts';
import type { Member } from '../../shared/roles.ts';
import { effectiveFacts, type Effective } from '../../shared/submissions/effective.ts';
import { currentSchemaVersion, streamOf } from '../../shared/submissions/envelope.ts';
import { submissionId } from '../../shared/submissions/fields.ts';
import { channel } from '../../shared/submissions/forms/claimLife/common.ts';
import { laterLetterKinds } from '../../shared/submissions/forms/claimLife/letterSent.ts';
import { parseSubmission, type BodyOf, type Fact } from '../../shared/submissions/submission.ts';
import { withoutTrials } from '../../shared/submissions/trials.ts';
import { notFound, refuse, Refused } from '../http/refused.ts';
import { append } from '../submissions/append.ts';
import type { PacketsDeps } from './deps.ts';
import { loadClaim, type LoadedClaim } from './load.ts';
import { renderPacket } from './pdf/render.ts';
import { unprintable } from './pdf/unprintable.ts';

/** A letter that a clerk sends: text as edited, with its merge fields; the server fills them in and keeps the PDF. */
export const letterRequest = z.strictObject({
  /** Made on the device, so that a letter asked for twice is one. */
  submissionId,
  letter: z.enum(laterLetterKinds),
  text: z.string().trim().min(1).max(12_000),
  to: z.string().trim().min(1).max(400),
  how: channel,
  on: z.iso.date(),
  answers: submissionId.nullable(),
});
export type LetterRequest = z.output<typeof letterRequest>;

interface Known {
  readonly loaded: LoadedClaim;
  /** The claim's own events. */
  readonly own: readonly Effective[];
  readonly state: ClaimState;
  readonly facts: LetterFacts;
  readonly values: LaterValues;
}

/** Everything that a letter of this claim may name, on a day. */
async function knownFor(
  deps: PacketsDeps,
  member: Member,
  claimId: string,
  of: { readonly letter: LaterLetterKind; readonly answers: string | null; readonly on: string },
): Promise<Known> {
  const { settings } = deps;
  const loaded = await loadClaim(deps, claimId);
  const recorded = await deps.ledger.readStream(streamOf({ type: 'claim', claimId }));
  const own = effectiveFacts(withoutTrials(recorded)).facts;
  const state = foldClaim(claimId, own);
  if (!state) return notFound('no-such-claim');
  const question = {
    ...loaded,
    issue: { state: 'preview' as const, asOf: asOfRecords(loaded.recorded) },
    preparedBy: member.personId,
    demandCents: state.money.askedCents,
    otherDemandsCents: 0,
    locale: settings.locale,
    settings,
    photos: new Map(),
  };
  const facts = packetLetterFacts(question);
  const reader = readerOf(facts);
  return {
    loaded,
    own,
    state,
    facts,
    values: laterValues({
      base: packetLetterOf(question).values,
      claim: state,
      events: own,
      statement: loaded.statement,
      answers: of.answers,
      on: of.on,
      locale: settings.locale,
      toPayer: isToPayer(of.letter, state.payerKind),
      rules: settings.claimRules,
      day: (date) => reader.date(`${date}T12:00:00Z`),
    }),
  };
}

/** A letter as it starts: its template, what its fields say, and what a clerk should know before it goes out. */
export async function draftLetter(
  deps: PacketsDeps,
  member: Member,
  claimId: string,
  { letter, answers }: { readonly letter: string; readonly answers: string | null },
): Promise<LaterDraft> {
  const kind = (laterLetterKinds as readonly string[]).includes(letter) ? (letter as LaterLetterKind) : null;
  if (kind === null) return notFound('no-such-letter');
  const { locale, timeZone } = deps.settings;
  const on = todayIn(deps.now(), timeZone);
  const { loaded, own, values } = await knownFor(deps, member, claimId, { letter: kind, answers, on });
  const opened = loaded.claim.fact.body;
  return {
    letter: kind,
    locale,
    on,
    to: isToPayer(kind, opened.payerKind)
      ? addressee(opened.payer.name, values.adjuster, opened.payer.address)
      : '',
    template: laterTemplate(locale, kind),
    values,
    contrary: contraryTo(pointsOf(own, answers)),
    depreciationHere: deps.settings.claimRules?.depreciation ?? null,
  };
}

export interface SentLetter {
  readonly submissionId: string;
  readonly pdfSha256: string;
  readonly fileName: string;
}

/**
 * Makes the letter's PDF, keeps it, and records the letter as sent. Refuses a text that names what is not there, and a
 * day that has not come. The same request again gives the same letter; other words under its id are refused.
 */
export async function sendLetter(
  deps: PacketsDeps,
  member: Member,
  claimId: string,
  { submissionId: id, letter, text, to, how, on, answers }: LetterRequest,
): Promise<SentLetter> {
  const { settings } = deps;
  const now = deps.now().toISOString();
  const { state, facts, values, own } = await knownFor(deps, member, claimId, { letter, answers, on });
  const fileName = `letter-${state.claimNumber}-${letter}-${on}.pdf`;
  const before = own.find(({ fact }) => fact.submissionId === id)?.fact;
  const merged = mergeLetter(text, values);
  const asked = { letter, to, how, sentOn: on, answers, text: merged.paragraphs.join('\n\n') };
  // Asked again: what was sent is what was sent.
  if (before?.kind === 'letter-sent')
    return { submissionId: id, pdfSha256: sentBefore(before, asked).pdfSha256, fileName };
  const inTheWay = [
    ...sendingProblems(merged, on, todayIn(deps.now(), settings.timeZone)),
    ...unprintableProblems({ text: asked.text, to }),
  ];
  if (inTheWay.length > 0) return refuse('invalid', inTheWay);
  const pdf = await renderPacket(
    laterDocument(facts, {
      letter,
      on,
      to,
      payerReference: values.payerReference,
      paragraphs: merged.paragraphs,
    }),
    () => {
      throw new Error('a letter shows no photo');
    },
  );
  const pdfSha256 = createHash('sha256').update(pdf).digest('hex');
  await deps.evidence.put(pdf, 'application/pdf');
  const parsed = parseSubmission({
    schemaVersion: currentSchemaVersion,
    submissionId: id,
    kind: 'letter-sent',
    subject: { type: 'claim', claimId },
    occurredAt: now,
    sentAt: now,
    person: { personId: member.personId },
    device: { deviceId: 'server' },
    enteredUnits: settings.units,
    body: {
      letter,
      sentOn: on,
      how,
      to,
      answers,
      amountCents: sumAsked(letter, state.money),
      text: asked.text,
      pdfSha256,
      pdfBytes: pdf.byteLength,
      note: null,
      exhibits: [],
    },
  });
  // What a clerk can put right is a field of the request, under the name that it has there.
  if (!parsed.ok)
    return refuse(
      'invalid',
      parsed.problems.map((found) => ({ ...found, path: found.path.replace(/^body\./, '') })),
    );
  try {
    await append(deps, parsed.value, member);
  } catch (error) {
    // The same letter was asked for at the same moment, and the other request was quicker.
    const quicker =
      error instanceof Refused && error.reason === 'clash'
        ? await recordedUnder(deps, claimId, id)
        : undefined;
    if (quicker?.kind !== 'letter-sent') throw error;
    return { submissionId: id, pdfSha256: sentBefore(quicker, asked).pdfSha256, fileName };
  }
  return { submissionId: id, pdfSha256, fileName };
}

/** Signs that would be question marks in the letter; a few of them are enough to find the place. */
const MOST_SIGNS = 20;
const unprintableProblems = (fields: Readonly<Record<'text' | 'to', string>>): Problem[] =>
  (['text', 'to'] as const).flatMap((name) => {
    const signs = unprintable(fields[name]);
    return signs.length === 0
      ? []
      : [problem('letter-unprintable', name, { signs: signs.slice(0, MOST_SIGNS).join(' ') })];
  });

async function recordedUnder(deps: PacketsDeps, claimId: string, id: string): Promise<Fact | undefined> {
  const recorded = await deps.ledger.readStream(streamOf({ type: 'claim', claimId }));
  return effectiveFacts(recorded).facts.find(({ fact }) => fact.submissionId === id)?.fact;
}

/**
 * The letter that went out under an id. One that was edited since, because the first answer was lost, must not be taken for
 * it: whoever sends it would believe that its words had left the house.
 */
function sentBefore(
  { body }: Fact<'letter-sent'>,
  asked: Pick<BodyOf<'letter-sent'>, 'letter' | 'to' | 'how' | 'sentOn' | 'answers' | 'text'>,
): BodyOf<'letter-sent'> {
  // Erased words and names are not there to be compared.
  const other = (['letter', 'how', 'sentOn', 'answers', 'to', 'text'] as const).find(
    (name) => body[name] !== asked[name] && (body[name] !== null || name === 'answers'),
  );
  if (other === undefined) return body;
  return refuse('clash', problem('letter-recorded-otherwise', other, { on: body.sentOn }), {
    extra: { field: other },
  });
}
