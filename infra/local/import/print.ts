import { levels, type Finding, type FindingCode } from '../../../shared/inventory/check/finding.ts';
import type { CodeCount, ImportReport } from '../../../shared/inventory/check/report.ts';
import type { ImportResult } from '../../../shared/inventory/importFile.ts';
import { commonValues, type ColumnProfile } from '../../../shared/inventory/mapping/profile.ts';
import type { ColumnUse } from '../../../shared/inventory/mapping/propose.ts';
import type { Format } from '../../../shared/inventory/read/format.ts';
import { formatNumber } from '../../../shared/units/format.ts';
import { say, sayProblem, type Locale } from '../../../shared/words/index.ts';

/** Findings of one kind shown on the terminal; the report file has them all. */
const shown = 5;

const quoted = (text: string): string => {
  const line = text.replace(/\s+/g, ' ');
  return `"${line.length > 40 ? `${line.slice(0, 39)}…` : line}"`;
};
const whole = (value: number, locale: Locale): string => formatNumber(value, locale, 0);

/** Where a finding stands, as a person would look for it. */
export function whereOf(
  { row, line, element }: Pick<Finding, 'row' | 'line' | 'element'>,
  format: Format,
  locale: Locale,
): string {
  if (format === 'geojson')
    return `${say(locale, 'inventory.at.feature', { row, line })}${element === null ? '' : ` ${element}`}`;
  return element === null
    ? say(locale, 'inventory.at.line', { line })
    : say(locale, 'inventory.at.element', { line, element });
}

/** The whole report as lines of text. */
export function reportLines(
  result: ImportResult,
  file: { name: string; format: Format },
  locale: Locale,
): string[] {
  const { report } = result;
  return [
    say(locale, 'inventory.title.file', {
      file: file.name,
      format: say(locale, `inventory.format.${file.format}`),
      rows: whole(report.rows, locale),
    }),
    '',
    `${say(locale, 'inventory.title.place')}: ${placeLine(result, locale)}`,
    ...section(
      say(locale, 'inventory.title.mapping'),
      result.proposal.uses.map((use) => mappingLine(use, report.rows, locale)),
    ),
    ...section(say(locale, 'inventory.title.unmapped'), unmappedLines(result, locale)),
    ...section(
      say(locale, 'inventory.title.remarks'),
      report.remarks.map((remark) => sayProblem(locale, remark)),
    ),
    ...section(say(locale, 'inventory.title.notes'), noteLines(report, locale)),
    ...findingLines(
      say(locale, 'inventory.title.rejected', { rows: report.rejected }),
      report.rejectedBy,
      report,
      file.format,
      locale,
    ),
    ...findingLines(
      say(locale, 'inventory.title.doubtful', { rows: report.doubtful }),
      report.doubtfulBy,
      report,
      file.format,
      locale,
    ),
    '',
    say(locale, 'inventory.sum', {
      rows: whole(report.rows, locale),
      clean: whole(report.clean, locale),
      doubtful: whole(report.doubtful, locale),
      rejected: whole(report.rejected, locale),
      accepted: whole(report.clean + report.doubtful, locale),
    }),
  ];
}

const section = (title: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];

function placeLine({ place, proposal }: ImportResult, locale: Locale): string {
  const columns = ['point', 'longitudeDeg', 'latitudeDeg'].flatMap((field) =>
    proposal.uses.filter((use) => use.field === field).flatMap((use) => use.columns.map(({ name }) => name)),
  );
  const params = {
    crs: place.crs.label,
    why: say(locale, `inventory.why.${place.why}`),
    columns: columns.join(', '),
  };
  return say(locale, place.from === 'points' ? 'inventory.place.points' : 'inventory.place.columns', params);
}

function examples(column: ColumnProfile, locale: Locale): string {
  const common = commonValues(column, 3);
  // Counts tell something where values repeat, and nothing in a column of ids.
  const repeat = common.some(([, count]) => count > 1);
  return (
    common
      .map(([text, count]) => (repeat ? `${quoted(text)} ×${whole(count, locale)}` : quoted(text)))
      .join(', ') || '–'
  );
}

