import type { FigureRow } from './row.ts';

/** By what the desk's figures can be told apart. */
export const groupings = ['payer', 'cause', 'year'] as const;
export type Grouping = (typeof groupings)[number];

export interface Recovery {
  /** The payer kind, cause or year of the strike; `all` for the whole. */
  readonly group: string;
  readonly claims: number;
  readonly billedCents: number;
  readonly recoveredCents: number;
  readonly passedOnCents: number;
  /** Paid beyond what was asked; not in what was recovered. */
  readonly overpaidCents: number;
  /** Asked, and lost by the payer's cut or the utility's giving way; part of it may still be in the balance. */
  readonly cutCents: number;
  readonly writtenOffCents: number;
  readonly balanceCents: number;
  /** Recovered over billed, 0 to 1 ; null when nothing was billed. */
  readonly share: number | null;
}

const groupOf: Record<Grouping, (row: FigureRow) => string> = {
  payer: ({ payerKind }) => payerKind,
  cause: ({ cause }) => cause,
  year: ({ struckOn }) => struckOn.slice(0, 4),
};

/** Claims that were billed, added up. */
export function recovery(rows: readonly FigureRow[], group = 'all'): Recovery {
  const billed = rows.filter(({ firstDemandOn }) => firstDemandOn !== null);
  const sum = (of: (row: FigureRow) => number): number => billed.reduce((total, row) => total + of(row), 0);
  const billedCents = sum(({ askedCents }) => askedCents);
  const recoveredCents = sum((row) => row.recoveredCents);
  return {
    group,
    claims: billed.length,
    billedCents,
    recoveredCents,
    passedOnCents: sum((row) => row.passedOnCents),
    overpaidCents: sum((row) => row.overpaidCents),
    cutCents: sum(({ lost }) => lost.reduce((total, { cents }) => total + cents, 0)),
    writtenOffCents: sum((row) => row.writtenOffCents),
    balanceCents: sum((row) => row.balanceCents),
    share: billedCents === 0 ? null : recoveredCents / billedCents,
  };
}

/** The same by payer, cause or year: years newest first, the others by what was billed. Groups add up to the whole. */
export function recoveryBy(rows: readonly FigureRow[], grouping: Grouping): readonly Recovery[] {
  const groups = new Map<string, FigureRow[]>();
  for (const row of rows) {
    const group = groupOf[grouping](row);
    groups.set(group, [...(groups.get(group) ?? []), row]);
  }
  return [...groups]
    .map(([group, members]) => recovery(members, group))
    .filter(({ claims }) => claims > 0)
    .sort((a, b) =>
      grouping === 'year'
        ? b.group.localeCompare(a.group)
        : b.billedCents - a.billedCents || a.group.localeCompare(b.group),
    );
}
