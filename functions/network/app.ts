import type { NetworkAnswer } from '../../shared/network/answer.ts';
import { compareWithField } from '../../shared/network/compare.ts';
import {
  closingAsk,
  type FieldTest,
  type NetworkClosing,
  type NetworkForHydrant,
} from '../../shared/network/forHydrant.ts';
import { boundLateral, lostBound } from '../../shared/network/lost.ts';
import { nearLinks } from '../../shared/network/nearLinks.ts';
import { networkQuestion, type NetworkQuestion } from '../../shared/network/question.ts';
import { problemsFromZod } from '../../shared/problems/fromZod.ts';
import { createFamilyApp, type App } from '../http/app.ts';
import { readJson } from '../http/json.ts';
import { refuse } from '../http/refused.ts';
import type { NetworkDeps } from './deps.ts';
import { loadAsked, loadLatestTest, loadStrike, watchOf } from './load.ts';

/** Pipes and valves that are offered for closing: as many as one looks through on a phone. */
const LINKS = 24;

/** One question, answered; what is wrong with it or with the model comes back as its problems. */
async function ask<Asked extends NetworkQuestion>(
  { solve }: NetworkDeps,
  inp: string,
  question: Asked,
): Promise<Extract<NetworkAnswer, { ask: Asked['ask'] }>> {
  const reply = await solve(inp, question);
  if (reply.ok) return reply.answer as Extract<NetworkAnswer, { ask: Asked['ask'] }>;
  return refuse(
    'invalid',
    reply.problems.map((found) => (found.path === 'inp' ? { ...found, path: 'model' } : found)),
  );
}
const question = <Ask extends NetworkQuestion['ask']>(
  asked: { readonly ask: Ask } & Readonly<Record<string, unknown>>,
): Extract<NetworkQuestion, { ask: Ask }> =>
  networkQuestion.parse(asked) as Extract<NetworkQuestion, { ask: Ask }>;

function fieldTest(
  latest: Awaited<ReturnType<typeof loadLatestTest>>,
  available: NetworkForHydrant['available'],
): FieldTest | null {
  if (!latest) return null;
  const { body, result } = latest;
  return {
    testedAt: body.testedAt,
    staticPsi: body.staticPsi,
    residualPsi: body.residualPsi,
    measuredFlowGpm: result.measuredFlowGpm,
    capacityGpm: result.rating.capacityGpm,
    ratedAtPsi: result.rating.residualPsi,
    comparison: compareWithField(result, available),
  };
}

/** What the utility's network model says of a hydrant: for those who are signed in, and for no page. */
export function createNetworkApp(deps: NetworkDeps): App {
  return createFamilyApp('network', deps, {
    'GET /api/network/{hydrantId}': async (call) => {
      const hydrantId = call.req.param('hydrantId') ?? '';
      const strikeId = call.req.query('strike');
      const { inp, at, nearby, hydrant, facts, around } = await loadAsked(deps, hydrantId);
      const [latest, strike] = await Promise.all([
        loadLatestTest(deps, hydrantId),
        strikeId === undefined ? null : loadStrike(deps, strikeId, hydrantId),
      ]);
      const lateral = boundLateral(hydrant);
      const { hour } = facts;
      const place = { hydrantId, nodeId: at.nodeId };
      const testFlowGpm = latest?.result.measuredFlowGpm;
      const [available, bound] = await Promise.all([
        ask(
          deps,
          inp,
          question({ ask: 'available-flow', at: place, hour, watch: watchOf(nearby), testFlowGpm }),
        ),
        ask(deps, inp, question({ ask: 'water-bound', at: place, hour, lateral })),
      ]);
      const answer: NetworkForHydrant = {
        model: facts,
        available: { ...available, at },
        bound: { ...bound, at },
        throughLateral: lateral !== undefined,
        field: fieldTest(latest, available),
        nearby,
        links: nearLinks(around, at.nodeId, LINKS),
        lost: strike
          ? lostBound(strike.state.strikeId, strike.body, strike.state.waterShutAt, bound.flowGpm)
          : null,
      };
      return call.json(answer);
    },

    'POST /api/network/{hydrantId}/closing': async (call) => {
      const parsed = closingAsk.safeParse(await readJson(call), { reportInput: true });
      if (!parsed.success) return refuse('invalid', problemsFromZod(parsed.error.issues));
      const hydrantId = call.req.param('hydrantId') ?? '';
      const { inp, at, nearby, facts } = await loadAsked(deps, hydrantId);
      const { hour } = facts;
      const watch = [{ hydrantId, nodeId: at.nodeId }, ...watchOf(nearby)];
      const closing = await ask(
        deps,
        inp,
        question({ ask: 'closing', links: parsed.data.links, hour, watch }),
      );
      const answer: NetworkClosing = { model: facts, closing, nearby };
      return call.json(answer);
    },
  });
}
