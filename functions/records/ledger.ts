import * as z from 'zod';
import { foldClaim, provenDemands } from '../../shared/claims/state.ts';
import { accountsIn, journalOf } from '../../shared/payments/journal.ts';
import { ledgerCsv } from '../../shared/payments/ledgerCsv.ts';
import { problemIssue, problemsFromZod } from '../../shared/problems/fromZod.ts';
import { relations } from '../../shared/problems/relations.ts';
import { ofKind } from '../../shared/submissions/effective.ts';
import type { RouteHandler } from '../http/app.ts';
import { refuse } from '../http/refused.ts';
import type { RecordsDeps } from './deps.ts';
import { inTurns } from '../project/deps.ts';
import { claimFacts, factsOf } from './facts.ts';

const bounds = z.strictObject({ from: z.iso.date().optional(), to: z.iso.date().optional() }).check(
  relations(({ from, to }, ctx) => {
    if (from !== undefined && to !== undefined && to < from)
      ctx.addIssue(problemIssue('ledger-ends-before-start', ['to'], { from }));
  }),
);

/** Money in and out as finance takes it over, for the desk: the route table lets nobody else in. */
export function ledgerRoutes({ current, ledger }: RecordsDeps): Record<string, RouteHandler> {
  return {
    'GET /api/ledger': async (call) => {
      const asked = bounds.safeParse(call.req.query(), { reportInput: true });
      if (!asked.success) return refuse('invalid', problemsFromZod(asked.error.issues));
      const [claims, strikes, utilityFacts] = await Promise.all([
        current.claims(),
        current.strikes(),
        factsOf(ledger, ['utility']),
      ]);
      const editions = ofKind(utilityFacts, 'rate-book').map(({ fact: { body } }) => body);
      const accountsOn = accountsIn(editions);
      const hydrantOf = new Map(
        strikes.flatMap((strike) => strike.memberIds.map((id) => [id, strike.hydrantId] as const)),
      );
      // Which claims there are is kept for reading; what finance books is read from the ledger itself.
      const read = await inTurns(claims, async ({ claimId }) =>
        foldClaim(claimId, await claimFacts(ledger, claimId)),
      );
      const csv = ledgerCsv(
        read
          .filter((claim) => claim !== null)
          .map((claim) => ({
            claimNumber: claim.claimNumber,
            strikeId: claim.strikeId,
            hydrantId: hydrantOf.get(claim.strikeId) ?? null,
            payerKind: claim.payerKind,
            lines: journalOf(claim.money, provenDemands(claim), accountsOn),
          })),
        asked.data.from ?? null,
        asked.data.to ?? null,
      );
      return call.body(csv, 200, {
        'content-type': 'text/csv; charset=utf-8; header=present',
        'content-disposition': 'attachment; filename="ledger.csv"',
        'cache-control': 'no-store',
      });
    },
  };
}
