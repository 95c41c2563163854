import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { inpText } from '../../../functions/network/inpText.ts';
import { readOutline } from '../../../functions/network/solve.ts';
import type { InventoryStore } from '../../../functions/stores/inventory/inventory.ts';
import type { NetworkModels } from '../../../functions/stores/network/networkModels.ts';
import { ImportRefused } from '../../../shared/inventory/refused.ts';
import type { NetworkEdition, NodeRule } from '../../../shared/network/edition.ts';
import { doubtsOf, matchHydrants } from '../../../shared/network/loading.ts';
import { crsProblem } from '../../../shared/network/nodeFinder.ts';
import { readNodeList } from '../../../shared/network/nodeList.ts';
import type { ModelOutline } from '../../../shared/network/outline.ts';
import { problem, type Problem } from '../../../shared/problems/problem.ts';
import type { Reader } from '../../../shared/units/format.ts';
import { say } from '../../../shared/words/index.ts';
import type { NetworkOptions } from './options.ts';
import { loadedLine, reportLines } from './print.ts';

export interface NetworkLoadDeps {
  readonly inventory: InventoryStore;
  /** Asked for only when something is to be written. */
  readonly openModels: () => Promise<NetworkModels>;
  /** A UTC instant. */
  readonly now: () => string;
  /** The account that runs the command, where `--by` names nobody. */
  readonly account: () => string;
  readonly reader: Reader;
  readonly print: (line: string) => void;
}

async function read(file: string): Promise<Uint8Array> {
  return readFile(file).catch(() => {
    throw new ImportRefused(problem('network-file-not-found', 'FILE', { file }));
  });
}

/** The rule that the options state, checked against the model: every wrong line of the list at once. */
async function ruleOf(options: NetworkOptions, outline: ModelOutline): Promise<NodeRule> {
  const { crs, withinFt } = options;
  const problems: Problem[] = [];
  const wrongCrs = crs === null ? null : crsProblem(crs);
  if (wrongCrs) problems.push({ ...wrongCrs, path: '--crs' });
  const list = options.nodes === null ? null : readNodeList(inpText(await read(options.nodes)));
  if (list) {
    problems.push(...list.problems);
    const junctions = new Set(
      outline.nodes.filter(({ kind }) => kind === 'junction').map(({ nodeId }) => nodeId),
    );
    for (const [hydrantId, line] of list.lineOf) {
      const nodeId = list.nodeOf[hydrantId] ?? '';
      if (!junctions.has(nodeId)) problems.push(problem('network-list-no-node', '--nodes', { line, nodeId }));
    }
  }
  if (problems.length > 0) throw new ImportRefused(...problems.slice(0, 20));
  return { crs, nodeOf: list?.nodeOf ?? {}, withinFt };
}

/**
 * One run of the loading command: reads and solves the file, looks up every hydrant, reports, and unless it is a dry run
 * puts the model in force.
 *
 * @throws ImportRefused when the file cannot be taken; nothing has been written then
 */
export async function runNetworkLoad(
  options: NetworkOptions,
  deps: NetworkLoadDeps,
): Promise<NetworkEdition | null> {
  const { reader, print } = deps;
  const inp = await read(options.file);
  const reply = await readOutline(inpText(inp), options.hour);
  if (!reply.ok) throw new ImportRefused(...reply.problems);
  const outline = reply.answer;
  const rule = await ruleOf(options, outline);
  const stock = await deps.inventory.current();
  const matched = stock ? matchHydrants(outline, rule, stock.hydrants) : null;
  const doubts = doubtsOf(outline, options.hour, rule, matched);
  const unknown = stock ? Object.keys(rule.nodeOf).filter((id) => !stock.byId.has(id)) : [];
  if (unknown.length > 0)
    doubts.push(problem('listed-unknown', '--nodes', { examples: unknown.slice(0, 5).join(', ') }));
  for (const line of reportLines(basename(options.file), outline, matched, doubts, reader)) print(line);
  if (matched?.found === 0 && matched.count > 0) throw new ImportRefused(problem('network-none-found'));
  if (options.dryRun) {
    print(say(reader.locale, 'network.command.dry-run'));
    return null;
  }
  const models = await deps.openModels();
  const edition = await models.publish(inp, outline, {
    datedOn: options.datedOn,
    hour: options.hour,
    rule,
    sourceFile: basename(options.file).slice(0, 200),
    loadedAt: deps.now(),
    loadedBy: (options.by ?? deps.account()).trim().slice(0, 64) || 'unknown',
  });
  print(loadedLine(edition, reader));
  return edition;
}
