import { problem, type Problem } from '../problems/problem.ts';
import type { NodeRule } from './edition.ts';
import { isFound, nodeFinder, type Placed } from './nodeFinder.ts';
import type { ModelOutline } from './outline.ts';

/** How an inventory's hydrants lie in a model. */
export interface Matched {
  readonly count: number;
  readonly found: number;
  /** Those found by the map, nearest first. */
  readonly byMap: readonly { readonly hydrantId: string; readonly distanceFt: number }[];
  readonly byList: number;
  readonly without: readonly { readonly hydrantId: string; readonly problem: Problem }[];
  /** The node that stands for the most hydrants, and how many nodes stand for more than one; null: none does. */
  readonly shared: { readonly nodeId: string; readonly most: number; readonly count: number } | null;
}

/** Looks up every hydrant in a model. */
export function matchHydrants(model: ModelOutline, rule: NodeRule, hydrants: readonly Placed[]): Matched {
  const find = nodeFinder(model, rule);
  const byMap: { hydrantId: string; distanceFt: number }[] = [];
  const without: { hydrantId: string; problem: Problem }[] = [];
  const standing = new Map<string, number>();
  let byList = 0;
  for (const hydrant of hydrants) {
    const { hydrantId } = hydrant;
    const node = find(hydrant);
    if (!isFound(node)) {
      without.push({ hydrantId, problem: node });
      continue;
    }
    standing.set(node.nodeId, (standing.get(node.nodeId) ?? 0) + 1);
    if (node.distanceFt === null) byList += 1;
    else byMap.push({ hydrantId, distanceFt: node.distanceFt });
  }
  const several = [...standing].filter(([, most]) => most > 1).sort(([, a], [, b]) => b - a);
  const [first] = several;
  return {
    count: hydrants.length,
    found: hydrants.length - without.length,
    byMap: byMap.sort((a, b) => a.distanceFt - b.distanceFt),
    byList,
    without,
    shared: first ? { nodeId: first[0], most: first[1], count: several.length } : null,
  };
}

/** What is doubtful of a model that can be loaded all the same. Words: `network.doubt.<code>`. */
export function doubtsOf(
  outline: ModelOutline,
  askedHour: number,
  rule: NodeRule,
  matched: Matched | null,
): Problem[] {
  const doubts: Problem[] = [];
  const add = (code: string, params: Problem['params'] = {}): void =>
    void doubts.push(problem(code, '', params));
  const { hour, demandGpm, negativeNodes, unfedNodes, nodes } = outline;
  if (hour < askedHour) add('hour', { hour, asked: askedHour });
  if (demandGpm <= 0) add('no-demand');
  if (negativeNodes > 0) add('negative', { count: negativeNodes });
  if (unfedNodes > 0) add('unfed', { count: unfedNodes });
  const unplaced = nodes.filter(({ kind, x }) => kind === 'junction' && x === null).length;
  if (rule.crs !== null && unplaced > 0) add('no-map', { count: unplaced });
  if (matched) {
    if (matched.found * 2 < matched.count) add('few-hydrants');
    if (matched.shared) add('shared', { ...matched.shared });
  }
  return doubts;
}