function mappingLine(use: ColumnUse, rows: number, locale: Locale): string {
  // Of a house number and a street the street says more; of columns tried in turn, the first.
  const [first] = use.field === 'place' ? use.columns.slice(-1) : use.columns;
  const line = say(locale, 'inventory.mapping.line', {
    field: use.field,
    columns: use.columns.map(({ name }) => name).join(' + '),
    filled: whole(Math.max(0, ...use.columns.map(({ filled }) => filled)), locale),
    rows: whole(rows, locale),
    examples: first ? examples(first, locale) : '–',
  });
  const extra: string[] = [];
  if (use.by === 'cut-name') extra.push(say(locale, 'inventory.mapping.cut-name'));
  if (use.by === 'values') extra.push(say(locale, 'inventory.mapping.by-values'));
  if (use.by === 'stated') extra.push(say(locale, 'inventory.mapping.stated'));
  if (use.unit) {
    const written = use.unit.written.map(([unit, count]) => `${unit} ×${whole(count, locale)}`).join(', ');
    extra.push(say(locale, `inventory.unit.${use.unit.why}`, { unit: use.unit.bare ?? '', written }));
    if (use.unit.commaIsDecimal) extra.push(say(locale, 'inventory.decimal-comma'));
  }
  if (use.dateOrder) extra.push(say(locale, `inventory.date.${use.dateOrder}`));
  return extra.length === 0 ? line : `${line} · ${extra.join(' · ')}`;
}

function unmappedLines({ proposal, report }: ImportResult, locale: Locale): string[] {
  const lines = proposal.unmapped.map(({ column, why }) => {
    const line = say(locale, 'inventory.unmapped.line', {
      column: column.name,
      filled: whole(column.filled, locale),
      rows: whole(report.rows, locale),
      examples: examples(column, locale),
    });
    return why
      ? `${line} · ${sayProblem(locale, { code: why.code, params: { ...why.params, column: column.name } })}`
      : line;
  });
  for (const { column, groups } of proposal.makers) {
    const spellings = groups.reduce((sum, group) => sum + group.spellings.length, 0);
    const widest = groups.reduce(
      (best, group) => (group.spellings.length > best.spellings.length ? group : best),
      groups[0] ?? { usual: '', spellings: [], rows: 0 },
    );
    if (spellings > groups.length) {
      lines.push(
        say(locale, 'inventory.makers', {
          column: column.name,
          spellings,
          names: groups.length,
          example: widest.spellings.slice(0, 4).map(quoted).join(', '),
        }),
      );
    }
  }
  return lines;
}

const noteLines = (report: ImportReport, locale: Locale): string[] =>
  report.notes.map((note) =>
    say(locale, 'inventory.note.line', {
      rows: note.rows,
      column: note.column ?? 'none',
      what: sayProblem(locale, { code: note.code, params: {} }),
      examples: note.examples.length === 0 ? 'none' : note.examples.map(quoted).join(', '),
    }),
  );

/**
 * Findings by reason, then by sentence: a sentence that holds for twenty rows is said once, above the first rows it
 * holds for.
 */
function findingLines(
  title: string,
  counts: readonly CodeCount[],
  report: ImportReport,
  format: Format,
  locale: Locale,
): string[] {
  if (counts.length === 0) return [];
  const lines = ['', title];
  const byCode = Map.groupBy(report.findings, ({ code }) => code);
  for (const { code, rows } of counts) {
    lines.push('', `  ${say(locale, 'inventory.finding.code', { rows, code: shortCode(code) })}`);
    let left = shown;
    const all = byCode.get(code) ?? [];
    for (const [sentence, group] of Map.groupBy(all, (finding) => sayProblem(locale, finding))) {
      if (left === 0) break;
      lines.push(
        `    ${sentence}`,
        ...group.slice(0, left).map((finding) => `      ${cellLine(finding, format, locale)}`),
      );
      left -= Math.min(left, group.length);
    }
    if (all.length > shown)
      lines.push(
        `    ${say(locale, 'inventory.finding.more', { count: whole(all.length - shown, locale) })}`,
      );
  }
  return lines;
}

function cellLine(finding: Finding, format: Format, locale: Locale): string {
  const cell = [finding.column, finding.value === null ? null : quoted(finding.value)]
    .filter((part) => part !== null)
    .join(' ');
  return `${whereOf(finding, format, locale)}${cell === '' ? '' : ` · ${cell}`}`;
}

/** The code without its area, which every one of them shares. */
export const shortCode = (code: FindingCode): string => code.replace('inventory-', '');
export const levelWord = (code: FindingCode, locale: Locale): string =>
  say(locale, `inventory.level.${levels[code]}`);
