import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { levels } from '../../shared/inventory/check/finding.ts';
import { hydrant as hydrantSchema } from '../../shared/inventory/hydrant.ts';
import { hasWords } from '../../shared/words/index.ts';
import { es } from '../../shared/words/es/index.ts';
import { found, importText } from './support.ts';

const rowsOf = (rows: readonly string[]): string => ['id,lat,lon,street', ...rows].join('\n');
const geojson = (
  features: readonly (readonly [id: string | null, ref: string | null, lon: number, lat: number])[],
): string =>
  JSON.stringify({
    type: 'FeatureCollection',
    features: features.map(([id, ref, lon, lat]) => ({
      type: 'Feature',
      ...(id === null ? {} : { id }),
      properties: { ref },
      geometry: { type: 'Point', coordinates: [lon, lat] },
    })),
  });

describe('every hydrant has one id, and its own', () => {
  it('folds case and space when it looks for duplicates', async () => {
    expect(found(await importText(rowsOf(['h-1,41.2,-70.1,a', 'H-1 ,41.3,-70.2,b'])))).toEqual([
      [2, 'duplicate-id'],
      [3, 'duplicate-id'],
    ]);
  });
  it('does not depend on the order of the rows', async () => {
    const rows = ['H-1,41.2,-70.1,a', 'H-1,41.3,-70.2,b', '?,41.4,-70.3,c', ',41.5,-70.4,d'];
    const idsOf = async (order: readonly string[]) =>
      new Map((await importText(rowsOf(order))).hydrants.map(({ place, hydrantId }) => [place, hydrantId]));
    const [forth, back] = [await idsOf(rows), await idsOf(rows.toReversed())];
    for (const [place, id] of forth) expect(back.get(place)).toBe(id);
    expect(forth.get('d')).toBe('@41.50000,-70.40000');
  });
  it('does not give a row the number another one bears', async () => {
    // The second feature has no number of its own, and its record's id is the first one's number.
    const { hydrants } = await importText(
      geojson([
        ['77', '5', -70.1, 41.2],
        ['5', null, -70.2, 41.3],
      ]),
    );
    expect(hydrants.map(({ hydrantId }) => hydrantId)).toEqual(['5', '@41.30000,-70.20000']);
  });
  it('keeps one of two rows without ids on one spot', async () => {
    expect(found(await importText(rowsOf([',41.2,-70.1,a', ',41.2,-70.1,b'])))).toEqual([
      [2, 'duplicate-place-first'],
      [3, 'duplicate-place'],
    ]);
  });
  it('points at two ids on one spot', async () => {
    expect(found(await importText(rowsOf(['H-1,41.2,-70.1,a', 'H-2,41.2,-70.1,b'])))).toEqual([
      [2, 'same-place'],
      [3, 'same-place'],
    ]);
  });
  it('cannot keep an id of 65 characters', async () => {
    expect(
      found(await importText(rowsOf([`${'x'.repeat(65)},41.2,-70.1,a`, `${'y'.repeat(64)},41.3,-70.1,b`]))),
    ).toEqual([[2, 'id-not-usable']]);
  });
  it('points at an id with a remark in it', async () => {
    expect(
      found(await importText(rowsOf(['P309 by the slip,41.2,-70.1,a', 'Hydrant 12,41.3,-70.1,b']))),
    ).toEqual([[2, 'odd-id']]);
  });
  it('calls rows that differ only in the record’s number one row', async () => {
    expect(found(await importText('objectid,id,lat,lon\n1,A,41.2,-70.1\n2,A,41.2,-70.1\n'))).toEqual([
      [3, 'duplicate-row'],
    ]);
  });
});

describe('nothing is lost', () => {
  const cell = (usual: readonly string[]) =>
    fc.oneof(
      { weight: 3, arbitrary: fc.constantFrom(...usual) },
      { weight: 1, arbitrary: fc.string({ maxLength: 8 }).map((text) => text.replace(/["\r\n,]/g, '')) },
    );
  const row = fc.tuple(
    cell(['H-1', 'H-2', 'H-3', '0', '?', '']),
    cell(['41.2', '41.20001', '0', '-70.1', '99', '']),
    cell(['-70.1', '-70.10001', '0', '41.2', '']),
    cell(['Dry Barrel', 'Valve', '']),
    cell(['Active', 'Removed', 'Out of service', '']),
    cell(['6', '8 in', '150', '0']),
    cell(['1998-04-23', '2603-01-01', '4/5/2001']),
  );
  it('rows read = clean + doubtful + rejected, every hydrant fits the schema, ids are unique', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(row, { maxLength: 30 }), async (rows) => {
        const anchor = [
          'A-1,41.2,-70.1,Dry Barrel,Active,6,1998-04-23',
          'A-2,41.21,-70.1,Dry Barrel,Active,6,1998-04-23',
          'A-3,41.22,-70.1,Dry Barrel,Active,6,1998-04-23',
        ];
        // Enough good rows that the file as a whole is taken; the rest may be anything.
        const good = rows.map((_, at) => `G-${at},41.${300 + at},-70.1,Dry Barrel,Active,6,1998-04-23`);
        const text = [
          'id,lat,lon,type,status,main_size,install_date',
          ...anchor,
          ...good,
          ...rows.map((cells) => cells.join(',')),
        ].join('\n');
        const { report, hydrants } = await importText(text);
        const blank = rows.filter((cells) => cells.every((each) => each.trim() === '')).length;
        expect(report.rows).toBe(anchor.length + good.length + rows.length - blank);
        expect(report.clean + report.doubtful + report.rejected).toBe(report.rows);
        expect(hydrants).toHaveLength(report.clean + report.doubtful);
        expect(new Set(hydrants.map(({ hydrantId }) => hydrantId)).size).toBe(hydrants.length);
        for (const each of hydrants) expect(hydrantSchema.safeParse(each).success).toBe(true);
        const told = new Set(report.findings.map(({ row: at }) => at));
        expect(told.size).toBe(report.doubtful + report.rejected);
      }),
      { numRuns: 60 },
    );
  });
});

describe('every finding has its sentence', () => {
  it.each(Object.keys(levels))('%s', (code) => {
    expect(hasWords(`problem.${code}`)).toBe(true);
    expect(es).toHaveProperty([`problem.${code}`]);
  });
});
