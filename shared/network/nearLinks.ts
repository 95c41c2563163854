import type { ModelOutline, OutlineLink } from './outline.ts';

/** A link beside a node, and how far along the pipes it begins. */
export interface NearLink extends OutlineLink {
  readonly alongFt: number;
}

/** A model in which a walk along the pipes is a look-up and not a search. */
export type Neighbourhood = ReadonlyMap<string, readonly OutlineLink[]>;

export function neighbourhoodOf({ links }: ModelOutline): Neighbourhood {
  const byNode = new Map<string, OutlineLink[]>();
  for (const link of links)
    for (const end of [link.from, link.to]) {
      const known = byNode.get(end);
      if (known) known.push(link);
      else byNode.set(end, [link]);
    }
  return byNode;
}

/**
 * The links nearest to a node along the pipes, nearest first: what a crew may think of closing. Walked from pipe to pipe
 * and not by the map, because a street away may be another zone.
 */
export function nearLinks(around: Neighbourhood, nodeId: string, most: number): NearLink[] {
  const found = new Map<string, NearLink>();
  const reached = new Map<string, number>([[nodeId, 0]]);
  const done = new Set<string>();
  while (found.size < most) {
    let next: string | undefined;
    let alongFt = Number.POSITIVE_INFINITY;
    // Few nodes are open at a time; a heap would be more code than it saves.
    for (const [at, ft] of reached)
      if (!done.has(at) && ft < alongFt) {
        next = at;
        alongFt = ft;
      }
    if (next === undefined) break;
    done.add(next);
    for (const link of around.get(next) ?? []) {
      if (!found.has(link.linkId) && found.size < most) found.set(link.linkId, { ...link, alongFt });
      const far = link.from === next ? link.to : link.from;
      const farFt = alongFt + (link.lengthFt ?? 0);
      if (farFt < (reached.get(far) ?? Number.POSITIVE_INFINITY)) reached.set(far, farFt);
    }
  }
  return [...found.values()];
}
