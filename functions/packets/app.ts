import * as z from 'zod';
import { problemsFromZod } from '../../shared/problems/fromZod.ts';
import { cents } from '../../shared/submissions/fields.ts';
import { say, sayProblem } from '../../shared/words/index.ts';
import { createFamilyApp, memberOf, type App, type Call } from '../http/app.ts';
import { readJson } from '../http/json.ts';
import { refuse } from '../http/refused.ts';
import type { PacketsDeps } from './deps.ts';
import { freezePacket } from './freeze.ts';
import { loadClaim } from './load.ts';
import { claimLetter } from './letter.ts';
import { claimObjections } from './objections.ts';
import { previewPacket } from './preview.ts';

const packetRequest = z.strictObject({
  mode: z.enum(['preview', 'freeze']),
  /** Less than what is left of the statement, where several parties are liable; left out: all that is left. */
  demandCents: cents.optional(),
});

/** A claim's statement of costs, and its packet as a PDF. */
export function createPacketsApp(deps: PacketsDeps): App {
  const claimIdOf = (call: Call): string => call.req.param('claimId') ?? '';
  return createFamilyApp('packets', deps, {
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

    'POST /api/claims/{claimId}/packet': async (call) => {
      const parsed = packetRequest.safeParse(await readJson(call), { reportInput: true });
      if (!parsed.success) return refuse('invalid', problemsFromZod(parsed.error.issues));
      const { mode, demandCents: asked = null } = parsed.data;
      const member = memberOf(call);
      const claimId = claimIdOf(call);
      const { problems, ...packet } =
        mode === 'preview'
          ? await previewPacket(deps, member, claimId, asked)
          : { ...(await freezePacket(deps, member, claimId, asked)), problems: [] };
      const { revision, pdfSha256, demandCents, claimNumber } = packet;
      const name = `packet-${claimNumber}-${revision === null ? 'preview' : `r${revision}`}.pdf`;
      return call.json({
        url: await deps.evidence.downloadUrl(pdfSha256, name),
        demandCents,
        pdfSha256,
        revision,
        /** What stands in the way of issuing it; empty once it is issued. */
        problems: problems.map((item) => ({ ...item, message: sayProblem(call.var.locale, item) })),
      });
    },
  });
}
