import type { InventoryStore } from '../../../functions/stores/inventory/inventory.ts';
import type { InventoryEdition, InventoryMeta } from '../../../shared/inventory/edition.ts';
import { importFile, type ImportResult } from '../../../shared/inventory/importFile.ts';
import { ImportRefused } from '../../../shared/inventory/refused.ts';
import { problem } from '../../../shared/problems/problem.ts';
import { say } from '../../../shared/words/index.ts';
import { collectGarbage } from './memory.ts';
import { openFile, type OpenedFile } from './openFile.ts';
import type { ImportOptions } from './options.ts';
import { reportLines } from './print.ts';
import { reportJson, writeReport } from './reportFile.ts';

export interface ImportDeps {
  /** Asked for only when something is to be written. */
  readonly openInventory: () => Promise<InventoryStore>;
  /** The one in force, for a dry run to look at without making anything; null where there is none. */
  readonly lookAtInventory: () => Promise<InventoryStore | null>;
  /** A UTC instant. */
  readonly now: () => string;
  /** A UUIDv7 for the `inventory-loaded` fact. */
  readonly newId: () => string;
  /** The account that runs the command, where `--by` names nobody. */
  readonly account: () => string;
  /**
   * Posts the `inventory-loaded` fact to the ledger (its body is `loadedBody(edition, meta)`, its id
   * `meta.submissionId`). True when it was accepted or was there already. The local runner supplies it; without it, or
   * when no server runs, the fact is recorded by whoever reads the new edition first, under the same id.
   */
  readonly recordLoad: ((edition: InventoryEdition, meta: InventoryMeta) => Promise<boolean>) | null;
  readonly print: (line: string) => void;
}

/** A new inventory with less than this share of the one in force is asked about: a filter or a cut download looks so. */
const smallestShare = 0.9;

/**
 * One run of the import command: reads, checks, reports, and unless it is a dry run puts the inventory in force.
 *
 * @throws ImportRefused when the file cannot be taken; nothing has been written then
 */
export async function runImport(options: ImportOptions, deps: ImportDeps): Promise<ImportResult> {
  const { locale } = options;
  const file = await openFile(options.file);
  const result = await importFile(file, options.choices);
  if (options.report !== null) await writeReport(options.report, result, file, locale);
  if (options.json) deps.print(JSON.stringify(reportJson(result, file, locale), null, 2));
  else for (const line of reportLines(result, file, locale)) deps.print(line);
  // With --json the output is one JSON value and nothing else.
  const tell = options.json ? () => undefined : deps.print;
  if (options.report !== null) tell(say(locale, 'inventory.report-written', { file: options.report }));

  if (result.hydrants.length === 0) throw new ImportRefused(problem('inventory-none-accepted'));
  if (options.dryRun) {
    const store = await deps.lookAtInventory();
    if (store) await refuseFewer(store, result, options);
    tell(say(locale, 'inventory.dry-run'));
    return result;
  }
  const { edition, recorded } = await putInForce(result, file, options, deps);
  tell(
    say(locale, 'inventory.loaded', {
      edition: edition.edition,
      accepted: result.hydrants.length,
      manifest: edition.manifestSha256.slice(0, 12),
    }),
  );
  tell(say(locale, recorded ? 'inventory.fact-posted' : 'inventory.fact-pending'));
  return result;
}

/** @throws ImportRefused when the file gives so few hydrants that it may have lost some */
async function refuseFewer(
  store: InventoryStore,
  { hydrants }: ImportResult,
  { allowFewer }: ImportOptions,
): Promise<void> {
  const before = await store.currentEdition();
  if (!before || allowFewer) return;
  const current = (await store.meta(before.manifestSha256)).accepted;
  const count = hydrants.length;
  if (count < current * smallestShare)
    throw new ImportRefused(problem('inventory-shrinks', '', { count, current }));
}

async function putInForce(
  result: ImportResult,
  file: OpenedFile,
  options: ImportOptions,
  deps: ImportDeps,
): Promise<{ edition: InventoryEdition; recorded: boolean }> {
  const store = await deps.openInventory();
  await refuseFewer(store, result, options);
  const { report } = result;
  const meta: InventoryMeta = {
    submissionId: deps.newId(),
    loadedAt: deps.now(),
    loadedBy: (options.by ?? deps.account()).trim().slice(0, 64),
    sourceFile: file.name.slice(0, 200),
    sourceSha256: file.sha256,
    crs: result.place.crs.label,
    mapping: Object.fromEntries(
      result.proposal.uses.map(({ field, columns }) => [field, columns.map(({ name }) => name)]),
    ),
    rows: report.rows,
    accepted: report.clean + report.doubtful,
    doubtful: report.doubtful,
    rejected: report.rejected,
  };
  collectGarbage();
  const published = await store.publish(result.hydrants, meta);
  if (published.outcome === 'older')
    throw new ImportRefused(
      problem('inventory-older-edition', '', { editionAt: published.current.editionAt }),
    );
  const recorded = deps.recordLoad ? await deps.recordLoad(published.edition, meta) : false;
  return { edition: published.edition, recorded };
}
