import { levels, type Finding } from '../../../../shared/layers/findings.ts';
import type { LayerKind } from '../../../../shared/layers/kinds.ts';
import type { LayerResult } from '../../../../shared/layers/readLayer.ts';
import { say, sayProblem, type Locale } from '../../../../shared/words/index.ts';
import { reportCsv, writeReportText } from '../writeReport.ts';

/** Findings of one kind that are shown on the terminal; a report has all of them. */
const shown = 5;

const whereOf = ({ row, line, featureId }: Finding, locale: Locale): string =>
  say(locale, 'layers.where', { row, line, featureId: featureId ?? 'none' });

/** Findings by what is wrong, each with its first features and the field that is meant. */
export function findingLines(findings: readonly Finding[], locale: Locale): readonly string[] {
  return [...Map.groupBy(findings, ({ code }) => code)].flatMap(([code, all]) => [
    '',
    say(locale, `layers.level.${levels[code]}`, { count: all.length }),
    ...all
      .slice(0, shown)
      .map(
        (finding) =>
          `  ${whereOf(finding, locale)}${finding.path === '' ? '' : ` · ${finding.path}`} · ${sayProblem(locale, finding)}`,
      ),
    ...(all.length > shown ? [`  ${say(locale, 'layers.more', { count: all.length - shown })}`] : []),
  ]);
}

/** What was read, and what is to be looked at. */
export function reportLines(
  { features, accepted, doubtful, crs, remarks, findings }: LayerResult,
  file: string,
  kind: LayerKind,
  locale: Locale,
): readonly string[] {
  return [
    say(locale, 'layers.file', { file, kind, crs }),
    say(locale, 'layers.counts', { features, accepted, doubtful, rejected: features - accepted }),
    ...remarks.map((remark) => sayProblem(locale, remark)),
    ...findingLines(findings, locale),
    ...(findings.length > 0 ? [''] : []),
  ];
}

/** Every finding as CSV that opens in a spreadsheet. */
export async function writeLayerReport(
  path: string,
  findings: readonly Finding[],
  locale: Locale,
): Promise<void> {
  const fields = ['level', 'feature', 'line', 'id', 'field', 'reason', 'sentence'].map((name) =>
    say(locale, `layers.column.${name}`),
  );
  const data = findings.map((finding) => [
    say(locale, `inventory.level.${levels[finding.code]}`),
    finding.row,
    finding.line,
    finding.featureId ?? '',
    finding.path,
    finding.code.replace('layers-', ''),
    sayProblem(locale, finding),
  ]);
  await writeReportText(path, reportCsv({ fields, data }));
}
