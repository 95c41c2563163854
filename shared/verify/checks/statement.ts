import { footingProblems } from '../../costs/footing.ts';
import type { Statement } from '../../costs/statement.ts';
import { statementOf } from '../../costs/statement.ts';
import type { PacketContent } from '../../packet/schema.ts';
import { finding, type Finding } from '../finding.ts';
import { same, shown } from './same.ts';

type Line = PacketContent['statement']['lines'][number];

/** What the packet's own work and rates come to, computed anew; null with the reason when they come to nothing. */
export function recomputed({
  basis,
}: Pick<PacketContent, 'basis'>): { statement: Statement } | { reason: string } {
  try {
    return { statement: statementOf(basis.work, basis.editions) };
  } catch (error) {
    return { reason: (error as Error).message.slice(0, 200) };
  }
}

/** The statement against its own work and rates, line by line, and against its own sums. */
export function statementFindings(content: PacketContent): Finding[] {
  const { statement } = content;
  const sums = footingProblems(statement).map(({ path, params }): Finding => {
    const { printedCents = 0, sumCents = 0 } = params;
    const section = statement.sections[Number(/\d+/.exec(path)?.[0] ?? -1)]?.section;
    return section === undefined
      ? finding('total-sum', 'statement.totalCents', { printedCents, sumCents })
      : finding('section-sum', `statement.${path}`, { section, printedCents, sumCents });
  });
  const own = recomputed(content);
  if ('reason' in own) return [...sums, finding('not-computable', 'basis', { reason: own.reason })];
  return [
    ...lineFindings(statement.lines, own.statement.lines),
    ...sums,
    ...restFindings(statement, own.statement),
  ];
}

function lineFindings(file: readonly Line[], own: Statement['lines']): Finding[] {
  const ownById = new Map(own.map((line) => [line.lineId, line]));
  const fileIds = new Set(file.map(({ lineId }) => lineId));
  const compared = file.flatMap((line, index): Finding[] => {
    const path = `statement.lines.${index}`;
    const { lineId } = line;
    const computed = ownById.get(lineId);
    if (!computed) return [finding('line-added', path, { lineId, description: line.description })];
    return [...amountFinding(line, computed, path), ...fieldFindings(line, computed, path)];
  });
  const missing = own
    .filter(({ lineId }) => !fileIds.has(lineId))
    .map(({ lineId, description, amountCents }) =>
      finding('line-missing', 'statement.lines', { lineId, description, ownCents: amountCents ?? 0 }),
    );
  const double = file.length - fileIds.size;
  return [...compared, ...missing, ...(double > 0 ? [finding('line-twice', 'statement.lines', {})] : [])];
}

function amountFinding(file: Line, own: Statement['lines'][number], path: string): Finding[] {
  if (file.amountCents === own.amountCents) return [];
  const { lineId } = file;
  const at = `${path}.amountCents`;
  if (own.amountCents === null || file.amountCents === null)
    return [
      finding('line-field', at, {
        lineId,
        field: 'amountCents',
        file: shown(file.amountCents),
        own: shown(own.amountCents),
      }),
    ];
  return [finding('line-amount', at, { lineId, fileCents: file.amountCents, ownCents: own.amountCents })];
}

function fieldFindings(file: Line, own: Statement['lines'][number], path: string): Finding[] {
  const mine: Readonly<Record<string, unknown>> = { ...own };
  return Object.entries(file)
    .filter(([field, value]) => field !== 'amountCents' && !same(value, mine[field]))
    .map(([field, value]) =>
      finding('line-field', `${path}.${field}`, {
        lineId: file.lineId,
        field,
        file: shown(value),
        own: shown(mine[field]),
      }),
    );
}

/** Everything of a statement but its lines. */
function restFindings(file: PacketContent['statement'], own: Statement): Finding[] {
  const sections = own.sections.flatMap(({ section, subtotalCents }): Finding[] => {
    const index = file.sections.findIndex((item) => item.section === section);
    const found = file.sections[index];
    if (!found)
      return [finding('section-missing', 'statement.sections', { section, ownCents: subtotalCents })];
    return found.subtotalCents === subtotalCents
      ? []
      : [
          finding('section-amount', `statement.sections.${index}.subtotalCents`, {
            section,
            fileCents: found.subtotalCents,
            ownCents: subtotalCents,
          }),
        ];
  });
  const more =
    file.sections.length > own.sections.length ? [finding('section-added', 'statement.sections')] : [];
  const total =
    file.totalCents === own.totalCents
      ? []
      : [
          finding('total-amount', 'statement.totalCents', {
            fileCents: file.totalCents,
            ownCents: own.totalCents,
          }),
        ];
  const rest = (['currency', 'timeZone', 'strike', 'complete', 'water', 'problems', 'notes'] as const)
    .filter((field) => !same(file[field], own[field]))
    .map((field) =>
      finding('statement-field', `statement.${field}`, {
        field,
        file: shown(file[field]),
        own: shown(own[field]),
      }),
    );
  return [...sections, ...more, ...total, ...rest];
}
