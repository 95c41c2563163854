import type {
  AvailableFlowAnswer,
  ClosingAnswer,
  NetworkAnswer,
  NetworkWarning,
  SeenNode,
  WaterBoundAnswer,
  WatchedNode,
} from '../../shared/network/answer.ts';
import { findNode } from '../../shared/network/findNode.ts';
import type {
  AvailableFlowQuestion,
  ClosingQuestion,
  NetworkQuestion,
  Place,
  WaterBoundQuestion,
} from '../../shared/network/question.ts';
import { cutOff } from '../../shared/network/reach.ts';
import { problem, type Problem } from '../../shared/problems/problem.ts';
import type { Model } from './model.ts';

/** The question names something that this network does not have. */
export class NotInModel extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(problems.map(({ path, code }) => `${path}: ${code}`).join('; '));
    this.name = 'NotInModel';
    this.problems = problems;
  }
}

/** A difference that no display shows; the node that is held at the residual is not below it. */
const SHOWN_PSI = 0.05;

const isProblem = (found: object): found is Problem => 'code' in found;

/** The nodes of some places, or every problem with them at once. */
function findAll(
  model: Model,
  { map }: NetworkQuestion,
  places: readonly { place: Place; path: string }[],
): SeenNode[] {
  const found = places.map(({ place, path }) => findNode(model.plain, place, map, path));
  const problems = found.filter(isProblem);
  if (problems.length > 0) throw new NotInModel(problems);
  return found.filter((one): one is SeenNode => !isProblem(one));
}

const watched = (question: { readonly watch: readonly Place[] }): { place: Place; path: string }[] =>
  question.watch.map((place, index) => ({ place, path: `watch.${index}` }));

const readAll = (model: Model, nodes: readonly SeenNode[]): number[] =>
  nodes.map(({ nodeId }) => model.pressurePsi(nodeId));

function beforeAndAfter(
  nodes: readonly SeenNode[],
  before: readonly number[],
  after: readonly (number | null)[],
): WatchedNode[] {
  return nodes.map((node, index) => ({
    ...node,
    beforePsi: before[index] ?? Number.NaN,
    afterPsi: after[index] ?? null,
  }));
}

function availableFlow(model: Model, question: AvailableFlowQuestion): AvailableFlowAnswer {
  const { at: place, residualPsi, testFlowGpm } = question;
  const [at, ...watch] = findAll(model, question, [{ place, path: 'at' }, ...watched(question)]);
  if (!at) throw new Error('no place was asked for');
  model.addOutlet(at.nodeId, residualPsi);
  const hour = model.solveAt(question.hour);
  const staticPsi = model.pressurePsi(at.nodeId);
  const before = readAll(model, watch);
  // A way out that ends above the static would let water in.
  const flows = staticPsi > residualPsi;
  const flowGpm = flows ? model.openOutlet() : 0;
  const after = readAll(model, watch);
  const served = model.served();
  const warnings = model.takeWarnings();
  const lowest = served.toSorted((a, b) => a.psi - b.psi)[0];
  return {
    ask: 'available-flow',
    at,
    hour,
    staticPsi,
    residualPsi,
    flowGpm,
    atTestFlowPsi: testFlowGpm === undefined ? null : model.pressureAtFlow(at.nodeId, testFlowGpm),
    lowest: lowest
      ? { ...lowest, belowResidual: served.filter(({ psi }) => psi < residualPsi - SHOWN_PSI).length }
      : null,
    watched: beforeAndAfter(watch, before, after),
    warnings,
  };
}

function closing(model: Model, question: ClosingQuestion): ClosingAnswer {
  const { links } = question;
  const known = new Set(model.plain.links.map(({ linkId }) => linkId));
  const missing = links.flatMap((linkId, index) =>
    known.has(linkId) ? [] : [problem('no-such-link', `links.${index}`, { linkId })],
  );
  if (missing.length > 0) throw new NotInModel(missing);
  const nodes = findAll(model, question, watched(question));
  const hour = model.solveAt(question.hour);
  const before = readAll(model, nodes);
  const servedBefore = model.served();
  const opened = model.closeLinks(links);
  if (opened.length > 0)
    throw new NotInModel(
      opened.map((linkId) => problem('link-opens-again', `links.${links.indexOf(linkId)}`, { linkId })),
    );
  const dry = cutOff(model.plain, new Set(links));
  const after = nodes.map(({ nodeId }) => (dry.has(nodeId) ? null : model.pressurePsi(nodeId)));
  return {
    ask: 'closing',
    hour,
    closed: links,
    watched: beforeAndAfter(nodes, before, after),
    cutOffNodes: servedBefore.filter(({ nodeId }) => dry.has(nodeId)).length,
    warnings: warningsBeside(model, dry),
  };
}

/** What the solver doubts of the nodes that still have water; that the others have none is said by itself. */
function warningsBeside(model: Model, dry: ReadonlySet<string>): NetworkWarning[] {
  const warnings = model.takeWarnings();
  if (dry.size === 0) return warnings;
  const negative = model.plain.nodes.some(
    ({ kind, nodeId }) => kind === 'junction' && !dry.has(nodeId) && model.pressurePsi(nodeId) < 0,
  );
  return warnings.filter(
    (warning) => warning !== 'disconnected' && (warning !== 'negative-pressures' || negative),
  );
}

function waterBound(model: Model, question: WaterBoundQuestion): WaterBoundAnswer {
  const { at: place, lateral } = question;
  const [at] = findAll(model, question, [{ place, path: 'at' }]);
  if (!at) throw new Error('no place was asked for');
  // The speed at the open end is a loss of the lateral too: one velocity head more.
  model.addOutlet(at.nodeId, 0, lateral && { ...lateral, minorLossK: lateral.minorLossK + 1 });
  const hour = model.solveAt(question.hour);
  const staticPsi = model.pressurePsi(at.nodeId);
  const flowGpm = staticPsi > 0 ? model.openOutlet() : 0;
  return { ask: 'water-bound', at, hour, staticPsi, flowGpm, warnings: model.takeWarnings() };
}

/** Answers a question on an opened network. @throws NotInModel when it names what the network does not have. */
export function answerOn(model: Model, question: NetworkQuestion): NetworkAnswer {
  switch (question.ask) {
    case 'available-flow':
      return availableFlow(model, question);
    case 'closing':
      return closing(model, question);
    case 'water-bound':
      return waterBound(model, question);
  }
}
