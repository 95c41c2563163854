import { problem, type Problem } from '../problems/problem.ts';
import type { ImportChoices } from './choices.ts';
import { RowCheck, type Draft } from './check/draft.ts';
import { Findings } from './check/finding.ts';
import { summarise, type ImportReport } from './check/report.ts';
import { settle } from './check/settle.ts';
import type { Hydrant } from './hydrant.ts';
import { Profiler, type Profile } from './mapping/profile.ts';
import { propose, type Proposal } from './mapping/propose.ts';
import { decidePlace, type PlaceDecision } from './place/decide.ts';
import { readerFor, type Format } from './read/format.ts';
import type { RowReader, SourceRow } from './read/source.ts';
import { ImportRefused } from './refused.ts';

/** A file as the import sees it: text that can be read more than once. */
export interface ImportFile {
  readonly name: string;
  readonly format: Format;
  /** The first few thousand characters. */
  readonly head: string;
  /** The whole text from its beginning, a byte-order mark removed, in pieces of any size. */
  readonly text: () => AsyncIterable<string>;
  /** Things the person should know about how the bytes were read (an assumed encoding). */
  readonly remarks: readonly Problem[];
}

/** More rows than any utility has hydrants; a larger file is not an inventory of one. */
const mostRows = 2_000_000;

async function everyRow(
  file: ImportFile,
  use: (row: SourceRow, names: readonly string[]) => void,
): Promise<RowReader> {
  const reader = readerFor(file.format, file.head);
  let count = 0;
  const each = (rows: readonly SourceRow[]): void => {
    count += rows.length;
    if (count > mostRows) throw new ImportRefused(problem('inventory-too-many-rows', '', { most: mostRows }));
    for (const row of rows) use(row, reader.columns);
  };
  for await (const text of file.text()) each(reader.push(text));
  each(reader.end());
  if (count === 0) throw new ImportRefused(problem('inventory-empty'));
  return reader;
}

/** What the columns hold. Reads the file once. */
export async function profileFile(file: ImportFile): Promise<Profile> {
  const profiler = new Profiler();
  const reader = await everyRow(file, (row, names) => profiler.add(row, names));
  return profiler.finish(reader.columns, reader.statedCrs, reader.passed);
}

export interface ImportResult {
  readonly profile: Profile;
  readonly proposal: Proposal;
  readonly place: PlaceDecision;
  readonly hydrants: readonly Hydrant[];
  readonly report: ImportReport;
}

/**
 * Reads a file other people made into hydrants, and says of every row that is not one, or only with a doubt, which and
 * why. Nothing is written; the file is read twice, once for what its columns hold and once for its rows.
 *
 * @throws ImportRefused when the file as a whole cannot be taken (no coordinates, projected with no CRS stated, …)
 */
export async function importFile(file: ImportFile, choices: ImportChoices): Promise<ImportResult> {
  const profile = await profileFile(file);
  const proposal = propose(profile, choices);
  const place = decidePlace(profile, proposal, choices);
  const findings = new Findings();
  const check = new RowCheck(proposal, place, choices, file, findings);
  const drafts: Draft[] = [];
  let rows = 0;
  await everyRow(file, (row, names) => {
    const draft = check.check(row, rows, names);
    if (draft) drafts.push(draft);
    rows += 1;
  });
  const idColumn = proposal.uses.find(({ field }) => field === 'hydrantId')?.columns[0]?.name ?? null;
  const hydrants = settle(
    drafts,
    place.crs,
    choices,
    idColumn,
    file.format === 'geojson' ? 'feature' : 'line',
    findings,
  );
  const noIds =
    idColumn === null
      ? [problem(profile.featureIds > 0 ? 'inventory-no-id-column-source' : 'inventory-no-id-column')]
      : [];
  const report = summarise(rows, hydrants.length, findings, [
    ...file.remarks,
    ...place.remarks,
    ...noIds,
    ...passedOver(profile),
  ]);
  return { profile, proposal, place, hydrants, report };
}

function passedOver({ passed }: Profile): Problem[] {
  const remarks: Problem[] = [];
  if (passed.blankLines > 0) remarks.push(problem('inventory-blank-lines', '', { count: passed.blankLines }));
  if (passed.otherElements > 0)
    remarks.push(problem('inventory-other-elements', '', { count: passed.otherElements }));
  return remarks;
}
