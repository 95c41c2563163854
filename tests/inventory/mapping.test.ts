import { describe, expect, it } from 'vitest';
import { importFields } from '../../shared/inventory/mapping/fields.ts';
import { columnNames } from '../../shared/inventory/mapping/names.ts';
import { oneSlipApart } from '../../shared/inventory/mapping/spellings.ts';
import { found, importText, refusal, table } from './support.ts';

const mapped = async (text: string, some = {}): Promise<Record<string, string[]>> => {
  const { proposal } = await importText(text, some);
  return Object.fromEntries(
    proposal.uses.map(({ field, columns }) => [field, columns.map(({ name }) => name)]),
  );
};

describe('columns by name', () => {
  it.each([
    [
      'HydrantID,Latitude,Longitude',
      { hydrantId: ['HydrantID'], latitudeDeg: ['Latitude'], longitudeDeg: ['Longitude'] },
    ],
    [
      'FACILITYID,POINT_Y,POINT_X',
      { hydrantId: ['FACILITYID'], latitudeDeg: ['POINT_Y'], longitudeDeg: ['POINT_X'] },
    ],
    ['Hydrant No.,lat,lng', { hydrantId: ['Hydrant No.'], latitudeDeg: ['lat'], longitudeDeg: ['lng'] }],
    [
      'num_hidrante,latitud,longitud',
      { hydrantId: ['num_hidrante'], latitudeDeg: ['latitud'], longitudeDeg: ['longitud'] },
    ],
  ])('%s', async (header, expected) =>
    expect(await mapped(`${header}\nH-1,41.2,-70.1\nH-2,41.3,-70.2\n`)).toEqual(expected),
  );

  it('prefers latitude and longitude to x and y', async () => {
    expect(
      await mapped('id,x,y,lat,lon\n1,985000,191000,41.2,-70.1\n2,985100,191100,41.3,-70.2\n'),
    ).toMatchObject({ latitudeDeg: ['lat'], longitudeDeg: ['lon'] });
  });
  it('joins a house number and a street', async () =>
    expect(await mapped('id,lat,lon,house_no,street\n1,41.2,-70.1,12,Gull Street\n')).toMatchObject({
      place: ['house_no', 'street'],
    }));
  it('knows names cut to ten characters, and says that it is a guess', async () => {
    const { proposal } = await importText(table('Number_of_', ['Three', 'Two']));
    expect(proposal.uses.find(({ field }) => field === 'outletCount')).toMatchObject({ by: 'cut-name' });
  });
  it('does not take the year of make for the day of installation', async () => {
    const { proposal } = await importText(table('Year_of_Ma', ['2013/04/23', '2001/05/18']));
    expect(proposal.unmapped[0]?.why?.code).toBe('inventory-make-year-not-install');
  });
  it('has no name under two fields, but for those settled by their values', () => {
    const names = importFields.flatMap((field) => columnNames[field]);
    const twice = [...new Set(names.filter((name, place) => names.indexOf(name) !== place))];
    expect(twice.toSorted()).toEqual(['location', 'owner']);
  });
});

describe('columns by value', () => {
  it('finds coordinates under any name when only one of two columns can be a longitude', async () => {
    expect(await mapped('id,p,q\n1,-120.1234,41.2345\n2,-120.2345,41.3456\n')).toMatchObject({
      latitudeDeg: ['q'],
      longitudeDeg: ['p'],
    });
    expect(await refusal(importText('id,p,q\n1,-70.1234,41.2345\n2,-70.2345,41.3456\n'))).toEqual([
      'no-coordinate-columns',
    ]);
  });
  it('reads a column of POINT texts', async () => {
    const { hydrants } = await importText(
      'id,the_geom\nA,POINT (-70.1 41.2)\nB,SRID=4326;POINT(-70.2 41.3)\n',
    );
    expect(hydrants.map(({ longitudeDeg, latitudeDeg }) => [longitudeDeg, latitudeDeg])).toEqual([
      [-70.1, 41.2],
      [-70.2, 41.3],
    ]);
  });
  it.each([
    ['FLOW', ['GOOD', 'POOR', 'GOOD'], 'ratedFlowGpm'],
    ['FLOW', ['1', '2', '4'], 'ratedFlowGpm'],
    ['STATUS', ['gravel', 'asphalt', 'grass'], 'service'],
    ['TYPE', ['A', 'B', 'C'], 'type'],
    ['INSTALL_DATE', ['yes', 'no', 'yes'], 'installedOn'],
    ['ADDRESS', ['12', '14', '16'], 'place'],
  ])('%s of %j is not %s', async (column, values, field) => {
    const { proposal } = await importText(table(column, values));
    expect(proposal.unmapped.find((each) => each.column.name === column)?.why).toMatchObject({
      code: 'inventory-not-what-it-says',
      params: { field },
    });
  });
  it.each([
    ['FLOW', ['500', '1000', '1250'], 'ratedFlowGpm'],
    ['OWNER', ['Private', 'Public', 'Public'], 'private'],
    ['OWNER', ['Tern Harbor Water District', 'City of Gull Point', 'Tern Harbor Water District'], 'owner'],
    ['OWNERSHIP', ['Private', 'City', 'City'], 'private'],
  ])('%s of %j is %s', async (column, values, field) =>
    expect(await mapped(table(column, values))).toMatchObject({ [field]: [column] }),
  );
  it('does not take a column of one value for the id', async () => {
    const rows = Array.from({ length: 12 }, (_, row) => `TOWN,41.${200 + row}01,-70.1`);
    const { proposal, report } = await importText(['unit_id,lat,lon', ...rows].join('\n'));
    expect(proposal.uses.map(({ field }) => field)).not.toContain('hydrantId');
    expect(report.remarks.map(({ code }) => code)).toContain('inventory-no-id-column');
  });
});

