import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hydrantFile, hydrantPath, pagePath } from '../../shared/public/address.ts';

describe('the address of a hydrant’s page', () => {
  // Worked by hand from the rule: UTF-8 bytes outside A-Z, 0-9 and inner hyphens as _hex.
  test.each([
    ['H-0142', 'H-0142'],
    ['h 7/2', '_68_207_2f2'],
    ['../etc', '_2e_2e_2f_65_74_63'],
    ['CON', '_43ON'],
    ['-1', '_2d1'],
    ['É', '_c3_89'],
    ['A_5F', 'A_5f5F'],
  ])('of %j is %j', (id, file) => {
    expect(hydrantFile(id)).toBe(file);
  });

  const ids = fc.string({ minLength: 1, maxLength: 64, unit: 'binary' }).filter((id) => id.isWellFormed());

  test('is safe on every file system, whatever the id', () => {
    fc.assert(
      fc.property(ids, (id) => {
        const file = hydrantFile(id);
        expect(file).toMatch(/^[A-Z0-9_a-f-]+(\/[A-Z0-9_a-f-]+)*$/);
        for (const name of file.split('/')) expect(name.length).toBeLessThanOrEqual(120);
      }),
    );
  });

  test('is one-to-one even where upper and lower case are the same', () => {
    const near = fc.stringMatching(/^[aA_\-5fF/ .]{1,6}$/);
    fc.assert(
      fc.property(fc.tuple(near, near), ([one, other]) => {
        if (one === other) return;
        expect(hydrantFile(one).toLowerCase()).not.toBe(hydrantFile(other).toLowerCase());
      }),
      { numRuns: 5000 },
    );
  });

  test('stands at the root in the utility’s language and in a folder in the other', () => {
    expect(pagePath(hydrantPath('H-1'), 'en', 'en')).toBe('/hydrants/H-1/');
    expect(pagePath(hydrantPath('H-1'), 'es', 'en')).toBe('/es/hydrants/H-1/');
    expect(pagePath('', 'en', 'es')).toBe('/en/');
  });
});
