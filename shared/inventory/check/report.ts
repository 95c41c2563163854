import type { Problem } from '../../problems/problem.ts';
import { levels, type Finding, type FindingCode, type Findings, type NoteCount } from './finding.ts';

/** Findings of one code together. */
export interface CodeCount {
  readonly code: FindingCode;
  /** Rows that carry it. */
  readonly rows: number;
}

/** What became of every row. `rows = clean + doubtful + rejected` always, or the import itself is at fault. */
export interface ImportReport {
  readonly rows: number;
  readonly clean: number;
  /** In the inventory, each with at least one finding to look at. */
  readonly doubtful: number;
  readonly rejected: number;
  /** Every finding on a rejected or doubtful row, in the order of the file. */
  readonly findings: readonly Finding[];
  readonly rejectedBy: readonly CodeCount[];
  /** A row can carry several doubts, so these may add up to more than `doubtful`. */
  readonly doubtfulBy: readonly CodeCount[];
  readonly notes: readonly NoteCount[];
  /** About the file as a whole. */
  readonly remarks: readonly Problem[];
}

/**
 * @throws Error when the counts do not add up: a row was lost, which is a fault of the program and must not pass as an
 * inventory
 */
export function summarise(
  rows: number,
  accepted: number,
  findings: Findings,
  remarks: readonly Problem[],
): ImportReport {
  let [doubtful, rejected] = [0, 0];
  for (const level of findings.rowLevels) {
    if (level === 1) doubtful += 1;
    else if (level === 2) rejected += 1;
  }
  if (accepted + rejected !== rows)
    throw new Error(`${rows} rows were read, but ${accepted} accepted and ${rejected} rejected`);
  // A rejected row is answered by why it was rejected; doubts about its values no longer matter to anyone.
  const kept = findings.list
    .filter(({ code, index }) => findings.rowLevels[index] !== 2 || levels[code] === 'rejected')
    .sort((one, other) => one.index - other.index);
  const by = (level: 'rejected' | 'doubt'): CodeCount[] => {
    const rowsOf = new Map<FindingCode, Set<number>>();
    for (const { code, index } of kept) {
      if (levels[code] !== level) continue;
      const seen = rowsOf.get(code);
      if (seen) seen.add(index);
      else rowsOf.set(code, new Set([index]));
    }
    return [...rowsOf]
      .map(([code, seen]) => ({ code, rows: seen.size }))
      .sort((one, other) => other.rows - one.rows);
  };
  return {
    rows,
    clean: rows - doubtful - rejected,
    doubtful,
    rejected,
    findings: kept,
    rejectedBy: by('rejected'),
    doubtfulBy: by('doubt'),
    notes: [...findings.notes.values()].sort((one, other) => other.rows - one.rows),
    remarks,
  };
}
