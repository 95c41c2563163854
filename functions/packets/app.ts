import { sayLeftOut } from '../../shared/packet/leftOut.ts';
import { problemsFromZod } from '../../shared/problems/fromZod.ts';
import { say, sayProblem } from '../../shared/words/index.ts';
import { createFamilyApp, memberOf, type App, type Call } from '../http/app.ts';
import { readJson } from '../http/json.ts';
import { notFound, refuse } from '../http/refused.ts';
import type { PacketsDeps } from './deps.ts';
import { loadClaim } from './load.ts';
import { draftLetter, letterRequest, sendLetter } from './laterLetters.ts';
import { claimLetter } from './letter.ts';
import { claimObjections } from './objections.ts';
import { makePacket, queueJob, readJob, type AskedPacket } from './jobs.ts';
import { packetRequest, type PacketOrder } from './order.ts';
import { strikeWork } from './work.ts';

/** A claim's statement of costs, and its packet as a PDF. */
export function createPacketsApp(deps: PacketsDeps): App {
  const claimIdOf = (call: Call): string => call.req.param('claimId') ?? '';
  return createFamilyApp('packets', deps, {
    'GET /api/strikes/{strikeId}/work': async (call) =>
      call.json({ work: await strikeWork(deps, call.req.param('strikeId') ?? '') }),

    'GET /api/claims/{claimId}/statement': async (call) =>
      call.json((await loadClaim(deps, claimIdOf(call))).statement),

    'GET /api/claims/{claimId}/objections': async (call) =>
      call.json({
        objections: (await claimObjections(deps, claimIdOf(call))).map((objection) => ({
          ...objection,
          message: say(call.var.locale, `objection.${objection.rule}`, objection.params),
          answeredBy: say(call.var.locale, `objection.${objection.rule}.answer`, objection.params),
        })),
      }),

    'GET /api/claims/{claimId}/letter': async (call) =>
      call.json(await claimLetter(deps, memberOf(call), claimIdOf(call))),

    'GET /api/claims/{claimId}/letters/{letter}': async (call) =>
      call.json(
        await draftLetter(deps, memberOf(call), claimIdOf(call), {
          letter: call.req.param('letter') ?? '',
          answers: call.req.query('answers') ?? null,
        }),
      ),

    'POST /api/claims/{claimId}/letters': async (call) => {
      const parsed = letterRequest.safeParse(await readJson(call), { reportInput: true });
      if (!parsed.success) return refuse('invalid', problemsFromZod(parsed.error.issues));
      const { personId, name, roles } = memberOf(call);
      const sent = await sendLetter(deps, { personId, name, roles }, claimIdOf(call), parsed.data);
      return call.json({ ...sent, url: await deps.evidence.downloadUrl(sent.pdfSha256, sent.fileName) }, 201);
    },

    'POST /api/claims/{claimId}/packet': async (call) => {
      const parsed = packetRequest.safeParse(await readJson(call), { reportInput: true });
      if (!parsed.success) return refuse('invalid', problemsFromZod(parsed.error.issues));
      const { background = false, ...request } = parsed.data;
      const { personId, name, roles } = memberOf(call);
      const member = { personId, name, roles };
      const claimId = claimIdOf(call);
      if (!background)
        return call.json(await answerOf(call, await makePacket(deps, member, claimId, request)));
      const order: PacketOrder = {
        jobId: deps.newId(),
        claimId,
        member: { ...member, roles: [...roles] },
        request,
      };
      await queueJob(deps, order);
      await deps.startJob(order);
      return call.json({ jobId: order.jobId }, 202);
    },

    'GET /api/claims/{claimId}/packet-jobs/{jobId}': async (call) => {
      const job = await readJob(deps, claimIdOf(call), call.req.param('jobId') ?? '');
      if (!job) return notFound('packet-job-unknown');
      const { state, what, done, total, problems, packet } = job;
      return call.json({
        state,
        what,
        done,
        total,
        words: say(call.var.locale, `packet.job.${state === 'failed' ? 'failed' : what}`),
        problems: problems.map((item) => ({ ...item, message: sayProblem(call.var.locale, item) })),
        packet: packet === null ? null : await answerOf(call, packet),
      });
    },

    'GET /api/packet-keys': async (call) => {
      call.header('cache-control', 'public, max-age=3600');
      return call.json(await deps.signer.publicKeys());
    },
  });

  /** A packet with addresses to read it at, which hold for a few minutes. */
  async function answerOf(call: Call, { problems, leftOut = [], ...packet }: AskedPacket): Promise<object> {
    const { revision, pdfSha256, archiveSha256, demandCents, claimNumber, signature } = packet;
    const name = `packet-${claimNumber}-${revision === null ? 'preview' : `r${revision}`}`;
    return {
      url: await deps.evidence.downloadUrl(pdfSha256, `${name}.pdf`),
      archiveUrl:
        archiveSha256 === null
          ? null
          : await deps.evidence.downloadUrl(archiveSha256, `${name}-originals.zip`),
      demandCents,
      pdfSha256,
      archiveSha256,
      signature,
      revision,
      /** Files that this preview lists without showing them, and why. */
      leftOut: leftOut.map((item) => sayLeftOut(call.var.locale, item)),
      /** What stands in the way of issuing it; empty once it is issued. */
      problems: problems.map((item) => ({ ...item, message: sayProblem(call.var.locale, item) })),
    };
  }
}
