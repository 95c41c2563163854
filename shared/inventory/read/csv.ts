import Papa from 'papaparse';
import { problem } from '../../problems/problem.ts';
import { ImportRefused } from '../refused.ts';
import { Columns, longestRecordChars, type Passed, type RowReader, type SourceRow } from './source.ts';
import { unpackTags } from './hstore.ts';

const delimiters = [',', ';', '\t', '|'];

/** A first line `sep=;` is how a spreadsheet states the delimiter. */
const separatorLine = /^sep=(.)\r?\n/i;

/**
 * The delimiter of a CSV text, from its first lines: `,`, `;`, tab or `|`.
 *
 * @throws ImportRefused when none of them gives more than one column.
 */
export function sniffDelimiter(head: string): string {
  const stated = separatorLine.exec(head)?.[1];
  if (stated !== undefined) return stated;
  // The last line of the sample may be cut; leaving it out keeps its missing columns from counting.
  const whole = head.slice(0, Math.max(head.lastIndexOf('\n'), head.lastIndexOf('\r')) + 1) || head;
  // The library's own guess wants every line alike; one torn line must not hide the delimiter of the rest.
  const guesses = delimiters.map((delimiter) => {
    const rows = Papa.parse<string[]>(whole, { delimiter, preview: 50, skipEmptyLines: true }).data;
    const width = rows[0]?.length ?? 0;
    return { delimiter, width, alike: rows.filter((row) => row.length === width).length };
  });
  const best = guesses
    .filter(({ width }) => width > 1)
    .sort((one, other) => other.alike - one.alike || other.width - one.width)[0];
  if (!best) throw new ImportRefused(problem('inventory-no-delimiter'));
  return best.delimiter;
}

/** Reads CSV of any delimiter, quoted or not, LF, CRLF or CR, with a header line. Lines are counted as an editor counts them. */
export class CsvReader implements RowReader {
  readonly passed: Passed = { blankLines: 0, otherElements: 0 };
  readonly statedCrs = null;
  readonly #columns = new Columns();
  readonly #delimiter: string;
  readonly #newline: '\n' | '\r';
  #rest = '';
  #line = 1;
  #width: number | null = null;
  #endings: number | null = null;

  constructor(head: string) {
    this.#delimiter = sniffDelimiter(head);
    this.#newline = head.includes('\n') ? '\n' : head.includes('\r') ? '\r' : '\n';
  }

  get columns(): readonly string[] {
    return this.#columns.names;
  }

  push(text: string): SourceRow[] {
    return this.#read(text, true);
  }

  end(): SourceRow[] {
    const rows = this.#read('', false);
    if (this.#width === null) throw new ImportRefused(problem('inventory-empty'));
    return rows;
  }

  #read(text: string, more: boolean): SourceRow[] {
    let input = this.#rest + text;
    if (this.#line === 1 && this.#width === null && separatorLine.test(input)) {
      input = input.replace(separatorLine, '');
      this.#line = 2;
    }
    if (input === '') return [];
    const parser = new Papa.Parser({ delimiter: this.#delimiter, newline: this.#newline });
    const parsed = parser.parse(input, 0, more) as {
      data: string[][];
      meta: { cursor: number };
      errors: readonly { readonly code: string; readonly row: number; readonly index: number }[];
    };
    for (const { code, row, index } of parsed.errors) {
      const opened = (): number => this.#line + input.slice(0, index).split(this.#newline).length - 1;
      const torn = parsed.data[row]?.some(
        (field) =>
          field.includes(this.#newline) && input.startsWith(field.slice(0, field.search(/["\r\n]/)), index),
      );
      // Closed by the file's end, or by the mark that opens another field lines later: what lies between is lost, and
      // nobody can say how much of it was hydrants.
      if (code === 'MissingQuotes' || (code === 'InvalidQuotes' && torn === true))
        throw new ImportRefused(problem('inventory-quote-never-closed', '', { line: opened() }));
    }
    this.#rest = more ? input.slice(parsed.meta.cursor) : '';
    if (this.#rest.length > longestRecordChars) {
      throw new ImportRefused(
        problem('inventory-quote-never-closed', '', { line: this.#line + parsed.data.length }),
      );
    }
    const rows: SourceRow[] = [];
    for (const fields of parsed.data) {
      const row = this.#take(fields);
      if (row) rows.push(row);
    }
    return rows;
  }

  #take(fields: string[]): SourceRow | null {
    const line = this.#line;
    this.#line += 1;
    const last = fields.length - 1;
    for (let place = 0; place <= last; place += 1) {
      let field = fields[place] ?? '';
      // A record over several lines (an address in quotes) moves the count on.
      if (field.includes(this.#newline)) this.#line += field.split(this.#newline).length - 1;
      if (place === last && field.endsWith('\r')) field = field.slice(0, -1);
      fields[place] = field.trim();
    }
    if (fields.every((field) => field === '')) {
      this.passed.blankLines += 1;
      return null;
    }
    if (this.#width === null) {
      this.#header(fields);
      return null;
    }
    return this.#row(fields, line, this.#width);
  }

  #header(names: readonly string[]): void {
    // Data where names belong would turn the first hydrant into column names and lose it.
    if (names.filter((name) => name !== '' && Number.isFinite(Number(name))).length * 2 > names.length) {
      throw new ImportRefused(problem('inventory-no-header', '', { line: this.#line - 1 }));
    }
    names.forEach((name, place) => {
      const wanted = name === '' ? `column ${place + 1}` : name;
      let given = wanted;
      for (let copy = 2; this.#columns.names.includes(given); copy += 1) given = `${wanted} (${copy})`;
      this.#columns.placeOf(given);
    });
    this.#width = names.length;
  }

  #row(fields: string[], line: number, width: number): SourceRow {
    const more = fields.length - width;
    // Some programs end every line in a delimiter; the first row shows it.
    this.#endings ??= more > 0 && fields.slice(width).every((field) => field === '') ? more : 0;
    const tooMany = more > 0 && (more !== this.#endings || fields.slice(width).some((field) => field !== ''));
    const values = more > 0 ? fields.slice(0, width) : fields;
    const params = { found: fields.length, expected: width };
    // Tags packed into one field become columns of their own, behind those of the header.
    for (let place = 0; place < values.length; place += 1) {
      const tags = values[place]?.includes('=>') ? unpackTags(values[place] ?? '') : null;
      for (const [key, value] of tags ?? []) values[this.#columns.placeOf(key)] = value;
    }
    return {
      row: line,
      line,
      featureId: null,
      point: null,
      values,
      // Too many: a delimiter inside an unquoted field has shifted the rest, so no value can be trusted. Too few: some
      // programs leave off empty columns at the end.
      fault: tooMany ? problem('inventory-too-many-columns', '', params) : null,
      doubt: more < 0 ? problem('inventory-too-few-columns', '', params) : null,
    };
  }
}
