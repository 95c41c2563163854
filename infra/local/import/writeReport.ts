import { writeFile } from 'node:fs/promises';
import Papa from 'papaparse';
import { formulaCells } from '../../../shared/csv/formulaCells.ts';
import { ImportRefused } from '../../../shared/inventory/refused.ts';
import { problem } from '../../../shared/problems/problem.ts';

/** Writes a report. Throws `ImportRefused` where it cannot be written; it is asked for before anything is put in force. */
export async function writeReportText(path: string, text: string): Promise<void> {
  try {
    await writeFile(path, text);
  } catch (error) {
    const { code = 'unknown' } = error as NodeJS.ErrnoException;
    throw new ImportRefused(problem('inventory-report-not-written', '--report', { file: path, code }));
  }
}

/** Rows as CSV that opens in a spreadsheet. */
export const reportCsv = (table: {
  readonly fields: readonly string[];
  readonly data: readonly (readonly (string | number)[])[];
}): string =>
  // The mark makes a spreadsheet read it as UTF-8; the pattern keeps a value of the file from running as a formula.
  `\ufeff${Papa.unparse({ fields: [...table.fields], data: table.data.map((row) => [...row]) }, { escapeFormulae: formulaCells })}\r\n`;
