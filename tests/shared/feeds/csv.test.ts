import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { csvColumns, csvFeed } from '../../../shared/feeds/csv.ts';
import type { PublicOutOfService } from '../../../shared/public/snapshot.ts';
import { aStrike, townSources } from '../../support/town.ts';
import { at, editionOf, noneOut, oneOut, twoReasons, uuids } from '../../support/feeds.ts';

const textOf = (sources: Parameters<typeof editionOf>[0]): string => csvFeed(editionOf(sources).snapshot);
const rowsOf = (text: string): Record<string, string>[] => {
  const { data, errors } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
  expect(errors).toEqual([]);
  return data;
};

/** RFC 4180 §2 as its own grammar says it, read without any library. */
function grammarOf(text: string): string[][] {
  const records: string[][] = [];
  let at = 0;
  const field = (): string => {
    if (text[at] !== '"') {
      const [plain = ''] = /^[^",\r\n]*/.exec(text.slice(at)) ?? [];
      at += plain.length;
      return plain;
    }
    const [quoted = ''] = /^"(?:[^"]|"")*"/.exec(text.slice(at)) ?? [];
    at += quoted.length;
    return quoted.slice(1, -1).replaceAll('""', '"');
  };
  while (at < text.length) {
    const record = [field()];
    while (text[at] === ',') {
      at++;
      record.push(field());
    }
    if (text.slice(at, at + 2) !== '\r\n') throw new Error(`no CRLF at ${at}`);
    at += 2;
    records.push(record);
  }
  return records;
}

describe('CSV (RFC 4180)', () => {
  it('is read alike by the standard’s grammar and by a general parser, every record as long as the first', () => {
    for (const sources of [townSources(), twoReasons, noneOut]) {
      const text = textOf(sources);
      const records = grammarOf(text);
      expect(Papa.parse<string[]>(text, { skipEmptyLines: true }).data).toEqual(records);
      expect(records[0]).toEqual([...csvColumns]);
      expect(new Set(records.map(({ length }) => length))).toEqual(new Set([csvColumns.length]));
    }
  });

  it('has a row for each outage, under the id that every feed gives it', () => {
    const rows = rowsOf(textOf(twoReasons)).filter(({ row }) => row === 'outage');
    expect(rows).toMatchObject([
      { outage_id: `urn:uuid:${uuids.main}`, hydrant_id: 'H-2', cause: 'main-shut', expected_back_at: '' },
      { outage_id: `urn:uuid:${uuids.strike}`, hydrant_id: 'H-2', cause: 'strike' },
    ]);
    expect(rows[0]).toMatchObject({ latitude_deg: '39.2012', longitude_deg: '-98.4' });
  });

  it('says what is known of the hydrant and of its return, and whether the inventory has it', () => {
    const { snapshot } = editionOf(oneOut);
    const [hydrant] = snapshot.outOfService;
    const [outage] = hydrant!.outages;
    const told = (more: Partial<PublicOutOfService>): Record<string, string>[] =>
      rowsOf(csvFeed({ ...snapshot, outOfService: [{ ...hydrant!, ...more }] }));
    const [, known] = told({
      testedOn: '2025-06-01',
      outages: [{ ...outage!, stage: 'repaired', heldBy: ['test', 'valve'] }],
    });
    expect(known).toMatchObject({
      in_inventory: 'yes',
      tested_on: '2025-06-01',
      stage: 'repaired',
      held_by: 'test valve',
    });
    const [summary, unknown] = told({ inInventory: false });
    expect(unknown).toMatchObject({ in_inventory: 'no', tested_on: '', held_by: '' });
    expect(summary).toMatchObject({ hydrants_out_of_service: '1', not_in_inventory: '0' });
  });

  it('counts the reports that are in no row yet', () => {
    const since = '2026-03-04T20:03:00.000Z';
    expect(rowsOf(textOf({ ...oneOut, unprojected: [since, at(0)] }))[0]).toMatchObject({
      reports_not_yet_shown: '2',
      not_yet_shown_since: since,
      statement: expect.stringContaining('14:03 CST') as string,
    });
    expect(rowsOf(textOf(oneOut))[0]).toMatchObject({ reports_not_yet_shown: '0', not_yet_shown_since: '' });
  });

  it('counts places that the inventory does not have beside its hydrants, and says so', () => {
    const alsoNowhere = { ...oneOut, strikes: [aStrike(uuids.past, { since: at(-30) })] };
    expect(rowsOf(textOf(alsoNowhere))[0]).toMatchObject({
      hydrants: '3',
      hydrants_out_of_service: '1',
      not_in_inventory: '1',
      statement: expect.stringMatching(
        /^1 of 3 hydrants is out of service\. .*not in the inventory/,
      ) as string,
    });
    const [none] = rowsOf(textOf({ ...alsoNowhere, inventory: null }));
    expect(none).toMatchObject({ hydrants: '', hydrants_out_of_service: '', not_in_inventory: '2' });
    expect(none?.['statement']).toMatch(/^Not set up.* 2 /);
  });

  it('with nothing out is no empty file: one row says so as a checked fact', () => {
    expect(rowsOf(textOf(noneOut))).toMatchObject([
      {
        row: 'summary',
        hydrants: '3',
        hydrants_out_of_service: '0',
        checked_at: '2026-03-04T20:05:00.000Z',
        do_not_rely_after: '2026-03-04T20:25:00.000Z',
        license: 'CC0 1.0',
        statement: expect.stringMatching(/^0 of 3 hydrants are out of service\. Checked /) as string,
      },
    ]);
  });

  it('every row has the time of the check and the time after which it does not hold', () => {
    for (const row of rowsOf(textOf(townSources())))
      expect(row).toMatchObject({
        checked_at: '2026-03-04T20:05:00.000Z',
        do_not_rely_after: '2026-03-04T20:25:00.000Z',
      });
  });

  it('no cell that somebody typed runs as a formula, and a figure below zero stays a figure', () => {
    const text = textOf(twoReasons);
    // OWASP, CSV injection: no cell begins with =, +, @, tab or carriage return; a minus only where a number follows.
    for (const cell of grammarOf(text).flat()) expect(cell).not.toMatch(/^([=+@\t\r]|-(?!\d+(\.\d+)?$))/);
    expect(rowsOf(text)[1]?.['place']).toBe(`'=HYPERLINK("x"), "Oak" & <Fir> St`);
    expect(rowsOf(textOf(oneOut))[1]?.['longitude_deg']).toBe('-98.4');
  });
});
