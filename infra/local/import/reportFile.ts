import type { ImportResult } from '../../../shared/inventory/importFile.ts';
import type { Format } from '../../../shared/inventory/read/format.ts';
import { say, sayProblem, type Locale } from '../../../shared/words/index.ts';
import { levelWord, shortCode, whereOf } from './print.ts';
import { reportCsv, writeReportText } from './writeReport.ts';

/** The report as data: the mapping, the counts, every finding with its sentence. */
export function reportJson(
  { proposal, place, report }: ImportResult,
  file: { name: string; format: Format; sha256: string },
  locale: Locale,
): object {
  const sentence = (each: { code: string; params: Readonly<Record<string, string | number>> }) => ({
    ...each,
    sentence: sayProblem(locale, each),
  });
  return {
    file: { name: file.name, format: file.format, sha256: file.sha256 },
    coordinates: { from: place.from, crs: place.crs.label, why: place.why },
    mapping: proposal.uses.map(({ field, columns, by, unit, dateOrder }) => ({
      field,
      columns: columns.map(({ name }) => name),
      filled: columns.map(({ filled }) => filled),
      by,
      ...(unit ? { unit: unit.bare, unitBy: unit.why, unitsWritten: Object.fromEntries(unit.written) } : {}),
      ...(dateOrder ? { dateOrder } : {}),
    })),
    unmapped: proposal.unmapped.map(({ column, why }) => ({
      column: column.name,
      filled: column.filled,
      why: why ? sentence({ ...why, params: { ...why.params, column: column.name } }) : null,
    })),
    makers: proposal.makers.map(({ column, groups }) => ({ column: column.name, groups })),
    counts: {
      rows: report.rows,
      clean: report.clean,
      doubtful: report.doubtful,
      rejected: report.rejected,
      accepted: report.clean + report.doubtful,
    },
    rejectedBy: report.rejectedBy,
    doubtfulBy: report.doubtfulBy,
    remarks: report.remarks.map(sentence),
    notes: report.notes.map((note) => ({
      ...note,
      sentence: sayProblem(locale, { code: note.code, params: {} }),
    })),
    findings: report.findings.map(({ index: _index, ...finding }) => ({
      ...finding,
      level: levelWord(finding.code, 'en'),
      sentence: sayProblem(locale, finding),
    })),
  };
}

/** Writes every finding to a file: CSV that opens in a spreadsheet, or JSON by the file's ending. */
export async function writeReport(
  path: string,
  result: ImportResult,
  file: { name: string; format: Format; sha256: string },
  locale: Locale,
): Promise<void> {
  if (/\.json$/i.test(path)) {
    await writeReportText(path, `${JSON.stringify(reportJson(result, file, locale), null, 2)}\n`);
    return;
  }
  const column = (name: string): string => say(locale, `inventory.column.${name}`);
  const fields = ['level', 'where', 'row', 'element', 'field', 'column', 'value', 'reason', 'sentence'].map(
    column,
  );
  const data = result.report.findings.map((finding) => [
    levelWord(finding.code, locale),
    whereOf(finding, file.format, locale),
    finding.row,
    finding.element ?? '',
    finding.path,
    finding.column ?? '',
    finding.value ?? '',
    shortCode(finding.code),
    sayProblem(locale, finding),
  ]);
  await writeReportText(path, reportCsv({ fields, data }));
}
