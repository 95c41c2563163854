import fc from 'fast-check';
import { stat } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { eraseAgain, erase, type EraseDeps } from '../../../functions/erasures/erase.ts';
import { fingerprint } from '../../../functions/project/fingerprint.ts';
import { dynamodbBackupTables, memoryBackupTables } from '../../../functions/stores/backup/backupTables.ts';
import { dynamodbClient } from '../../../functions/stores/dynamodb/client.ts';
import { dynamodbStores } from '../../../functions/stores/dynamodb/stores.ts';
import type { Table } from '../../../functions/stores/dynamodb/table.ts';
import { restoreBackup } from '../../../infra/local/backup/restore.ts';
import { localTableNames, startDynamodb } from '../../../infra/local/dynamodb.ts';
import { newEntry } from '../../../shared/digest/outbox.ts';
import { streamOf } from '../../../shared/submissions/envelope.ts';
import type { FactKind } from '../../../shared/submissions/kinds.ts';
import { cutTable, type Cutter } from '../../support/failingTable.ts';
import { randomSubmissions } from '../../support/randomSubmissions.ts';
import { sampleBodies, sampleSubjectTypes } from '../../support/sampleBodies.ts';
import {
  correction,
  fact,
  onClaim,
  onHydrant,
  onStrike,
  onUtility,
  uuid,
} from '../../support/submissions.ts';
import { accept, backUp, inFolder, rowsIn, takenAt, utility, type Utility } from './support.ts';

/** What must come back is what was put in; a restore's own words are checked against that and never against its output. */
const subjects = { strike: onStrike(1), hydrant: onHydrant('A'), claim: onClaim(2), utility: onUtility };
const odd = 'Señal — 消火栓 🚒 “x” \\ " \u0000 \u2028 \u2029 \u0085 \r\n end';

async function everything(): Promise<Utility> {
  const from = utility();
  const kinds = Object.keys(sampleBodies) as FactKind[];
  const facts = kinds.map((kind, at) => fact(kind, 100 + at, subjects[sampleSubjectTypes[kind]]));
  const parts = Array.from({ length: 5000 }, (_, at) => ({
    partNumber: `P-${at}`,
    title: 'Gasket, full face, for a pipe of some ordinary size',
    unitPriceUsd: '1.00',
    authorityId: 'r-1',
  }));
  const last = fact('valve-operation', 300, onHydrant(`Ñ 消 🚒 "\\`), { note: odd });
  await accept(from, [
    ...facts,
    fact('rate-book', 301, onUtility, { editionId: 'large', stock: parts }),
    last,
    correction(302, last, { ...last.body, note: null }),
  ]);
  await from.stores.unique.take('claim-number', '2026-0001', uuid(2));
  await from.stores.outbox.add(
    newEntry('2026-04-01', 'c-1', { to: 'c-1@example.com', subject: 'Due', text: odd }, new Date(takenAt)),
  );
  await from.stores.calendars.put({
    personId: 'c-1',
    tokenSha256: 'a'.repeat(64),
    locale: 'es',
    madeAt: takenAt,
  });
  for (const { key } of await from.stores.projections.list('exhibits')) from.evidence.add(key);
  return from;
}

