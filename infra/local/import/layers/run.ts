import type { InventoryStore } from '../../../../functions/stores/inventory/inventory.ts';
import type { LayerStore } from '../../../../functions/stores/layers/layers.ts';
import { ImportRefused } from '../../../../shared/inventory/refused.ts';
import type { Finding } from '../../../../shared/layers/findings.ts';
import type { LayerEdition } from '../../../../shared/layers/kinds.ts';
import { besideHydrants } from '../../../../shared/layers/besideHydrants.ts';
import { LayerEmpty, readLayer, type LayerResult } from '../../../../shared/layers/readLayer.ts';
import { problem } from '../../../../shared/problems/problem.ts';
import { say } from '../../../../shared/words/index.ts';
import { openFile } from '../openFile.ts';
import type { LayerOptions } from './options.ts';
import { findingLines, reportLines, writeLayerReport } from './print.ts';

export interface LayerLoadDeps {
  /** The inventory, to look whether the layer lies where the hydrants are; null where none was ever loaded. */
  readonly lookAtInventory: () => Promise<InventoryStore | null>;
  /** Asked for only when something is to be written. */
  readonly openLayers: () => Promise<LayerStore>;
  /** A UTC instant. */
  readonly now: () => string;
  /** The account that runs the command, where `--by` names nobody. */
  readonly account: () => string;
  readonly print: (line: string) => void;
}

/**
 * One run of the loading command: reads, checks, says of every feature what became of it, and unless it is a dry run
 * puts the layer in force.
 *
 * @throws ImportRefused when the file cannot be taken; nothing has been written then
 */
export async function runLayerLoad(options: LayerOptions, deps: LayerLoadDeps): Promise<LayerEdition | null> {
  const { locale, choices } = options;
  const { print } = deps;
  if (options.file === null) return takeOut(options, deps);
  const file = await openFile(options.file);
  if (file.format !== 'geojson') throw new ImportRefused(problem('layers-not-geojson', 'FILE'));
  const writeReport = async (findings: readonly Finding[]): Promise<void> => {
    if (options.report === null) return;
    await writeLayerReport(options.report, findings, locale);
    print(say(locale, 'layers.report-written', { file: options.report }));
  };
  let result: LayerResult;
  try {
    result = await readLayer(file, choices);
  } catch (error) {
    if (error instanceof LayerEmpty) {
      for (const line of findingLines(error.findings, locale)) print(line);
      await writeReport(error.findings);
    }
    throw error;
  }
  for (const line of reportLines(result, file.name, choices.kind, locale)) print(line);
  await writeReport(result.findings);
  const stock = await (await deps.lookAtInventory())?.current();
  const { problems, remarks } = besideHydrants(result, choices.kind, stock?.hydrants ?? null);
  for (const remark of remarks) print(say(locale, `problem.${remark.code}`, remark.params));
  if (problems.length > 0) throw new ImportRefused(...problems);
  if (options.dryRun) {
    print(say(locale, 'layers.dry-run'));
    return null;
  }
  const { bytes, crs, features, accepted, doubtful } = result;
  const edition = await (
    await deps.openLayers()
  ).publish(choices.kind, {
    loadedAt: deps.now(),
    loadedBy: whoOf(options, deps),
    data: {
      bytes,
      source: {
        file: file.name.slice(0, 200),
        sha256: file.sha256,
        crs,
        features,
        accepted,
        doubtful,
        rejected: features - accepted,
      },
    },
  });
  print(say(locale, 'layers.loaded', { kind: choices.kind, edition: edition.edition }));
  return edition;
}

const whoOf = ({ by }: LayerOptions, { account }: LayerLoadDeps): string =>
  (by ?? account()).trim().slice(0, 64) || 'unknown';

async function takeOut(options: LayerOptions, deps: LayerLoadDeps): Promise<LayerEdition | null> {
  const { locale, choices } = options;
  const layers = await deps.openLayers();
  if ((await layers.current(choices.kind)) === null)
    throw new ImportRefused(problem('layers-none-in-force', '--take-out', { kind: choices.kind }));
  if (options.dryRun) {
    deps.print(say(locale, 'layers.dry-run'));
    return null;
  }
  const edition = await layers.publish(choices.kind, {
    loadedAt: deps.now(),
    loadedBy: whoOf(options, deps),
    data: null,
  });
  deps.print(say(locale, 'layers.taken-out', { kind: choices.kind, edition: edition.edition }));
  return edition;
}
