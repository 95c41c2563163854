import { join } from 'node:path';
import { openFile } from '../../infra/local/import/openFile.ts';
import type { Finding } from '../../shared/inventory/check/finding.ts';
import { noChoices, type ImportChoices } from '../../shared/inventory/choices.ts';
import { importFile, type ImportFile, type ImportResult } from '../../shared/inventory/importFile.ts';
import { sniffFormat } from '../../shared/inventory/read/format.ts';
import { ImportRefused } from '../../shared/inventory/refused.ts';

/** The day on which every test of the import takes place. */
export const today = '2026-03-04';
export const choices = (some: Partial<ImportChoices> = {}): ImportChoices => ({
  ...noChoices(today),
  ...some,
});

const folder = join(import.meta.dirname, '..', 'fixtures', 'inventory');
export const fixture = (name: string): string => join(folder, name);

/** A file made of text, cut into pieces of `piece` characters. */
export function fileOf(text: string, piece = 1 << 16, name = 'made.csv'): ImportFile {
  return {
    name,
    head: text.slice(0, 65_536),
    format: sniffFormat(text.slice(0, 65_536)),
    remarks: [],
    async *text() {
      for (let at = 0; at < text.length; at += piece) yield text.slice(at, at + piece);
    },
  };
}

export const importText = (
  text: string,
  some: Partial<ImportChoices> = {},
  piece?: number,
): Promise<ImportResult> => importFile(fileOf(text, piece), choices(some));

export const importFixture = async (name: string, some: Partial<ImportChoices> = {}): Promise<ImportResult> =>
  importFile(await openFile(fixture(name)), choices(some));

/** `[row, code]` of each finding, the code without its area, in the order of the file. */
export const found = ({ report }: ImportResult): [row: number, code: string][] =>
  report.findings.map(({ row, code }) => [row, short(code)]);
export const short = (code: Finding['code']): string => code.replace('inventory-', '');

/** The codes with which a file or a choice is refused. */
export async function refusal(import_: Promise<unknown>): Promise<string[]> {
  try {
    await import_;
  } catch (error) {
    if (error instanceof ImportRefused)
      return error.problems.map(({ code }) => code.replace('inventory-', ''));
    throw error;
  }
  return ['not refused'];
}

/** A CSV of clean hydrants with these further columns, one value a row, at places of their own. */
export const table = (column: string, values: readonly string[]): string =>
  [
    'hydrant_id,lat,lon,' + column,
    ...values.map((value, row) => `H-${row + 1},41.${200 + row}01,-70.10001,${value}`),
  ].join('\n');
