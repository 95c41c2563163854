import { describe, expect, test } from 'vitest';
import { withPart, type KnownPart } from '../../../site/src/app/form/scannedPart.ts';

/** What a scanned part does to the list; common practice of a store's counter, no source. */
const known: KnownPart[] = [
  { partNumber: 'BW-GSK', description: 'Gasket set', places: ['Truck 1'] },
  { partNumber: 'BW-BK', description: 'Breakaway kit', places: ['Truck 1', 'Yard'] },
];
const row = (more: object) => ({ partNumber: 'BW-GSK', quantity: '1', 'source.from': 'stock', ...more });

describe('a scanned part', () => {
  test('is added as the lists spell it, from the one shelf that has it', () => {
    expect(withPart({ parts: [] }, ' bw-gsk', known)).toEqual({
      is: 'added',
      partNumber: 'BW-GSK',
      description: 'Gasket set',
      quantity: 1,
      parts: [
        {
          partNumber: 'BW-GSK',
          description: 'Gasket set',
          quantity: '1',
          'source.from': 'stock',
          'source.location': 'Truck 1',
        },
      ],
    });
  });
  test('of several shelves, nobody guesses which', () => {
    expect(withPart({}, 'BW-BK', known).parts[0]).toMatchObject({ 'source.location': '' });
  });
  test('scanned again is one more', () => {
    const { parts, is, quantity } = withPart({ parts: [row({ quantity: '2' })] }, 'BW-GSK', known);
    expect([is, quantity, parts]).toEqual(['more', 3, [row({ quantity: '3' })]]);
  });
  test('a number that cannot be read is left to the person', () => {
    const { parts, quantity } = withPart({ parts: [row({ quantity: 'two' })] }, 'BW-GSK', known);
    expect([quantity, parts]).toEqual([null, [row({ quantity: 'two' })]]);
  });
  test('one bought on an invoice is not the one from the shelf', () => {
    expect(withPart({ parts: [row({ 'source.from': 'invoice' })] }, 'BW-GSK', known).parts).toHaveLength(2);
  });
  test('one that no list has keeps its number and asks what it is', () => {
    expect(withPart({ parts: [{ quantity: '1' }] }, 'XX-9', known)).toMatchObject({
      is: 'unknown',
      parts: [{ partNumber: 'XX-9', description: '' }],
    });
  });
});