describe('a backup that is restored', () => {
  it('into empty tables over HTTP: every row byte for byte, the same kept for reading, every document found', async () => {
    const server = await startDynamodb({ folder: null, port: 0 });
    const client = dynamodbClient(server.endpoint);
    try {
      await inFolder(async (at) => {
        const from = await everything();
        const end = await backUp(from, at('b'));
        const into = utility({
          tables: dynamodbBackupTables(client, localTableNames),
          stores: dynamodbStores(client, localTableNames),
          evidence: from.evidence,
        });
        const restored = await restoreBackup(into.deps, at('b'), { addMissing: false });
        const rows = await rowsIn(from.tables);
        expect(await rowsIn(into.tables)).toEqual(rows);
        expect(rows.some(([, { attributes }]) => attributes['submission'] instanceof Uint8Array)).toBe(true);
        expect(restored).toMatchObject({
          rows: { added: rows.length, same: 0, other: 0, erased: 0 },
          others: [],
          left: 0,
          missing: [],
        });
        expect(await fingerprint(into.stores.projections)).toEqual(
          await fingerprint(from.stores.projections),
        );
        expect(end.projections).toEqual(await fingerprint(from.stores.projections));
        expect(end.evidence).toBe(from.evidence.size);
        expect(end.evidence).toBeGreaterThan(3);

        expect(await into.stores.unique.take('claim-number', '2026-0001', uuid(9))).toMatchObject({
          taken: false,
        });
        expect((await into.stores.outbox.ofDay('2026-04-01'))[0]?.entry.mail.text).toBe(odd);
        expect((await into.stores.calendars.find('a'.repeat(64)))?.locale).toBe('es');
      });
    } finally {
      client.destroy();
      await server.stop();
    }
  }, 60_000);

  it('of any town is the same town', async () => {
    await fc.assert(
      fc.asyncProperty(randomSubmissions(), async (submissions) => {
        const from = utility();
        await accept(from, submissions);
        await inFolder(async (at) => {
          await backUp(from, at('b'));
          const into = utility({ evidence: from.evidence });
          const { kept, left } = await restoreBackup(into.deps, at('b'), { addMissing: false });
          expect(left).toBe(0);
          expect(kept).toEqual(await fingerprint(from.stores.projections));
          expect(await rowsIn(into.tables)).toEqual(await rowsIn(from.tables));
        });
      }),
      { numRuns: 60 },
    );
  }, 120_000);

  it('is readable by its owner alone, stands in no other’s place and leaves nothing unfinished', async () => {
    await inFolder(async (at) => {
      const from = await everything();
      await backUp(from, at('b'));
      const { mode, size } = await stat(at('b'));
      expect(mode & 0o777).toBe(0o600);
      await expect(backUp(from, at('b'))).rejects.toMatchObject({ key: 'backup.file-there' });
      expect((await stat(at('b'))).size).toBe(size);

      const cutter: Cutter = { requests: 0, cut: null };
      const scan = async function* (): AsyncGenerator<never> {
        await Promise.reject(new Error('away'));
        yield undefined as never;
      };
      const away = { ...from.tables, unique: { ...cutTable(from.tables.unique, cutter), scan } };
      await expect(backUp({ ...from, tables: away }, at('c'))).rejects.toThrow('away');
      for (const name of ['c', 'c.unfinished'])
        await expect(stat(at(name))).rejects.toMatchObject({ code: 'ENOENT' });
    });
  });

  it('goes into empty tables only, and says which are not', async () => {
    await inFolder(async (at) => {
      await backUp(await everything(), at('b'));
      const into = utility();
      await into.stores.unique.take('claim-number', '1', 'x');
      const before = await rowsIn(into.tables);
      await expect(restoreBackup(into.deps, at('b'), { addMissing: false })).rejects.toMatchObject({
        key: 'backup.not-empty',
        params: { tables: 'unique' },
      });
      expect(await rowsIn(into.tables)).toEqual(before);
    });
  });

  it('stopped in the middle is completed by adding what is missing', async () => {
    await inFolder(async (at) => {
      const from = await everything();
      await backUp(from, at('b'));
      for (const atRequest of [1, 7, 60]) {
        const into = utility({ evidence: from.evidence });
        const cutter: Cutter = { requests: 0, cut: { atRequest, landed: true } };
        const through = (name: keyof typeof into.tables) => cutTable(into.tables[name], cutter);
        const cut = {
          submissions: through('submissions'),
          personal: through('personal'),
          unique: through('unique'),
          outbox: through('outbox'),
        };
        await expect(
          restoreBackup({ ...into.deps, tables: cut }, at('b'), { addMissing: false }),
        ).rejects.toThrow('cut');
        const { kept, others } = await restoreBackup(into.deps, at('b'), { addMissing: true });
        expect(others).toEqual([]);
        expect(await rowsIn(into.tables)).toEqual(await rowsIn(from.tables));
        expect(kept).toEqual(await fingerprint(from.stores.projections));
      }
    });
  });

  it('adds what is missing, replaces nothing, and names a fact that stands with other content', async () => {
    await inFolder(async (at) => {
      const from = utility();
      const [one, two] = [fact('strike', 1, onStrike(1)), fact('inspection', 2, onHydrant('A'))];
      await accept(from, [one, two]);
      await backUp(from, at('b'));
      const into = utility();
      const changed = { ...two, body: { ...two.body, note: 'Another' } };
      const later = fact('inspection', 3, onHydrant('B'));
      await accept(into, [changed, later]);
      const { rows, others } = await restoreBackup(into.deps, at('b'), { addMissing: true });
      expect(others).toEqual([{ table: 'submissions', key: `hydrant:A ${uuid(2)}` }]);
      expect(rows).toMatchObject({ added: 2, other: 1 });
      const all = [];
      for await (const page of into.stores.ledger.readAll()) all.push(...page);
      expect(all.map(({ submission }) => submission)).toEqual(expect.arrayContaining([one, changed, later]));
    });
  });

  it('puts facts back last: whatever follows them finds what was sent of them', async () => {
    await inFolder(async (at) => {
      const from = utility();
      await accept(from, [fact('strike', 1, onStrike(1)), fact('strike', 2, onStrike(2))]);
      const row = { partition: 'notices', sort: '1', attributes: { state: 'sent' } };
      await from.tables.outbox.put(row, { absent: true });
      await backUp(from, at('b'));

      const tables = memoryBackupTables();
      const stood: boolean[] = [];
      const { submissions } = tables;
      const watched: Table = {
        ...submissions,
        async put(...given) {
          stood.push((await tables.outbox.get(row)) !== null);
          return submissions.put(...given);
        },
      };
      const into = utility({ tables: { ...tables, submissions: watched } });
      await restoreBackup(into.deps, at('b'), { addMissing: false });
      expect(stood).toEqual([true, true]);
    });
  });

  it('names evidence that stood and stands no more, and not what never came', async () => {
    await inFolder(async (at) => {
      const from = utility({ evidence: new Set(['a1'.repeat(32)]) });
      await accept(from, [fact('strike', 1, onStrike(1), { photos: [photo('a1'), photo('b2')] })]);
      expect(await backUp(from, at('b'))).toMatchObject({ evidence: 1, awaited: 1 });
      const into = utility();
      expect(await restoreBackup(into.deps, at('b'), { addMissing: false })).toMatchObject({
        missing: ['a1'.repeat(32)],
      });
    });
  });
});

