import type { ModelOutline } from '../../shared/network/outline.ts';
import { cutOff } from '../../shared/network/reach.ts';
import type { Model } from './model.ts';

export interface OutlineQuestion {
  readonly ask: 'outline';
  /** Hour of the model's clock at which to look. */
  readonly hour: number;
}

/** Reads everything that is kept of a file beside it, and solves it once: a file that cannot be solved is no model. */
export function outlineOf(model: Model, { hour: asked }: OutlineQuestion): ModelOutline {
  const { nodes, links } = model.plain;
  const described = links.map((link) => ({ ...link, ...model.linkFacts(link.linkId) }));
  const hour = model.solveAt(asked);
  const junctions = nodes.filter(({ kind }) => kind === 'junction');
  const unfed = cutOff(
    model.plain,
    new Set(described.filter(({ open }) => !open).map(({ linkId }) => linkId)),
  );
  return {
    nodes,
    links: described,
    headloss: model.headloss,
    hour,
    demandGpm: junctions.reduce((sum, { nodeId }) => sum + model.demandGpm(nodeId), 0),
    negativeNodes: junctions.filter(({ nodeId }) => !unfed.has(nodeId) && model.pressurePsi(nodeId) < 0)
      .length,
    unfedNodes: junctions.filter(({ nodeId }) => unfed.has(nodeId)).length,
    warnings: model.takeWarnings(),
  };
}
