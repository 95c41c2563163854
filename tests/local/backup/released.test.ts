import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rebuild } from '../../../functions/project/rebuild.ts';
import { BACKUP_FORMAT } from '../../../infra/local/backup/format.ts';
import { checkBackup } from '../../../infra/local/backup/read.ts';
import { restoreBackup } from '../../../infra/local/backup/restore.ts';
import { parseSubmission } from '../../../shared/submissions/submission.ts';
import { rowsIn, utility } from './support.ts';

/**
 * The demo town as earlier versions stored it, row by row: each was made by that version's own `npm start` and read out of
 * its data folder. What is expected is what such a town was: so many facts, all of them readable.
 */
const folder = join(import.meta.dirname, '../../fixtures/released/ledgers');
const facts: Readonly<Record<string, number>> = {
  '2026-11-25T1103.backup': 81,
  '2026-11-25T2052.backup': 282,
};

describe.each(readdirSync(folder))('a ledger of %s', (file) => {
  it('is restored and read whole by this version', async () => {
    const into = utility();
    const { left } = await restoreBackup(into.deps, join(folder, file), { addMissing: false });
    expect(left).toBe(0);
    const all = [];
    for await (const page of into.stores.ledger.readAll()) all.push(...page);
    expect(all).toHaveLength(facts[file] ?? Number.NaN);
    for (const { submission, erased } of all) {
      const parsed = parseSubmission(submission);
      expect(parsed.ok ? [] : [submission.kind, parsed.problems]).toEqual([]);
      expect(erased).toBe(false);
    }
    // Every row of personal fields is some fact's.
    const personal = (await rowsIn(into.tables)).filter(([table]) => table === 'personal');
    expect(personal.length).toBeGreaterThan(20);
    expect((await rebuild(into.deps.projector, { write: false })).differences).toEqual([]);
  });
});

it('a backup of every format ever written is here', async () => {
  const formats = await Promise.all(
    readdirSync(folder).map(async (file) => (await checkBackup(join(folder, file))).head.format),
  );
  expect(new Set<number>(formats)).toEqual(
    new Set(Array.from({ length: BACKUP_FORMAT }, (_, before) => before + 1)),
  );
});
