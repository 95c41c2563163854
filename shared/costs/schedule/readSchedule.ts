import Papa from 'papaparse';
import { problem, type Problem } from '../../problems/problem.ts';
import { dollars } from '../book/decimals.ts';
import { doubtsAmong } from './doubts.ts';
import type { ScheduleRow } from './scheduleRow.ts';

/** No published schedule comes near; a limit so that one wrong file cannot stall a page. */
export const MOST_ROWS = 5000;

export interface Schedule {
  readonly rows: readonly ScheduleRow[];
  /** Why nothing could be read: a column that is missing, a file that is none. */
  readonly problems: readonly Problem[];
  readonly counts: Readonly<Record<ScheduleRow['state'], number>>;
}

/** How published schedules and their copies name a column, in small letters and without signs. */
const columns = {
  code: ['costcode', 'code', 'equipmentcode', 'schedulecode', 'eqcode'],
  equipment: ['equipment', 'description', 'equipmentdescription', 'name', 'title'],
  size: ['capacityorsize', 'capacitysize', 'capacity', 'size', 'specifications', 'specification'],
  hp: ['hp', 'horsepower', 'power'],
  notes: ['notes', 'note', 'remarks'],
  unit: ['unitasprinted', 'unit', 'unitofmeasure', 'per'],
  rate: ['rateusd', 'rate', 'rates', 'hourlyrate', 'amount'],
} as const;
type Column = keyof typeof columns;
const needed: readonly Column[] = ['code', 'equipment', 'unit', 'rate'];

const plain = (heading: string): string => heading.toLowerCase().replaceAll(/[^a-z]/g, '');

/** Where each column stands; a heading such as "2025 Rates" counts by its letters. */
function placesOf(headings: readonly string[]): Partial<Record<Column, number>> {
  const known = headings.map(plain);
  const places: Partial<Record<Column, number>> = {};
  for (const column of Object.keys(columns) as Column[]) {
    const at = known.findIndex((heading) => (columns[column] as readonly string[]).includes(heading));
    if (at !== -1) places[column] = at;
  }
  return places;
}

/** `Hour`, `hrs.` and `mile` as the rate book has them; null for a blank, and for what no machine is billed by. */
function unitOf(printed: string): ScheduleRow['unit'] {
  const unit = printed.toLowerCase().replaceAll(/[^a-z]/g, '');
  if (['hour', 'hours', 'hr', 'hrs', 'perhour'].includes(unit)) return 'hour';
  if (['mile', 'miles', 'mi', 'permile'].includes(unit)) return 'mile';
  return ['day', 'days', 'perday'].includes(unit) ? 'day' : null;
}

/** Dollars without their sign and thousands commas; null for anything that could be read in two ways. */
function rateOf(printed: string): string | null {
  const text = printed.replace(/^\$\s*/, '').trim();
  const whole = /^\d{1,3}(,\d{3})+(\.\d+)?$/.test(text) ? text.replaceAll(',', '') : text;
  const rate = whole.startsWith('.') ? `0${whole}` : whole;
  return dollars.safeParse(rate).success ? rate : null;
}

function readRow(cell: (column: Column) => string, line: number): ScheduleRow {
  const code = cell('code');
  const unit = unitOf(cell('unit'));
  const rateUsd = rateOf(cell('rate'));
  const reasons = [
    ...(code === '' ? [problem('schedule-code-missing', 'code')] : []),
    ...(code.length > 64 ? [problem('schedule-code-too-long', 'code')] : []),
    ...(cell('equipment') === '' ? [problem('schedule-name-missing', 'equipment')] : []),
    ...(unit !== null
      ? []
      : cell('unit') === ''
        ? [problem('schedule-unit-blank', 'unit')]
        : [problem('schedule-unit-unknown', 'unit', { unit: cell('unit') })]),
    ...(rateUsd === null ? [problem('schedule-rate-unreadable', 'rate', { rate: cell('rate') })] : []),
    ...(rateUsd !== null && Number(rateUsd) === 0 ? [problem('schedule-rate-zero', 'rate')] : []),
  ];
  return {
    line,
    code,
    equipment: cell('equipment'),
    size: cell('size'),
    hp: cell('hp'),
    notes: cell('notes'),
    unit,
    rateUsd,
    state: reasons.length > 0 ? 'rejected' : 'clean',
    reasons,
  };
}

/**
 * Reads a published equipment schedule from CSV (RFC 4180, names with commas in quotes), with its headings in any
 * order. Every row is given back: clean; doubtful, with what a person should look at; or rejected, with what is missing
 * in it. Nothing is guessed: a blank unit is not taken for an hour.
 */
export function readSchedule(csv: string): Schedule {
  const { data } = Papa.parse<string[]>(csv.replace(/^\uFEFF/, ''), { skipEmptyLines: false });
  const filled = data.map((cells, at) => ({ cells, line: at + 1 }));
  const heading = filled.find(({ cells }) => needed.every((column) => placesOf(cells)[column] !== undefined));
  const counts = { clean: 0, doubtful: 0, rejected: 0 };
  if (!heading) {
    const first = filled.find(({ cells }) => cells.some((cell) => cell.trim() !== ''));
    const known = placesOf(first?.cells ?? []);
    const missing = needed.filter((column) => known[column] === undefined);
    return {
      rows: [],
      counts,
      problems: missing.map((column) =>
        problem('schedule-column-missing', column, { column, headings: columns[column].join(', ') }),
      ),
    };
  }
  const places = placesOf(heading.cells);
  const body = filled.filter(
    ({ cells, line }) => line > heading.line && cells.some((cell) => cell.trim() !== ''),
  );
  if (body.length > MOST_ROWS)
    return { rows: [], counts, problems: [problem('schedule-too-long', '', { most: MOST_ROWS })] };
  const read = body.map(({ cells, line }) =>
    readRow((column) => (cells[places[column] ?? -1] ?? '').replaceAll(/\s+/g, ' ').trim(), line),
  );
  const doubts = doubtsAmong(read);
  const rows = read.map((row): ScheduleRow => {
    const more = doubts.get(row) ?? [];
    return more.length === 0
      ? row
      : {
          ...row,
          state: row.state === 'rejected' ? 'rejected' : 'doubtful',
          reasons: [...row.reasons, ...more],
        };
  });
  for (const { state } of rows) counts[state] += 1;
  return { rows, counts, problems: body.length === 0 ? [problem('schedule-without-rows')] : [] };
}
