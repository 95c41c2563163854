import { describe, expect, it } from 'vitest';
import { isBlank } from '../../shared/inventory/values/blank.ts';
import { readDate } from '../../shared/inventory/values/date.ts';
import { readOutlets } from '../../shared/inventory/values/outlets.ts';
import { readNumber, readQuantity, readUnit, toUnit } from '../../shared/inventory/values/quantity.ts';
import {
  readCountWord,
  readPrivate,
  readRemark,
  readStatus,
  readType,
} from '../../shared/inventory/values/words.ts';
import { today } from './support.ts';

// Expected values are what a person reads in the text: common practice, no source, unless one is named.

describe('numbers', () => {
  it.each([
    ['6', 6],
    ['-70.5', -70.5],
    ['.5', 0.5],
    ['2.', 2],
    ['1,250', 1250],
    ['1,250,000', 1_250_000],
    ['1 250', 1250],
    ['2 1/2', 2.5],
    ['2-1/2', 2.5],
    ['1/2', 0.5],
    ['12 3/4', 12.75],
    ['', null],
    ['six', null],
    ['6x', null],
    ['1e5', null],
    ['0x10', null],
    ['Infinity', null],
    ['1/0', null],
    ['2 1/0', null],
  ])('%j is %j', (text, value) => expect(readNumber(text)).toBe(value));

  it.each([
    ['2,5', 2.5],
    ['1.250,5', 1250.5],
    ['-4,1023', -4.1023],
  ])('%j with a decimal comma is %j', (text, value) => expect(readNumber(text, true)).toBe(value));
});

describe('quantities', () => {
  it.each([
    ['2.5ft', 2.5, 'ft'],
    ['4.5 ft', 4.5, 'ft'],
    ['2.ft', 2, 'ft'],
    ['.5ft', 0.5, 'ft'],
    ['6"', 6, 'in'],
    ['2 1/2"', 2.5, 'in'],
    ['2-1/2 in', 2.5, 'in'],
    ['8 inches', 8, 'in'],
    ['DN150', 150, 'mm'],
    ['DN 150', 150, 'mm'],
    ['150mm', 150, 'mm'],
    ["4'", 4, 'ft'],
    ['350 gpm', 350, 'gpm'],
    ['1,250 GPM', 1250, 'gpm'],
    ['350 m³/h', 350, 'm3/h'],
    ['1000 l/min', 1000, 'L/min'],
    ['17 l/s', 17, 'L/s'],
    ['42', 42, null],
  ])('%j', (text, value, unit) => expect(readQuantity(text)).toEqual({ value, unit, misspelled: false }));

  it('undoes a doubled letter and says so', () =>
    expect(readQuantity('2.5ftt')).toEqual({ value: 2.5, unit: 'ft', misspelled: true }));
  it('names a unit it does not know', () =>
    expect(readQuantity('6 cubits')).toEqual({ unknownUnit: 'cubits' }));
  it.each(['', 'unknown', 'ft', '"', 'NaN'])('%j is none', (text) => expect(readQuantity(text)).toBeNull());
  it('knows tenths of an inch only when told', () => {
    expect(readUnit('tenth-in')?.unit).toBe('tenth-in');
    expect(toUnit(45, 'tenth-in', 'in')).toBe(4.5);
  });
  it.each([
    // NIST SP 811 (2008), appendix B: 1 in = 25.4 mm and 1 ft = 0.3048 m exactly; 1 gal = 3.785412 L.
    [100, 'mm', 'in', 100 / 25.4],
    [1.5, 'm', 'ft', 1.5 / 0.3048],
    [350, 'm3/h', 'gpm', 350_000 / 60 / 3.785412],
  ] as const)('%d %s in %s', (value, from, to, expected) =>
    expect(toUnit(value, from, to)).toBeCloseTo(expected, 3),
  );
});

