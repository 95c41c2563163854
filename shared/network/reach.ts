import type { PlainModel } from './plainModel.ts';

/**
 * The nodes that no reservoir or tank reaches when these links are closed. Solvers give such nodes a pressure that means
 * nothing (or a very negative one), so they are looked for first and shown as cut off.
 *
 * A link counts both ways, whatever its pump or check valve lets through: cut off here is cut off for certain.
 */
export function cutOff({ nodes, links }: PlainModel, closed: ReadonlySet<string>): Set<string> {
  const neighbours = new Map<string, string[]>(nodes.map(({ nodeId }) => [nodeId, []]));
  for (const { linkId, from, to } of links) {
    if (closed.has(linkId)) continue;
    neighbours.get(from)?.push(to);
    neighbours.get(to)?.push(from);
  }
  const reached = new Set(nodes.filter(({ kind }) => kind !== 'junction').map(({ nodeId }) => nodeId));
  // The set grows while it is walked, which visits each node once.
  for (const nodeId of reached) for (const next of neighbours.get(nodeId) ?? []) reached.add(next);
  return new Set(nodes.map(({ nodeId }) => nodeId).filter((nodeId) => !reached.has(nodeId)));
}
