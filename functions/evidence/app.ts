import * as z from 'zod';
import { dayAt } from '../../shared/costs/days.ts';
import { watchedEvents } from '../../shared/deployment/watchedEvents.ts';
import type { EvidenceAddress } from '../../shared/evidence/address.ts';
import { declaredExhibits, fileEndings, type NamedDocument } from '../../shared/evidence/declared.ts';
import { spend, usualUploadBudget } from '../../shared/evidence/uploadBudget.ts';
import { problem } from '../../shared/problems/problem.ts';
import { problemsFromZod } from '../../shared/problems/fromZod.ts';
import { mayDo } from '../../shared/roles.ts';
import { streamOf, subject } from '../../shared/submissions/envelope.ts';
import { exhibit, submissionId } from '../../shared/submissions/fields.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import { formOf } from '../../shared/submissions/submission.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { createFamilyApp, memberOf, type App, type HttpDeps } from '../http/app.ts';
import { readJson } from '../http/json.ts';
import { notFound, refuse } from '../http/refused.ts';
import type { DeclaredBytes, EvidenceStore } from '../stores/evidence/evidence.ts';
import type { ExhibitIndex } from '../stores/evidence/exhibitIndex.ts';
import type { Ledger } from '../stores/ledger/ledger.ts';
import type { Uploads } from '../stores/uploads/uploads.ts';

export interface EvidenceDeps extends HttpDeps {
  readonly ledger: Ledger;
  readonly evidence: EvidenceStore;
  readonly exhibits: ExhibitIndex;
  readonly uploads: Uploads;
  readonly settings: Pick<UtilitySettings, 'timeZone' | 'uploadsPerPersonDay'>;
}

const uploadRequest = z.strictObject({ subject, submissionId, sha256: exhibit.shape.sha256 });

/**
 * In an answer and not by a redirect: a browser that keeps the `Authorization` header across origins, as those of before
 * 2023 may (Fetch standard, "HTTP-redirect fetch"), would hand the sign-in's token to the store.
 */
async function addressOf(
  evidence: EvidenceStore,
  sha256: string,
  mediaType: NamedDocument['mediaType'],
  toShow: boolean,
): Promise<EvidenceAddress> {
  const name = sha256.slice(0, 12);
  // What a browser can draw: the display copy where there is one, and else the original.
  const record = toShow ? await evidence.copies.readRecord(sha256) : null;
  const picture = record?.picture ?? null;
  const said = record?.said ?? null;
  if (picture?.code === 'made')
    return {
      url: await evidence.copyUrl(sha256, `${name}-display.jpg`),
      shows: 'display-copy',
      undisplayable: null,
      said,
    };
  return {
    url: await evidence.downloadUrl(sha256, `${name}.${fileEndings[mediaType]}`),
    shows: 'original',
    undisplayable: picture?.reason ?? null,
    said,
  };
}

/** Counts what is about to be sent against the person's day, or refuses until the next. */
async function countUpload(deps: EvidenceDeps, personId: string, declared: DeclaredBytes): Promise<void> {
  const { uploads, settings, now, log } = deps;
  const nowMs = now().getTime();
  const { date: day, toMs } = dayAt(nowMs, settings.timeZone);
  const budget = settings.uploadsPerPersonDay ?? usualUploadBudget;
  const spent = await uploads.count(personId, (before) => spend(before, declared, { day, budget }));
  if (spent.outcome === 'counted')
    log({ level: 'info', event: watchedEvents.uploadAllowed.event, bytes: declared.bytes });
  if (spent.outcome !== 'over') return;
  log({ level: 'warn', event: watchedEvents.uploadHeldBack.event });
  refuse('too-many', spent.problem, { retryAfterS: Math.ceil((toMs - nowMs) / 1000) });
}

const concerns = (personId: string, { submission, deliveredBy }: Recorded): boolean =>
  submission.person.personId === personId || deliveredBy === personId;

/** Bytes of photos and documents: where to send those that a stored submission declares, and where to read them. */
export function createEvidenceApp(deps: EvidenceDeps): App {
  return createFamilyApp('evidence', deps, {
    'POST /api/evidence/uploads': async (call) => {
      const parsed = uploadRequest.safeParse(await readJson(call), { reportInput: true });
      if (!parsed.success) return refuse('invalid', problemsFromZod(parsed.error.issues));
      const asked = parsed.data;

      const recorded = await deps.ledger.readStream(streamOf(asked.subject), { personal: false });
      const found = recorded.find(({ submission }) => submission.submissionId === asked.submissionId);
      const member = memberOf(call);
      // The same answer for one that this person neither wrote, delivered nor may read: an id must not be a way to ask.
      if (!found || !(concerns(member.personId, found) || mayDo(member, formOf(found.submission).readers)))
        return notFound('no-such-submission', { submissionId: asked.submissionId });
      const declared = declaredExhibits(found.submission).find(({ sha256 }) => sha256 === asked.sha256);
      if (!declared)
        return refuse(
          'invalid',
          problem('exhibit-not-declared', 'sha256', { submissionId: asked.submissionId }),
        );

      // Bytes that are another's to see are answered like bytes that nobody has: who has them may send them again.
      const known = await deps.exhibits.find(declared.sha256);
      const own = !known || mayDo(member, known.readers);
      if (own && (await deps.evidence.has(declared.sha256))) return call.json({ state: 'arrived' });
      await countUpload(deps, member.personId, declared);
      return call.json({ state: 'awaited', upload: await deps.evidence.uploadTarget(declared) });
    },

    'GET /api/evidence/{sha256}': async (call) => {
      const sha256 = exhibit.shape.sha256.safeParse(call.req.param('sha256'));
      if (!sha256.success) return notFound('no-such-exhibit');
      const known = await deps.exhibits.find(sha256.data);
      // The same answer whether it does not exist or is not this person's to see: a hash must not be a way to ask.
      if (!known || !mayDo(memberOf(call), known.readers)) return notFound('no-such-exhibit');
      if (!(await deps.evidence.has(sha256.data))) return notFound('exhibit-awaited');
      const toShow = call.req.query('as') === 'display' && known.mediaType.startsWith('image/');
      return call.json(await addressOf(deps.evidence, sha256.data, known.mediaType, toShow));
    },
  });
}
