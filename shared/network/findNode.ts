import { ImportRefused } from '../inventory/refused.ts';
import { resolveCrs, type Crs } from '../inventory/place/crs.ts';
import { greatCircleFt } from '../nearest/sphere.ts';
import { problem, type Problem } from '../problems/problem.ts';
import type { SeenNode } from './answer.ts';
import type { ModelNode, PlainModel } from './plainModel.ts';
import type { ModelMap, Place } from './question.ts';

const isJunction = ({ kind }: ModelNode): boolean => kind === 'junction';

/** The nearest of some nodes by a distance; null when none has a place. */
function nearest(
  nodes: readonly ModelNode[],
  distanceTo: (node: ModelNode & { readonly x: number; readonly y: number }) => number | null,
): { readonly node: ModelNode; readonly distance: number } | null {
  let best: { node: ModelNode; distance: number } | null = null;
  for (const node of nodes) {
    const { x, y } = node;
    if (x === null || y === null) continue;
    const distance = distanceTo({ ...node, x, y });
    if (distance !== null && (best === null || distance < best.distance)) best = { node, distance };
  }
  return best;
}

function named(
  model: PlainModel,
  nodeId: string,
  hydrantId: string | null,
  path: string,
): SeenNode | Problem {
  const node = model.nodes.find((one) => one.nodeId === nodeId);
  if (!node) return problem('no-such-node', path, { nodeId });
  if (!isJunction(node)) return problem('node-is-a-source', path, { nodeId });
  return { nodeId, hydrantId, distanceFt: null };
}

function crsOf(map: ModelMap, path: string): Crs | Problem {
  if (map.crs === undefined) return problem('model-needs-crs', path);
  try {
    return resolveCrs(map.crs);
  } catch (error) {
    if (error instanceof ImportRefused && error.problems[0]) return { ...error.problems[0], path: 'map.crs' };
    throw error;
  }
}

const isProblem = (found: object): found is Problem => 'code' in found;

/**
 * The junction of the model that stands for a hydrant: the one that is named, or that the list of hydrants names, or the
 * nearest to the hydrant's position (which needs the model's coordinate system), or the nearest on the model's own map.
 *
 * @param path of the place in the question, for the problem that comes back when there is no such node
 */
export function findNode(
  model: PlainModel,
  place: Place,
  map: ModelMap | undefined,
  path: string,
): SeenNode | Problem {
  const hydrantId = place.hydrantId ?? null;
  if (place.nodeId !== undefined) return named(model, place.nodeId, hydrantId, `${path}.nodeId`);
  const listed = hydrantId === null ? undefined : map?.nodeOf?.[hydrantId];
  if (listed !== undefined) return named(model, listed, hydrantId, `map.nodeOf.${hydrantId ?? ''}`);
  const withinFt = map?.withinFt ?? 300;

  if (place.latitudeDeg !== undefined && place.longitudeDeg !== undefined) {
    const crs = crsOf(map ?? { withinFt }, path);
    if (isProblem(crs)) return crs;
    const position = { latitudeDeg: place.latitudeDeg, longitudeDeg: place.longitudeDeg };
    const found = nearest(model.nodes.filter(isJunction), ({ x, y }) => {
      const there = crs.toWgs84(x, y);
      return there && greatCircleFt(position, { longitudeDeg: there[0], latitudeDeg: there[1] });
    });
    if (!found) return problem('model-has-no-map', path);
    const { node, distance } = found;
    return distance > withinFt
      ? problem('no-node-near', path, { nodeId: node.nodeId, distanceFt: distance, withinFt })
      : { nodeId: node.nodeId, hydrantId, distanceFt: distance };
  }
  if (place.x !== undefined && place.y !== undefined) {
    const { x, y } = place;
    const found = nearest(model.nodes.filter(isJunction), (node) => Math.hypot(node.x - x, node.y - y));
    return found
      ? { nodeId: found.node.nodeId, hydrantId, distanceFt: null }
      : problem('model-has-no-map', path);
  }
  return problem('hydrant-not-in-model', `${path}.hydrantId`, { hydrantId: hydrantId ?? '' });
}
