import Papa from 'papaparse';
import { problem, type Problem } from '../problems/problem.ts';

export interface NodeList {
  readonly nodeOf: Readonly<Record<string, string>>;
  /** Line of the list by hydrant id. */
  readonly lineOf: ReadonlyMap<string, number>;
  readonly problems: readonly Problem[];
}

/**
 * Reads a list of hydrants and their nodes: two columns, with or without the heading `hydrantId,nodeId`, `,` or `;` or a
 * tab between them. Every line that is not one is a problem with its number.
 */
export function readNodeList(text: string): NodeList {
  const list = text.replace(/^\uFEFF/, '');
  const delimiter = /[;\t]/.exec(list.split('\n')[0] ?? '')?.[0] ?? ',';
  const { data } = Papa.parse<string[]>(list, { delimiter });
  const nodeOf: Record<string, string> = Object.create(null) as Record<string, string>;
  const lineOf = new Map<string, number>();
  const problems: Problem[] = [];
  for (const [index, cells] of data.entries()) {
    const line = index + 1;
    const [hydrantId = '', nodeId = '', ...more] = cells.map((cell) => cell.trim());
    if (cells.every((cell) => cell.trim() === '')) continue;
    if (line === 1 && /^hydrant/i.test(hydrantId) && /^node/i.test(nodeId)) continue;
    if (hydrantId === '' || nodeId === '' || more.some((cell) => cell !== '') || nodeId.length > 64)
      problems.push(problem('network-list-wrong', '--nodes', { line, text: cells.join(',').slice(0, 80) }));
    else if ((nodeOf[hydrantId] ?? nodeId) !== nodeId)
      problems.push(problem('network-list-twice', '--nodes', { line, hydrantId }));
    else {
      nodeOf[hydrantId] = nodeId;
      lineOf.set(hydrantId, line);
    }
  }
  return { nodeOf: { ...nodeOf }, lineOf, problems };
}