describe('the unit of bare numbers', () => {
  const decision = async (column: string, values: readonly string[], some = {}) => {
    const { proposal } = await importText(table(column, values), some);
    const unit = proposal.uses.find(({ field }) => field === 'mainSizeIn')?.unit;
    return unit
      ? [unit.bare, unit.why]
      : (proposal.unmapped.find((each) => each.column.name === column)?.why?.code ?? null);
  };
  it.each([
    ['MAIN_SIZE', ['6', '8', '12'], ['in', 'values']],
    ['MAIN_SIZE', ['100', '150', '300'], ['mm', 'values']],
    ['MAIN_SIZE', ['60', '80', '120'], ['tenth-in', 'values']],
    ['MAIN_SIZE_MM', ['80', '100', '200'], ['mm', 'column-name']],
    ['MAIN_SIZE (in)', ['6', '8'], ['in', 'column-name']],
    ['MAIN_SIZE', ['6 in', '8', '12'], ['in', 'written']],
    // 80, 100 and 200 are sizes both in millimetres and in tenths of an inch.
    ['MAIN_SIZE', ['80', '100', '200'], 'inventory-unit-not-shown'],
  ])('%s %j', async (column, values, expected) => expect(await decision(column, values)).toEqual(expected));
  it('is what the person states', async () =>
    expect(await decision('MAIN_SIZE', ['80', '100', '200'], { units: { mainSizeIn: 'mm' } })).toEqual([
      'mm',
      'stated',
    ]));

  it('doubts bare numbers among several units, and numbers no pipe has', async () => {
    expect(found(await importText(table('MAIN_SIZE', ['6 in', '150 mm', '8'])))).toEqual([
      [4, 'unit-missing'],
    ]);
    expect(
      found(await importText(table('MAIN_SIZE', ['6', '8', '12', '150', '8', '8', '8', '8', '8', '8', '8']))),
    ).toEqual([[5, 'unit-unlikely']]);
    expect(found(await importText(table('FLOW', ['500', '900', '70000 gpm', '750'])))).toEqual([
      [4, 'out-of-range'],
    ]);
  });
  it('takes zero as blank and says so once', async () => {
    const { report, hydrants } = await importText(table('MAIN_SIZE', ['6', '0', '8']));
    expect(hydrants.map(({ mainSizeIn }) => mainSizeIn)).toEqual([6, null, 8]);
    expect(report.notes.map(({ code, rows }) => [code, rows])).toEqual([['inventory-zero-as-blank', 1]]);
  });
});

describe('dates by column', () => {
  it('reads the order that some row shows', async () => {
    const { hydrants } = await importText(table('INSTALL_DATE', ['04/05/2011', '04/25/2011']));
    expect(hydrants.map(({ installedOn }) => installedOn)).toEqual(['2011-04-05', '2011-04-25']);
  });
  it('doubts every row where none does, until it is stated', async () => {
    const text = table('INSTALL_DATE', ['04/05/2011', '05/06/2011']);
    expect(found(await importText(text))).toEqual([
      [2, 'ambiguous-date'],
      [3, 'ambiguous-date'],
    ]);
    const { hydrants } = await importText(text, { dateOrder: 'dmy' });
    expect(hydrants.map(({ installedOn }) => installedOn)).toEqual(['2011-05-04', '2011-06-05']);
  });
});

describe('the person’s own mapping', () => {
  it('wins, joins columns, and leaves a field out', async () => {
    const text = 'id,lat,lon,a,b,type\n1,41.2,-70.1,Gull,Street,Dry Barrel\n';
    const { hydrants } = await importText(text, { map: { place: ['a', 'b'], type: [] } });
    expect(hydrants[0]).toMatchObject({ place: 'Gull Street', type: 'unknown' });
  });
  it('names the columns there are when it names one there is not', async () => {
    await expect(
      importText('id,lat,lon\n1,41.2,-70.1\n', { map: { place: ['street'] } }),
    ).rejects.toMatchObject({
      problems: [
        {
          code: 'inventory-no-such-column',
          path: 'map.place',
          params: { column: 'street', columns: 'id, lat, lon' },
        },
      ],
    });
  });
});

describe('spellings', () => {
  it.each([
    ['northgate', 'nortgate', true],
    ['northgate', 'northgaet', true],
    ['northgate', 'northgate', true],
    ['northgate', 'southgate', false],
    ['anvil', 'annville', false],
  ])('%s and %s', (one, other, expected) => expect(oneSlipApart(one, other)).toBe(expected));
});