const photo = (two: string) => ({ ...sampleBodies.strike.photos[0]!, sha256: two.repeat(32) });

describe('what was erased after the backup', () => {
  const target = fact('party', 5, onStrike(1));
  const stream = streamOf(onStrike(1));
  const erasing = (of: Utility): EraseDeps => ({
    ledger: of.stores.ledger,
    unique: of.stores.unique,
    erasures: of.erasures,
    log: () => undefined,
    afterAppend: async () => undefined,
  });
  const asked: Parameters<typeof erase>[1] = {
    stream,
    body: {
      targetIds: [target.submissionId],
      ground: 'court-ordered',
      reference: 'R-1',
      decidedByWorkerId: 'w-9',
    },
    submissionId: uuid(50),
    at: '2026-03-06T09:00:00.000Z',
    personId: 'ops',
  };

  it.each([false, true])(
    'stays erased, and its fact comes back (added to a table: %s)',
    async (addMissing) => {
      await inFolder(async (at) => {
        const from = utility();
        await accept(from, [fact('strike', 4, onStrike(1)), target, fact('party', 6, onStrike(1))]);
        await backUp(from, at('b'));
        await erase(erasing(from), asked);
        const into = utility({ erasures: from.erasures });
        if (addMissing) await accept(into, [fact('inspection', 7, onHydrant('A'))]);
        const restored = await restoreBackup(into.deps, at('b'), { addMissing });
        expect(restored).toMatchObject({ erasures: 1, rows: { erased: 1 } });
        const back = await into.stores.ledger.readStream(stream);
        const byId = new Map(back.map((item) => [item.submission.submissionId, item]));
        expect(byId.get(target.submissionId)).toMatchObject({ erased: true });
        expect(byId.get(uuid(6))).toMatchObject({ erased: false });
        expect(byId.get(uuid(50))).toMatchObject({
          recordedAt: asked.at,
          submission: { kind: 'erasure', body: asked.body },
        });
        expect(JSON.stringify([byId.get(target.submissionId), byId.get(uuid(50))])).not.toMatch(
          /AAA 111|invented driver|P-1|Officer 9/,
        );
        // Nothing personal of it lies in any table, joined to its fact or not.
        expect(
          (await rowsIn(into.tables)).filter(
            ([table, { sort }]) => table === 'personal' && sort.startsWith(target.submissionId),
          ),
        ).toEqual([]);
      });
    },
  );

  it('goes also when the erasing ended after the list and before the fact', async () => {
    const from = utility();
    await accept(from, [target]);
    const broken = {
      ...erasing(from),
      ledger: { ...from.stores.ledger, accept: () => Promise.reject(new Error('ended')) },
    };
    await expect(erase(broken, asked)).rejects.toThrow('ended');
    expect((await from.stores.ledger.readStream(stream))[0]).toMatchObject({ erased: false });
    expect(await eraseAgain(erasing(from))).toBe(1);
    expect(await eraseAgain(erasing(from))).toBe(1);
    const back = await from.stores.ledger.readStream(stream);
    expect(back.map(({ erased }) => erased)).toEqual([true, false]);
    expect(back).toHaveLength(2);
  });

  it('is listed only as it can be read again: the list stays, and every restore reads it', async () => {
    const from = utility();
    await accept(from, [target]);
    const many = Array.from({ length: 201 }, (_, at) => uuid(1000 + at));
    for (const wrong of [
      { ...asked, body: { ...asked.body, targetIds: many } },
      { ...asked, personId: '' },
    ]) {
      await expect(erase(erasing(from), wrong)).rejects.toThrow(/is no erasure/);
      expect(await from.erasures.list()).toEqual([]);
      expect((await from.stores.ledger.readStream(stream)).map(({ erased }) => erased)).toEqual([false]);
    }
  });

  it('cannot be told where the list does not answer: then nothing is restored', async () => {
    const into = utility({
      erasures: { add: async () => undefined, list: () => Promise.reject(new Error('not readable')) },
    });
    await inFolder(async (at) => {
      const from = utility();
      await accept(from, [target]);
      await backUp(from, at('b'));
      await expect(restoreBackup(into.deps, at('b'), { addMissing: false })).rejects.toThrow('not readable');
      expect(await rowsIn(into.tables)).toEqual([]);
    });
  });
});
