import { ImportRefused } from '../inventory/refused.ts';
import { resolveCrs } from '../inventory/place/crs.ts';
import { nearestIndex, nearestInService, type NearestIndex } from '../nearest/nearest.ts';
import type { Position } from '../nearest/sphere.ts';
import { problem, type Problem } from '../problems/problem.ts';
import type { SeenNode } from './answer.ts';
import type { NodeRule } from './edition.ts';
import type { PlainModel } from './plainModel.ts';

/** What a hydrant needs to be found in a model. */
export type Placed = Position & { readonly hydrantId: string };
export type FindNode = (hydrant: Placed) => SeenNode | Problem;

const onTheGlobe = (longitudeDeg: number, latitudeDeg: number): boolean =>
  Math.abs(longitudeDeg) <= 180 && Math.abs(latitudeDeg) <= 90;

/** The model's junctions laid out on the globe; null when it states no coordinate system. */
function layOut(model: PlainModel, crs: string | null): NearestIndex | null {
  if (crs === null) return null;
  const { toWgs84 } = resolveCrs(crs);
  return nearestIndex(
    model.nodes.flatMap(({ nodeId, kind, x, y }) => {
      const at = kind === 'junction' && x !== null && y !== null ? toWgs84(x, y) : null;
      return at && onTheGlobe(...at) ? [{ hydrantId: nodeId, longitudeDeg: at[0], latitudeDeg: at[1] }] : [];
    }),
  );
}

/**
 * Finds the node of hydrant after hydrant in one model: laid out once, asked thousands of times. `findNode` answers the
 * same for one question of the command line.
 *
 * @throws ImportRefused when the coordinate system is not one that is known
 */
export function nodeFinder(model: PlainModel, rule: NodeRule): FindNode {
  const kinds = new Map(model.nodes.map(({ nodeId, kind }) => [nodeId, kind]));
  const index = layOut(model, rule.crs);
  return (hydrant) => {
    const { hydrantId } = hydrant;
    const listed = rule.nodeOf[hydrantId];
    if (listed !== undefined) {
      const kind = kinds.get(listed);
      if (kind === undefined) return problem('no-such-node', 'hydrantId', { nodeId: listed });
      return kind === 'junction'
        ? { nodeId: listed, hydrantId, distanceFt: null }
        : problem('node-is-a-source', 'hydrantId', { nodeId: listed });
    }
    const [near] = index ? nearestInService(index, hydrant, 1, () => true) : [];
    if (!near) return problem('hydrant-has-no-node', 'hydrantId', { hydrantId });
    const { hydrant: node, distanceFt } = near;
    return distanceFt > rule.withinFt
      ? problem('no-node-near', 'hydrantId', { nodeId: node.hydrantId, distanceFt, withinFt: rule.withinFt })
      : { nodeId: node.hydrantId, hydrantId, distanceFt };
  };
}

export const isFound = (found: SeenNode | Problem): found is SeenNode => !('code' in found);

/** Whether a coordinate system is one that is known; its problem when not. */
export function crsProblem(crs: string): Problem | null {
  try {
    resolveCrs(crs);
    return null;
  } catch (error) {
    if (error instanceof ImportRefused && error.problems[0]) return error.problems[0];
    throw error;
  }
}
