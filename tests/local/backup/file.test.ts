import { readFile, writeFile } from 'node:fs/promises';
import { gunzipSync, gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { checkBackup, rowsOf } from '../../../infra/local/backup/read.ts';
import { restoreBackup } from '../../../infra/local/backup/restore.ts';
import { fact, onHydrant, onStrike } from '../../support/submissions.ts';
import { accept, backUp, inFolder, rowsIn, utility } from './support.ts';

/** A backup of three facts, as it lies on the disk and as its lines. */
async function written(file: string): Promise<{ bytes: Buffer; lines: string[] }> {
  const from = utility({ evidence: new Set(['a1'.repeat(32)]) });
  await accept(from, [
    fact('strike', 1, onStrike(1)),
    fact('party', 2, onStrike(1)),
    fact('inspection', 3, onHydrant('A')),
  ]);
  await backUp(from, file);
  const bytes = await readFile(file);
  return { bytes, lines: gunzipSync(bytes).toString('utf8').trimEnd().split('\n') };
}

const refused = async (file: string): Promise<string> => {
  const into = utility();
  const key = await restoreBackup(into.deps, file, { addMissing: false }).then(
    () => 'restored',
    (error: unknown) => (error as { key?: string }).key ?? String(error),
  );
  expect(await rowsIn(into.tables)).toEqual([]);
  return key;
};
const packed = (lines: readonly string[]): Buffer => gzipSync(lines.map((line) => `${line}\n`).join(''));

describe('a file that is not whole restores nothing', () => {
  it('cut off anywhere', async () => {
    await inFolder(async (at) => {
      const { bytes } = await written(at('b'));
      for (let length = 0; length < bytes.length; length += 61) {
        await writeFile(at('cut'), bytes.subarray(0, length));
        expect(await refused(at('cut')), `${length} bytes of ${bytes.length}`).toBe('backup.cut-off');
      }
    });
  });

  it('cut off after a whole line and packed anew', async () => {
    await inFolder(async (at) => {
      const { lines } = await written(at('b'));
      for (let count = 0; count < lines.length; count += 1) {
        await writeFile(at('cut'), packed(lines.slice(0, count)));
        expect(await refused(at('cut'))).toBe('backup.cut-off');
      }
      await writeFile(at('cut'), gzipSync(lines.join('\n')));
      expect(await refused(at('cut')), 'without its last line feed').toBe('backup.cut-off');
    });
  });

  const first = (lines: string[]): number => lines.findIndex((line) => line.includes('"table"'));
  it.each<[what: string, change: (lines: string[]) => string[], says: string]>([
    ['a row is gone', (lines) => lines.toSpliced(first(lines), 1), 'backup.changed'],
    [
      'a row stands twice',
      (lines) => lines.toSpliced(first(lines), 0, lines[first(lines)]!),
      'backup.changed',
    ],
    [
      'two rows have changed places',
      (lines) => lines.toSpliced(first(lines), 2, lines[first(lines) + 1]!, lines[first(lines)]!),
      'backup.changed',
    ],
    [
      'one letter of a fact is another',
      (lines) => lines.map((line) => line.replace('Corner of Alder', 'Corner of Alders')),
      'backup.changed',
    ],
    [
      'a document is gone',
      (lines) => lines.filter((line) => !line.startsWith('{"evidence"')),
      'backup.changed',
    ],
    ['a line is no JSON', (lines) => lines.toSpliced(2, 0, '{"table":'), 'backup.changed'],
    ['a line is of no kind', (lines) => lines.toSpliced(2, 0, '{"more":1}'), 'backup.changed'],
    [
      'something follows the end',
      (lines) => [...lines, '{"evidence":"' + 'b'.repeat(64) + '"}'],
      'backup.changed',
    ],
    ['it has two ends', (lines) => [...lines, lines.at(-1)!], 'backup.changed'],
    [
      'its end counts another number',
      (lines) => lines.map((line) => line.replace('"submissions":3', '"submissions":4')),
      'backup.changed',
    ],
    [
      'its day is another',
      (lines) => lines.map((line) => line.replace('2026-03-05T06', '2026-03-05T07')),
      'backup.changed',
    ],
    [
      'it is of a later format',
      (lines) => lines.map((line) => line.replace('"format":1', '"format":2')),
      'backup.newer',
    ],
    ['its head is gone', (lines) => lines.slice(1), 'backup.not-one'],
    ['it is another program’s', () => ['{"backupOf":"something else","format":1}'], 'backup.not-one'],
  ])('%s', async (_, change, says) => {
    await inFolder(async (at) => {
      const { lines } = await written(at('b'));
      const changed = change(lines);
      expect(changed).not.toEqual(lines);
      await writeFile(at('changed'), packed(changed));
      expect(await refused(at('changed'))).toBe(says);
    });
  });

  it.each<[what: string, bytes: Uint8Array, says: string]>([
    ['no gzip', Buffer.from('{"backupOf":"hydrant-strike-ledger"}\n'), 'backup.not-one'],
    ['nothing in it', Buffer.alloc(0), 'backup.cut-off'],
  ])('%s', async (_, bytes, says) => {
    await inFolder(async (at) => {
      await writeFile(at('other'), bytes);
      expect(await refused(at('other'))).toBe(says);
    });
  });

  it('no file, or a folder', async () => {
    await inFolder(async (at) => {
      expect(await refused(at('absent'))).toBe('backup.file-unreadable');
      expect(await refused(at('.'))).toBe('backup.file-unreadable');
    });
  });

  it('packed anew and otherwise the same is whole', async () => {
    await inFolder(async (at) => {
      const { lines } = await written(at('b'));
      await writeFile(at('again'), packed(lines));
      const whole = await checkBackup(at('again'));
      expect(whole.end.rows).toMatchObject({ submissions: 3, personal: 2 });
      expect(whole.evidence).toEqual(['a1'.repeat(32)]);
      let rows = 0;
      for await (const { key } of rowsOf(at('again'))) rows += key.length / 2;
      expect(rows).toBe(Object.values(whole.end.rows).reduce((sum, count) => sum + count, 0));
    });
  });
});
