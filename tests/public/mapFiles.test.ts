import { describe, expect, test } from 'vitest';
import { mapFiles } from '../../functions/publish/mapFiles.ts';
import { namedIn, type PublishedFile } from '../../functions/publish/pages.ts';
import { buildEdition } from '../../shared/public/build.ts';
import type { MapCellFile, MapIndex } from '../../shared/public/mapIndex.ts';
import { townHydrants, townNow, townSettings, townSources } from '../support/town.ts';

const read = <T>({ bytes }: PublishedFile): T => JSON.parse(new TextDecoder().decode(bytes)) as T;
const editionAt = (minutes: number, hydrants = townHydrants()) =>
  buildEdition(
    townSources(hydrants),
    townSettings,
    new Date(townNow.getTime() + minutes * 60_000).toISOString(),
  );

describe('the files of the map', () => {
  test('are one for a town, with an index that says until when they hold', () => {
    const { cells, index } = mapFiles(editionAt(0), []);
    expect(cells.map(({ key }) => key)).toEqual(['v1/map/c.json']);
    const cell = read<MapCellFile>(cells[0]!);
    const said = read<MapIndex>(index);
    expect(said).toMatchObject({
      checkedAt: '2026-03-04T20:05:00.000Z',
      relyUntil: '2026-03-04T20:25:00.000Z',
      // 412, of which five are out.
      hydrants: 407,
      cells: [{ cell: 'c', stamp: cell.stamp }],
    });
    expect(cell.out.map(({ hydrantId }) => hydrantId)).toEqual(
      expect.arrayContaining(['H-0131', 'H-0132', 'H-0058', null]),
    );
    expect(cell.inService.hydrantId).not.toContain('H-0131');
  });

  test('stay the same to the byte when nothing changed, whatever the hour', () => {
    const [before, after] = [mapFiles(editionAt(0), []), mapFiles(editionAt(5), [])];
    expect(after.cells.map(({ bytes }) => bytes)).toEqual(before.cells.map(({ bytes }) => bytes));
    expect(read(after.index)).not.toEqual(read(before.index));
  });

  test('name no hydrant any more where a cell has gone', () => {
    const city = mapFiles(editionAt(0, townHydrants(3000)), []);
    const standing = [...city.cells.map(({ key }) => key), 'v1/snapshot.json', city.index.key];
    const town = mapFiles(editionAt(5), standing);
    const gone = town.cells.filter(({ key }) => key !== 'v1/map/c.json');
    expect(gone.map(({ key }) => key).toSorted()).toEqual(city.cells.map(({ key }) => key).toSorted());
    for (const file of gone) expect(read(file)).toEqual({ version: 1, gone: true });
  });
});

describe('what an asset needs', () => {
  const asset = (key: string, text: string): PublishedFile => ({
    key,
    bytes: new TextEncoder().encode(text),
    contentType: '',
    cacheControl: '',
    checkedAt: null,
  });

  test('are the scripts that a script imports, however it does', () => {
    const script =
      'import{a as t}from"./parts.Ab-1_.js";import"./styles.js";const b=()=>import(`./late.js`);"./no.js"';
    expect(namedIn(asset('_assets/map.js', script))).toEqual([
      '/_assets/parts.Ab-1_.js',
      '/_assets/styles.js',
      '/_assets/late.js',
    ]);
    expect(namedIn(asset('_assets/site.css', 'a{src:url(/_assets/face.woff2)}'))).toEqual([
      '/_assets/face.woff2',
    ]);
    expect(namedIn(asset('_assets/face.woff2', 'import"./x.js"'))).toEqual([]);
  });
});
