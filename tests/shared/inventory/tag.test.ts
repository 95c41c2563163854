import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hydrantOnTag, numberInCode } from '../../../shared/inventory/tag.ts';
import { hydrantFile, hydrantOfFile, hydrantPath } from '../../../shared/public/address.ts';

/** What tags hold is common practice, no source: the bare number, or an address that ends in it. */
describe('the number on a tag', () => {
  test.each([
    ['H-0042', 'H-0042'],
    [' h-0042\r\n', 'H-0042'],
    // ISO/IEC 15424 symbology identifiers: Code 128, QR Code, Data Matrix.
    [']C1H-0042', 'H-0042'],
    [']Q3H-0042', 'H-0042'],
    [']d2H-0042', 'H-0042'],
    ['https://water.example/hydrants/H-0042', 'H-0042'],
    ['https://water.example/hydrants/H-0042/', 'H-0042'],
    ['https://water.example/es/hydrants/H-0042/', 'H-0042'],
    ['HTTPS://WATER.EXAMPLE/H-0042', 'H-0042'],
    ['https://water.example/crew/#/hydrant/H-0042', 'H-0042'],
    ['https://water.example/crew/#/hydrant/H-0042?from=tag', 'H-0042'],
    ['https://water.example/a?id=H-0042', 'H-0042'],
    ['https://water.example/?n=H-0042', 'H-0042'],
    ['https://water.example/H-0042?utm_source=tag', 'H-0042'],
    ['https://water.example/tag/7%2F2', '7/2'],
    ['https://water.example/tag/H_20', 'H_20'],
  ])('%j says %s', (text, number) => {
    expect(hydrantOnTag(text)).toBe(number);
  });

  test.each([
    [''],
    ['   '],
    ['https://water.example/'],
    ['https://'],
    ['https://water.example/%E0%A4%A'],
    ['x'.repeat(65)],
    ['x'.repeat(5000)],
    ['H-\u202e0042'],
    ['H\u000042'],
  ])('%j says none', (text) => {
    expect(hydrantOnTag(text)).toBeNull();
  });

  test('a number is spelt the same when it is read again', () => {
    // Unicode SpecialCasing: the capital of ΰ (U+03B0) is three signs, which compose to Ϋ and an accent.
    expect(hydrantOnTag('\u03b0\u0300')).toBe('\u03ab\u0301\u0300');
  });

  test('a part keeps its own spelling', () => {
    expect(numberInCode('bw-D51 BK')).toBe('bw-D51 BK');
  });

  test('the address of any hydrant’s public page gives its number back, and nothing that is scanned throws', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 30, unit: 'grapheme' }), (text) => {
        const id = text.trim().normalize('NFC').toUpperCase().normalize('NFC');
        if (id === '' || !id.isWellFormed() || hydrantFile(id).includes('/')) return;
        expect(hydrantOfFile(hydrantFile(id))).toBe(id);
        const read = hydrantOnTag(`https://water.example/${hydrantPath(id)}`);
        if (!/[\p{Cc}\p{Cf}\u2028\u2029]/u.test(id) && id.length <= 64) expect(read).toBe(id);
      }),
    );
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => void hydrantOnTag(text)));
    fc.assert(
      fc.property(
        fc.webUrl({ withFragments: true, withQueryParameters: true }),
        (text) => void hydrantOnTag(text),
      ),
    );
  });
});
