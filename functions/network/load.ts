import { shouldServe, type Hydrant } from '../../shared/inventory/hydrant.ts';
import { flowTestSettingsFrom } from '../../shared/hydraulics/flowTestSettings.ts';
import { evaluateRecorded } from '../../shared/hydraulics/evaluateRecorded.ts';
import type { FlowTestResult } from '../../shared/hydraulics/evaluateFlowTest.ts';
import { nearestInService } from '../../shared/nearest/nearest.ts';
import type { SeenNode } from '../../shared/network/answer.ts';
import type { ModelFacts, NearbyHydrant } from '../../shared/network/forHydrant.ts';
import { neighbourhoodOf, type Neighbourhood } from '../../shared/network/nearLinks.ts';
import { isFound, nodeFinder, type FindNode } from '../../shared/network/nodeFinder.ts';
import { effectiveFacts, ofKind, type Effective } from '../../shared/submissions/effective.ts';
import { streamOf, type Stream } from '../../shared/submissions/envelope.ts';
import { problem } from '../../shared/problems/problem.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { withoutTrials } from '../../shared/submissions/trials.ts';
import { notFound, refuse } from '../http/refused.ts';
import { flowTestStreams } from '../records/flowTests.ts';
import { searchTree } from '../stores/inventory/searchTree.ts';
import type { CurrentModel } from '../stores/network/networkModels.ts';
import type { NetworkDeps } from './deps.ts';
import { inpText } from './inpText.ts';

/** Hydrants whose pressure is looked at beside the one that was asked for. */
const NEARBY = 8;

/** What is made of a model once, for as long as it is in force. */
interface Prepared {
  readonly inp: string;
  readonly find: FindNode;
  readonly around: Neighbourhood;
}
const prepared = new WeakMap<CurrentModel, Prepared>();
function prepare(model: CurrentModel): Prepared {
  const known = prepared.get(model) ?? {
    inp: inpText(model.inp),
    find: nodeFinder(model.outline, model.meta.rule),
    around: neighbourhoodOf(model.outline),
  };
  prepared.set(model, known);
  return known;
}

export interface Asked extends Prepared {
  readonly model: CurrentModel;
  readonly facts: ModelFacts;
  readonly hydrant: Hydrant;
  readonly at: SeenNode;
  readonly nearby: readonly NearbyHydrant[];
}

/** The model, the hydrant, its node and those of its neighbours. Refuses with what is missing, never with nothing. */
export async function loadAsked({ inventory, models }: NetworkDeps, hydrantId: string): Promise<Asked> {
  const [model, stock] = await Promise.all([models.current(), inventory.current()]);
  if (!model) return notFound('no-network-model');
  const hydrant = stock?.byId.get(hydrantId);
  if (!stock || !hydrant) return notFound('no-such-hydrant');
  const ready = prepare(model);
  const at = ready.find(hydrant);
  if (!isFound(at)) return refuse('not-found', at);
  const others = nearestInService(
    searchTree(stock),
    hydrant,
    NEARBY,
    (other) => other.hydrantId !== hydrantId && shouldServe(other),
  );
  const nearby = others.map(({ hydrant: other, distanceFt }): NearbyHydrant => {
    const node = ready.find(other);
    return {
      hydrantId: other.hydrantId,
      place: other.place,
      distanceFt,
      nodeId: isFound(node) ? node.nodeId : null,
      problem: isFound(node) ? null : node,
    };
  });
  const { meta, outline, edition } = model;
  const { datedOn, sourceFile, loadedAt, loadedBy } = meta;
  const { hour, demandGpm, headloss, nodes, links } = outline;
  return {
    ...ready,
    model,
    hydrant,
    at,
    nearby,
    facts: {
      ...{ edition, datedOn, hour, sourceFile, loadedAt, loadedBy, demandGpm, headloss },
      nodes: nodes.length,
      links: links.length,
    },
  };
}

/** Where a question looks beside its own hydrant. */
export const watchOf = (nearby: readonly NearbyHydrant[]): { hydrantId: string; nodeId: string }[] =>
  nearby.flatMap(({ hydrantId, nodeId }) => (nodeId === null ? [] : [{ hydrantId, nodeId }]));

/** Facts without anybody's name: none is needed here. */
async function factsOf(ledger: NetworkDeps['ledger'], streams: readonly Stream[]): Promise<Effective[]> {
  const read = await Promise.all(streams.map((stream) => ledger.readStream(stream, { personal: false })));
  return [...effectiveFacts(withoutTrials(read.flat())).facts];
}

/** The hydrant's latest flow test that can be evaluated. */
export async function loadLatestTest(
  { ledger, current, settings }: NetworkDeps,
  hydrantId: string,
): Promise<{ readonly body: BodyOf<'flow-test'>; readonly result: FlowTestResult } | null> {
  const status = await current.hydrant(hydrantId);
  const facts = await factsOf(ledger, await flowTestStreams(current, hydrantId, status));
  const tests = ofKind(facts, 'flow-test')
    .map(({ fact }) => fact.body)
    .filter(({ residualHydrantId }) => residualHydrantId === hydrantId)
    .sort((a, b) => Date.parse(b.testedAt) - Date.parse(a.testedAt));
  for (const body of tests) {
    const result = evaluateRecorded(body, flowTestSettingsFrom(settings.flowTest));
    if (result) return { body, result };
  }
  return null;
}

/** A strike of this hydrant as it stands: its fold, and what its first report says. */
export async function loadStrike(
  { ledger, current }: NetworkDeps,
  strikeId: string,
  hydrantId: string,
): Promise<{ readonly state: StrikeState; readonly body: BodyOf<'strike'> }> {
  const state = await current.strike(strikeId);
  if (!state) return notFound('no-such-strike');
  if (state.hydrantId !== hydrantId)
    return refuse(
      'invalid',
      problem('strike-of-another-hydrant', 'strike', { hydrantId: state.hydrantId ?? '' }),
    );
  const streams = state.memberIds.map((id) => streamOf({ type: 'strike', strikeId: id }));
  const [first] = ofKind(await factsOf(ledger, streams), 'strike');
  return first ? { state, body: first.fact.body } : notFound('no-such-strike');
}
