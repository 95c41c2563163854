import Papa from 'papaparse';
import { problem, type Problem } from '../problems/problem.ts';
import { modelColumns, type ModelColumn } from './columns.ts';

/** A line of the file by its columns; `at` is its number as an editor or a spreadsheet counts it. */
export interface SheetLine {
  readonly at: number;
  readonly cells: ReadonlyMap<ModelColumn, string>;
}

/** A model has tens of lines and a utility tens of models; more is another file. */
export const MOST_SHEET_BYTES = 5_000_000;
const delimiters = [',', ';', '\t', '|'];

const plain = (name: string): string =>
  name
    .replace(/^\ufeff/, '')
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ');
const isColumn = (name: string): name is ModelColumn => (modelColumns as readonly string[]).includes(name);

/** The spreadsheet's own line numbers: a cell of several lines is one row of it, a blank line is one too. */
export function readSheet(text: string): { readonly lines: SheetLine[]; readonly problems: Problem[] } {
  const stated = /^\ufeff?sep=(.)\r?\n/i.exec(text);
  const body = stated ? text.slice(stated[0].length) : text;
  const first = stated ? 2 : 1;
  const { data, errors } = Papa.parse<string[]>(body, {
    ...(stated?.[1] ? { delimiter: stated[1] } : { delimitersToGuess: delimiters }),
  });
  const torn = errors.find(({ code }) => code === 'MissingQuotes' || code === 'InvalidQuotes');
  if (torn)
    return { lines: [], problems: [problem('models-quote-open', '', { line: (torn.row ?? 0) + first })] };
  const [header = [], ...rows] = data;
  const names = header.map(plain);
  const problems = headerProblems(header, names, first);
  if (problems.length > 0) return { lines: [], problems };

  const lines: SheetLine[] = [];
  rows.forEach((row, index) => {
    const at = index + first + 1;
    if (row.every((cell) => cell.trim() === '')) return;
    const beyond = row.slice(names.length).find((cell) => cell.trim() !== '');
    if (beyond !== undefined)
      problems.push(problem('models-too-many-cells', String(at), { line: at, value: beyond }));
    const cells = new Map<ModelColumn, string>();
    names.forEach((name, place) => {
      const cell = (row[place] ?? '').trim();
      if (isColumn(name) && cell !== '') cells.set(name, cell);
    });
    lines.push({ at, cells });
  });
  if (lines.length === 0 && problems.length === 0) problems.push(problem('models-empty', ''));
  return { lines, problems };
}

function headerProblems(header: readonly string[], names: readonly string[], line: number): Problem[] {
  if (!names.includes('model') || !names.includes('line'))
    return [problem('models-no-header', '', { line, columns: modelColumns.join(', ') })];
  const problems: Problem[] = [];
  names.forEach((name, place) => {
    const column = (header[place] ?? '').trim();
    if (name === '') return;
    if (!isColumn(name))
      problems.push(
        problem('models-unknown-column', column, { line, column, columns: modelColumns.join(', ') }),
      );
    else if (names.indexOf(name) !== place)
      problems.push(problem('models-column-twice', column, { line, column }));
  });
  return problems;
}
