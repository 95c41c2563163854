import { describe, expect, it } from 'vitest';
import { findHydrants } from '../../../shared/inventory/find.ts';
import type { Hydrant } from '../../../shared/inventory/hydrant.ts';

const hydrant = (hydrantId: string, place: string | null): Hydrant => ({ hydrantId, place }) as Hydrant;
const stock = [
  hydrant('A-112', 'Osier & Third'),
  hydrant('A-12', 'Peña Ave at Gate 12'),
  hydrant('12', null),
  hydrant('12-B', 'Third and Main'),
  hydrant('B-7', 'Main St 1200'),
];
const ids = (typed: string, most = 10): string[] =>
  findHydrants(stock, typed, most).map(({ hydrantId }) => hydrantId);

describe('finding a hydrant by what was typed', () => {
  it('gives the number itself first, then numbers that begin with it, hold it, then places', () => {
    expect(ids('12')).toEqual(['12', '12-B', 'A-112', 'A-12', 'B-7']);
    expect(ids('12', 2)).toEqual(['12', '12-B']);
  });
  it('looks past case and accents, and for all words in any order', () => {
    expect(ids('PENA')).toEqual(['A-12']);
    expect(ids('main third')).toEqual(['12-B']);
    expect(ids('  a-12 ')).toEqual(['A-12']);
  });
  it('finds nothing for nothing', () => {
    expect(ids('')).toEqual([]);
    expect(ids('   ')).toEqual([]);
    expect(ids('zzz')).toEqual([]);
  });
});
