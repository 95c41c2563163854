import type { NetworkEdition } from '../../../shared/network/edition.ts';
import type { Matched } from '../../../shared/network/loading.ts';
import type { ModelOutline } from '../../../shared/network/outline.ts';
import type { Problem } from '../../../shared/problems/problem.ts';
import { formatQuantity, type Reader } from '../../../shared/units/format.ts';
import { sayQuantityProblem } from '../../../shared/water/say.ts';
import { say } from '../../../shared/words/index.ts';

/** Hydrants without a node that are shown on the terminal. */
const shown = 5;

/** What was read, what is doubtful of it, and how many hydrants found a node and how far. */
export function reportLines(
  file: string,
  outline: ModelOutline,
  matched: Matched | null,
  doubts: readonly Problem[],
  reader: Reader,
): string[] {
  const { locale } = reader;
  const { nodes, links, headloss, hour, demandGpm, warnings } = outline;
  const doubted = [
    ...doubts.map(({ code, params }) => say(locale, `network.doubt.${code}`, params)),
    ...warnings.map((warning) => say(locale, `network.warning.${warning}`)),
  ];
  return [
    say(locale, 'network.command.file', {
      file,
      nodes: nodes.length,
      links: links.length,
      headloss: headloss.replace('-', ''),
    }),
    say(locale, 'network.command.hour', { hour, demandGpm: formatQuantity(demandGpm, 'gpm', reader) }),
    ...(matched === null ? [say(locale, 'network.command.no-inventory')] : matchedLines(matched, reader)),
    ...(doubted.length === 0
      ? []
      : ['', say(locale, 'network.command.doubtful'), ...doubted.map((line) => `  ${line}`)]),
  ];
}

function matchedLines({ count, found, byMap, byList, without }: Matched, reader: Reader): string[] {
  const { locale } = reader;
  const ft = (value: number): string => formatQuantity(value, 'ft', reader);
  const at = (share: number): number =>
    byMap[Math.min(byMap.length - 1, Math.floor(byMap.length * share))]?.distanceFt ?? 0;
  const last = byMap.at(-1);
  return [
    say(locale, 'network.command.matched', { found, count }),
    ...(byList > 0 ? [`  ${say(locale, 'network.command.listed', { count: byList })}`] : []),
    ...(last
      ? [
          `  ${say(locale, 'network.command.distances', {
            count: byMap.length,
            medianFt: ft(at(0.5)),
            ninthFt: ft(at(0.9)),
            mostFt: ft(last.distanceFt),
            hydrantId: last.hydrantId,
          })}`,
        ]
      : []),
    ...(without.length > 0
      ? [
          `  ${say(locale, 'network.command.unmatched', { count: without.length })}`,
          ...without
            .slice(0, shown)
            .map(({ hydrantId, problem }) => `    ${hydrantId}: ${sayQuantityProblem(problem, reader)}`),
        ]
      : []),
  ];
}

export const loadedLine = ({ edition, meta }: NetworkEdition, { locale }: Reader): string =>
  say(locale, 'network.command.loaded', { edition, datedOn: meta.datedOn });