describe('dates', () => {
  it.each([
    ['2013-04-23', '2013-04-23'],
    ['2013/04/23', '2013-04-23'],
    ['2013-04-23T10:00:00Z', '2013-04-23'],
    ['20130423', '2013-04-23'],
    ['4/23/2013', '2013-04-23'],
    ['4/23/2013 12:00:00 AM', '2013-04-23'],
    ['23/4/2013', '2013-04-23'],
    ['23-Apr-98', '1998-04-23'],
    ['Apr 23, 1998', '1998-04-23'],
    ['4/23/13', '2013-04-23'],
    ['4/23/71', '1971-04-23'],
    ['1987', '1987-01-01'],
    ['1987.0', '1987-01-01'],
    ['1970', '1970-01-01'],
    ['2024-02-29', '2024-02-29'],
    ['05/05/2011', '2011-05-05'],
    // 946684800 s is 2000-01-01T00:00:00Z (POSIX.1-2017, 4.16 Seconds Since the Epoch).
    ['946684800000', '2000-01-01'],
  ])('%j is %s', (text, date) => expect(readDate(text, null, today)).toMatchObject({ date }));

  it.each([
    ['1970-01-01', 'placeholder'],
    ['1/1/1970', 'placeholder'],
    ['12/31/1969 7:00:00 PM', 'placeholder'],
    ['0', 'placeholder'],
    ['1899-12-30', 'placeholder'],
    ['9999-12-31', 'placeholder'],
    ['2603-04-05', 'impossible'],
    ['2023-02-29', 'impossible'],
    ['2013-13-01', 'impossible'],
    ['31/31/2013', 'impossible'],
    ['1203-04-05', 'impossible'],
    ['2026-03-05', 'future'],
    ['04/05/2021', 'ambiguous'],
    ['soon', 'not-a-date'],
    ['13:05', 'not-a-date'],
  ])('%j is %s', (text, fault) => expect(readDate(text, null, today)).toMatchObject({ fault }));

  it('reads the ambiguous in the order of its column, and doubts what contradicts it', () => {
    expect(readDate('04/05/2021', 'mdy', today)).toMatchObject({ date: '2021-04-05' });
    expect(readDate('04/05/2021', 'dmy', today)).toMatchObject({ date: '2021-05-04' });
    expect(readDate('23/04/2021', 'mdy', today)).toMatchObject({ fault: 'impossible' });
  });
  it('marks a year alone and a filled-in century', () => {
    expect(readDate('1987', null, today)).toMatchObject({ yearOnly: true });
    expect(readDate('4/23/71', null, today)).toMatchObject({ century: true });
  });
});

describe('words', () => {
  it.each([
    ['Dry Barrel', 'dry-barrel'],
    ['DRY-BARREL', 'dry-barrel'],
    ['dry_barrel', 'dry-barrel'],
    ['Wet', 'wet-barrel'],
    ['barril húmedo', 'wet-barrel'],
    ['Underground', 'underground'],
    ['flush', 'underground'],
    ['wall', 'wall'],
    ['Standpipe', 'standpipe'],
    ['pillar', 'above-ground'],
    ['Hydrant', 'above-ground'],
    ['FH', 'above-ground'],
    ['Gate Valve', 'not-a-hydrant'],
    ['BLOWOFF', 'not-a-hydrant'],
    ['Blow-off', 'not-a-hydrant'],
    ['FDC', 'not-a-hydrant'],
    ['Air Release Valve', 'not-a-hydrant'],
    ['purple', null],
  ])('type %j is %j', (text, type) => expect(readType(text)).toBe(type));

  it.each([
    ['Active', 'active'],
    ['In Service', 'active'],
    ['Y', 'active'],
    ['Out of Service', 'out'],
    ['Not in service', 'out'],
    ['Inactive', 'out'],
    ['OOS', 'out'],
    ['N', 'out'],
    ['Abandoned in place', 'abandoned'],
    ['Removed', 'deleted'],
    ['RETIRED', 'deleted'],
    ['Proposed', 'planned'],
    ['Not yet installed', 'planned'],
    ['fuera de servicio', 'out'],
    ['??', null],
  ])('status %j is %j', (text, status) => expect(readStatus(text)).toBe(status));

  it.each([
    ['Private', true],
    ['Public', false],
    ['City', false],
    ['Y', true],
    ['maybe', null],
  ])('private %j is %j', (text, value) => expect(readPrivate(text)).toBe(value));

  it.each([
    ['Blow Off Plug', 'blow-off'],
    ['Not for fire use', 'not-for-fire'],
    ['Nicht für die Feuerwehr!', 'not-for-fire'],
    ['hydrant was removed 2011', 'gone'],
    ['check position', 'place-uncertain'],
    ['approximate location', 'place-uncertain'],
    ['Steamer Plug', null],
    ['removed snow', null],
  ])('remark %j is %j', (text, value) => expect(readRemark(text)).toBe(value));

  it.each([
    ['Three', 3],
    ['tres', 3],
    ['ONE', 1],
    ['many', null],
  ])('count %j is %j', (text, value) => expect(readCountWord(text)).toBe(value));

  it.each(['', ' ', '-', 'N/A', '<Null>', 'null', '?', 'Unknown', 'TBD'])('%j says nothing', (text) =>
    expect(isBlank(text)).toBe(true),
  );
  it.each(['0', 'No', 'x'])('%j says something', (text) => expect(isBlank(text)).toBe(false));
});

describe('outlets', () => {
  const hose = { kind: 'hose', diameterIn: 2.5 };
  const pumper = { kind: 'pumper', diameterIn: 4.5 };
  it.each([
    ['2-2.5, 1-4.5', [hose, hose, pumper]],
    ['2 x 2 1/2", 1 x 4 1/2"', [hose, hose, pumper]],
    ['(2) 2.5 in + (1) 4.5 in', [hose, hose, pumper]],
    ['two 2.5 hose; one 4.5 pumper', [hose, hose, pumper]],
    ['1x4.5', [pumper]],
    ['(1) 2 1/2"', [hose]],
    ['2 1/2"', null],
    ['2 1/2', null],
    ['1B/2C', null],
    ['Threaded', null],
    ['9 x 2.5', null],
    ['2 x 25', null],
  ])('%j', (text, outlets) => expect(readOutlets(text)).toEqual(outlets));
});
