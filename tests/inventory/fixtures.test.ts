import { describe, expect, it } from 'vitest';
import { found, importFixture } from './support.ts';

// Expected counts and findings follow from how each file was written by hand (tests/fixtures/inventory), line by line.

describe('a table with the traits of real inventories', () => {
  it('answers every row: 30 = 1 clean + 20 doubtful + 9 rejected', async () => {
    const { report, hydrants } = await importFixture('traits.csv');
    expect(report).toMatchObject({ rows: 30, clean: 1, doubtful: 20, rejected: 9 });
    expect(hydrants).toHaveLength(21);
  });

  it('gives each line its reason', async () => {
    expect(found(await importFixture('traits.csv'))).toEqual([
      [2, 'duplicate-id'],
      [3, 'impossible-date'],
      [4, 'placeholder-date'],
      [4, 'not-a-number'],
      [5, 'future-date'],
      [6, 'at-zero'],
      [7, 'not-a-hydrant'],
      [8, 'deleted-asset'],
      [9, 'abandoned'],
      [10, 'duplicate-id'],
      [12, 'duplicate-row'],
      [13, 'duplicate-id-first'],
      [14, 'duplicate-id-same-place'],
      [15, 'placeholder-id'],
      [16, 'says-out-of-service'],
      [16, 'placeholder-id'],
      [17, 'placeholder-id'],
      [18, 'placeholder-id'],
      [19, 'placeholder-id'],
      [20, 'placeholder-id'],
      [21, 'placeholder-id'],
      [22, 'placeholder-id'],
      [23, 'swapped-axes'],
      [24, 'far-from-rest'],
      [25, 'not-in-degrees'],
      [26, 'no-coordinates'],
      [27, 'too-many-columns'],
      [28, 'not-a-count'],
      [28, 'unit-unlikely'],
      [29, 'perhaps-blow-off'],
      [30, 'planned'],
      [31, 'too-few-columns'],
    ]);
  });

  it('keeps what it read and leaves out what it doubts', async () => {
    const { hydrants } = await importFixture('traits.csv');
    const at = (row: number) => hydrants.find(({ source }) => source.row === row);
    expect(at(11)).toEqual({
      hydrantId: 'H-010',
      latitudeDeg: 41.2011,
      longitudeDeg: -70.1011,
      place: '4 Tern Road',
      type: 'dry-barrel',
      service: 'active',
      modelId: null,
      installedOn: '2003-05-21',
      outlets: [],
      outletCount: 3,
      mainSizeIn: 8,
      lateralSizeIn: null,
      lateralLengthFt: null,
      buryDepthFt: null,
      isolationValveId: null,
      owner: null,
      private: false,
      lastInspectedOn: null,
      ratedFlowGpm: null,
      source: { file: 'traits.csv', row: 11 },
    });
    expect(at(3)).toMatchObject({ installedOn: null, mainSizeIn: 8 });
    expect(at(4)).toMatchObject({ installedOn: null, mainSizeIn: null, private: true });
    expect(at(9)).toMatchObject({ service: 'abandoned' });
    expect(at(16)).toMatchObject({ service: 'inactive', hydrantId: '@41.20150,-70.10150' });
    expect(at(30)).toMatchObject({ service: 'planned', installedOn: null });
  });

  it('gives clashing and missing ids a stable name', async () => {
    const { hydrants } = await importFixture('traits.csv');
    const ids = new Map(hydrants.map(({ hydrantId, source }) => [source.row, hydrantId]));
    expect(ids.get(2)).toBe('H-001 (@41.20010,-70.10010)');
    expect(ids.get(10)).toBe('H-001 (@41.20100,-70.10100)');
    expect(ids.get(17)).toBe('@41.20160,-70.10160');
    expect(new Set(ids.values()).size).toBe(hydrants.length);
  });

  it('does not take a FLOW of words for a flow, and lists the spellings of the makers', async () => {
    const { proposal } = await importFixture('traits.csv');
    expect(proposal.uses.map(({ field }) => field)).not.toContain('ratedFlowGpm');
    const flow = proposal.unmapped.find(({ column }) => column.name === 'FLOW');
    expect(flow?.why?.code).toBe('inventory-not-what-it-says');
    expect(proposal.makers[0]?.groups.map(({ usual, spellings }) => [usual, spellings.length])).toEqual([
      ['Northgate', 3],
      ['Anvil & Bell', 4],
    ]);
  });

  it('takes the swapped row when told to', async () => {
    const { hydrants } = await importFixture('traits.csv', { accept: new Set(['swapped-axes']) });
    expect(hydrants.find(({ source }) => source.row === 23)).toMatchObject({
      latitudeDeg: 41.2022,
      longitudeDeg: -70.1022,
    });
  });
});

