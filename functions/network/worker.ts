import { parentPort } from 'node:worker_threads';
import type { NetworkAnswer } from '../../shared/network/answer.ts';
import type { NetworkQuestion } from '../../shared/network/question.ts';
import { cutOff } from '../../shared/network/reach.ts';
import { problem, type Problem } from '../../shared/problems/problem.ts';
import type { ModelOutline } from '../../shared/network/outline.ts';
import { answerOn, NotInModel } from './answer.ts';
import { complaints } from './complaints.ts';
import { EngineError, openEngine } from './engine.ts';
import { modelOf } from './model.ts';
import { outlineOf, type OutlineQuestion } from './outline.ts';

/**
 * Runs in a thread of its own, so that it can be killed: a network is somebody's file, and a solver in the middle of its
 * loop listens to nobody. One network and one question, one message back.
 */
export interface NetworkRequest {
  readonly inp: string;
  readonly question: NetworkQuestion | OutlineQuestion;
}
export type Reply<Answer> =
  | { readonly ok: true; readonly answer: Answer }
  | { readonly ok: false; readonly problems: readonly Problem[] };
export type NetworkReply = Reply<NetworkAnswer>;

async function reply({ inp, question }: NetworkRequest): Promise<Reply<NetworkAnswer | ModelOutline>> {
  let island: readonly string[] = [];
  try {
    const model = modelOf(await openEngine(inp));
    const { nodes } = model.plain;
    if (nodes.length === 0) return { ok: false, problems: [problem('network-empty', 'inp')] };
    // EPANET opens such a file; the way out that is added to it would then be its only source.
    if (nodes.every(({ kind }) => kind === 'junction'))
      return { ok: false, problems: [problem('network-no-source', 'inp')] };
    island = [...cutOff(model.plain, new Set())];
    const answer = question.ask === 'outline' ? outlineOf(model, question) : answerOn(model, question);
    model.close();
    return { ok: true, answer };
  } catch (error) {
    if (error instanceof NotInModel) return { ok: false, problems: error.problems };
    if (error instanceof EngineError) {
      const detail = complaints(error.report, inp) || error.message.replace(/^Error \d+: /, '');
      // EPANET's matrix has no solution when part of the network hangs on nothing; it does not say which part.
      if (error.code === 110 && island.length > 0) {
        const nodes = island.slice(0, 5).join(', ');
        return { ok: false, problems: [problem('network-island', 'inp', { count: island.length, nodes })] };
      }
      // 110: the equations have no solution; everything else is the file.
      const code = error.code === 110 ? 'network-unsolved' : 'network-broken';
      return { ok: false, problems: [problem(code, 'inp', { detail })] };
    }
    throw error;
  }
}

parentPort?.once('message', (request: NetworkRequest) => {
  void reply(request).then((message) => parentPort?.postMessage(message));
});
