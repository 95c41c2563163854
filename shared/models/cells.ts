import { problem, type Problem } from '../problems/problem.ts';
import { choices, columnsOf, type LineKind, type ModelColumn } from './columns.ts';
import type { SheetLine } from './sheet.ts';

/** What a spreadsheet writes for a formula that it could not work out. */
const formulaFault = /^#(N\/A|REF!|VALUE!|DIV\/0!|NAME\?|NUM!|NULL!)/i;
/** A part number of digits that a spreadsheet rounded, or took a letter E in it for a power of ten. */
const rounded = /^-?\d(?:[.,]\d+)?E[+-]\d+$/i;
/** A fraction or a part number that a spreadsheet took for a day. */
const looksLikeDay =
  /^(?:\d{1,2}-(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*|(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*-\d{2,4}|\d{1,4}[/-]\d{1,2}[/-]\d{2,4})$/i;

type Choice = keyof typeof choices;
type ChoiceOf<C extends Choice> = (typeof choices)[C][keyof (typeof choices)[C]];

const wordOf = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s_·*-]+/g, ' ');

/** Reads the cells of one line and keeps what is wrong with them, with line, column and what would be right. */
export class Cells {
  readonly #line: SheetLine;
  readonly problems: Problem[] = [];

  constructor(line: SheetLine) {
    this.#line = line;
  }

  get at(): number {
    return this.#line.at;
  }

  wrong(column: ModelColumn, code: string, params: Problem['params'] = {}): null {
    this.problems.push(problem(code, `${this.at}:${column}`, { line: this.at, column, ...params }));
    return null;
  }

  has(column: ModelColumn): boolean {
    return this.#line.cells.has(column);
  }

  /** The text of a cell; null where it is empty, or where the spreadsheet has spoilt it. */
  text(column: ModelColumn): string | null {
    const value = this.#line.cells.get(column);
    if (value === undefined) return null;
    if (formulaFault.test(value)) return this.wrong(column, 'models-formula', { value });
    return value;
  }

  /** A code: a spreadsheet turns some into days and powers of ten, and then nobody can tell what they were. */
  code(column: ModelColumn): string | null {
    const value = this.text(column);
    if (value === null) return null;
    if (rounded.test(value)) return this.wrong(column, 'models-rounded', { value });
    return looksLikeDay.test(value) ? this.wrong(column, 'models-day', { value }) : value;
  }

  /** A number with a point, or a fraction as it is stamped: `1.5`, `1 1/2`, `15/16`. */
  number(column: ModelColumn): number | null {
    const value = this.text(column);
    if (value === null) return null;
    const [, whole, top, bottom] = /^(?:(\d+)(?: |-))?(\d+)\/(\d+)$/.exec(value) ?? [];
    if (top !== undefined && bottom !== undefined) {
      const part = Number(top) / Number(bottom);
      return Number(bottom) > 0 && part < 1
        ? Number(whole ?? 0) + part
        : this.wrong(column, 'models-not-a-number', { value });
    }
    if (/^\d+(?:\.\d+)?$/.test(value)) return Number(value);
    if (/^\d+,\d+$/.test(value))
      return this.wrong(column, 'models-comma', { value, right: value.replace(',', '.') });
    if (looksLikeDay.test(value)) return this.wrong(column, 'models-day', { value });
    const [, digits, unit] = /^([\d.]+)\s*([a-z°"'%-]+)$/i.exec(value) ?? [];
    if (digits !== undefined && unit !== undefined)
      return this.wrong(column, 'models-unit-in-number', { value, digits, unit });
    return this.wrong(column, 'models-not-a-number', { value });
  }

  /** One of the words of a list, however it is spaced or capitalised. */
  choice<C extends Choice>(column: ModelColumn, of: C): ChoiceOf<C> | null {
    const value = this.text(column);
    if (value === null) return null;
    const list: Readonly<Record<string, unknown>> = choices[of];
    const word = Object.keys(list).find((known) => wordOf(known) === wordOf(value));
    return word === undefined
      ? this.wrong(column, 'models-no-such-word', { value, words: Object.keys(list).join(', ') })
      : (list[word] as ChoiceOf<C>);
  }

  /** Empty cells that this kind of line needs, and full ones that it has no use for. */
  settle(kind: LineKind): void {
    const { needs, may } = columnsOf[kind];
    for (const column of needs) if (!this.has(column)) this.wrong(column, 'models-needed', { kind });
    for (const column of this.#line.cells.keys())
      if (!['model', 'line', ...needs, ...may].includes(column))
        this.wrong(column, 'models-not-for-this-line', {
          kind,
          columns: [...needs, ...may].join(', '),
        });
  }
}