describe('the other files', () => {
  it('reads semicolons, decimal commas, Latin-1 and Spanish words', async () => {
    const { hydrants, report } = await importFixture('semicolon-latin1.csv');
    expect(report).toMatchObject({ rows: 3, clean: 3, doubtful: 0, rejected: 0 });
    expect(report.remarks.map(({ code }) => code)).toEqual([
      'inventory-not-utf8',
      'inventory-datum-assumed',
      'inventory-blank-lines',
    ]);
    expect(hydrants.map(({ place }) => place)).toEqual(['Peñón Alto 3', 'Calle del Faro 9', 'Muelle Viejo']);
    expect(hydrants.map(({ type }) => type)).toEqual(['dry-barrel', 'wet-barrel', 'underground']);
    expect(hydrants.map(({ installedOn }) => installedOn)).toEqual([
      '1998-04-23',
      '2001-11-05',
      '1975-06-13',
    ]);
    expect(hydrants.map(({ latitudeDeg }) => latitudeDeg)).toEqual([43.3712045, 43.3722045, 43.3732045]);
    // NIST SP 811 (2008), appendix B.8: 1 gal (US) = 3.785412 L.
    expect(hydrants.map(({ ratedFlowGpm }) => ratedFlowGpm)).toEqual(
      [1000 / 3.785412, (17 * 60) / 3.785412, 1000 / 3.785412].map((gpm) => expect.closeTo(gpm, 3)),
    );
  });

  it('reads a byte-order mark, quotes and a record over two lines', async () => {
    const { hydrants, report } = await importFixture('bom-quoted.csv');
    expect(report).toMatchObject({ rows: 3, clean: 3 });
    expect(hydrants.map(({ place, source }) => [source.row, place])).toEqual([
      [2, 'Corner of "Old" Wharf, north side'],
      [3, 'Behind the ice house by the slip'],
      [5, 'Ferry Lane'],
    ]);
    expect(hydrants.map(({ mainSizeIn, buryDepthFt }) => [mainSizeIn, buryDepthFt])).toEqual([
      [6, 4.5],
      [8, 5],
      [10, 4],
    ]);
  });

  it('reads state-plane feet with sizes in tenths of an inch', async () => {
    const { hydrants, report } = await importFixture('state-plane.tsv', { crs: 'EPSG:2263' });
    expect(report).toMatchObject({ rows: 5, clean: 3, doubtful: 0, rejected: 2 });
    expect(report.rejectedBy.map(({ code }) => code).toSorted()).toEqual([
      'inventory-at-zero',
      'inventory-swapped-axes',
    ]);
    // PROJ 9.1.1, cs2cs EPSG:2263 EPSG:4326, of (1000000, 200000).
    expect(hydrants[0]?.latitudeDeg).toBeCloseTo(40.71561648, 6);
    expect(hydrants[0]?.longitudeDeg).toBeCloseTo(-73.94318507, 6);
    expect(hydrants[0]).toMatchObject({
      mainSizeIn: 6,
      outlets: [
        { kind: 'hose', diameterIn: 2.5 },
        { kind: 'hose', diameterIn: 2.5 },
        { kind: 'pumper', diameterIn: 4.5 },
      ],
    });
    expect(hydrants[2]?.outlets).toHaveLength(2);
  });

  it('reads GeoJSON behind a variable, with packed tags and coordinates as text', async () => {
    const result = await importFixture('packed-tags.geojson');
    expect(result.report).toMatchObject({ rows: 6, clean: 2, doubtful: 1, rejected: 3 });
    expect(found(result)).toEqual([
      [2, 'mixed-units'],
      [2, 'placeholder-id'],
      [4, 'not-a-hydrant'],
      [5, 'not-a-point'],
      [6, 'no-coordinates'],
    ]);
    expect(
      result.hydrants.map(({ hydrantId, ratedFlowGpm, type }) => [hydrantId, ratedFlowGpm, type]),
    ).toEqual([
      ['P-1', 350, 'dry-barrel'],
      ['node/102', null, 'unknown'],
      ['P-3', 500, 'unknown'],
    ]);
    expect(result.report.findings[0]).toMatchObject({
      line: 7,
      element: 'node/102',
      column: 'flow_capacity',
      value: '350 m³/h',
    });
  });

  it('takes the other unit when told to', async () => {
    const { hydrants } = await importFixture('packed-tags.geojson', { accept: new Set(['mixed-units']) });
    // NIST SP 811 (2008), appendix B.8: 1 gal (US) = 3.785412 L.
    expect(hydrants[1]?.ratedFlowGpm).toBeCloseTo(350_000 / 60 / 3.785412, 2);
  });

  it('reads OSM XML: lifecycle tags, deleted nodes, ways, untagged corners', async () => {
    const result = await importFixture('tags.osm');
    expect(result.report).toMatchObject({ rows: 8, clean: 2, doubtful: 2, rejected: 4 });
    expect(result.profile.passed.otherElements).toBe(2);
    expect(found(result)).toEqual([
      [10, 'not-a-hydrant'],
      [11, 'abandoned'],
      [12, 'deleted-asset'],
      [13, 'deleted-asset'],
      [15, 'not-a-point'],
      [16, 'not-for-fire'],
      [16, 'not-from-main'],
    ]);
    // 100 mm by the tag's definition; 6" as written. 1 in = 25.4 mm exactly.
    expect(result.hydrants.map(({ hydrantId, mainSizeIn }) => [hydrantId, mainSizeIn])).toEqual([
      ['node/1', expect.closeTo(100 / 25.4, 10)],
      ['W-2', 6],
      ['node/5', null],
      ['node/10', null],
    ]);
  });
});
