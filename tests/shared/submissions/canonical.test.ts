import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson, firstDifference } from '../../../shared/submissions/canonical.ts';

describe('canonical JSON', () => {
  it('sorts keys at every depth, by UTF-16 code units (RFC 8785 section 3.2.3)', () => {
    // The example of RFC 8785 section 3.2.3, without its number formatting, which is JSON.stringify's here.
    const given = {
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    };
    expect(canonicalJson(given)).toBe(
      '{"\\r":"Carriage Return","1":"One","\u0080":"Control","ö":"Latin Small Letter O With Diaeresis","€":"Euro Sign","😀":"Emoji: Grinning Face","\ufb33":"Hebrew Letter Dalet With Dagesh"}',
    );
  });

  it('is the same for the same JSON, and reads back as the value', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = JSON.stringify(value);
        const reordered = JSON.parse(text, (_key, inner: unknown) =>
          typeof inner === 'object' && inner !== null && !Array.isArray(inner)
            ? Object.fromEntries(Object.entries(inner).reverse())
            : inner,
        ) as unknown;
        expect(canonicalJson(reordered)).toBe(canonicalJson(JSON.parse(text)));
        expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(text));
      }),
    );
  });

  it('a field left out and one that is undefined are the same', () => {
    expect(canonicalJson({ a: undefined, b: [undefined, 1] })).toBe('{"b":[null,1]}');
  });
});

describe('the first difference', () => {
  const rows: readonly [unknown, unknown, string | null][] = [
    [{ a: 1 }, { a: 1 }, null],
    [{ a: 1, b: 2 }, { b: 2, a: 1 }, null],
    [{ a: undefined }, {}, null],
    [{ a: null }, {}, 'a'],
    [{ a: null }, { a: null }, null],
    [{ a: 0 }, { a: -0 }, null],
    [{ b: 1, a: 1 }, { b: 2, a: 2 }, 'a'],
    [{ a: { b: [1, { c: 'x' }] } }, { a: { b: [1, { c: 'y' }] } }, 'a.b.1.c'],
    [{ a: [1, 2] }, { a: [1, 2, 3] }, 'a.2'],
    [{ a: [1, 2, 3] }, { a: [1, 2] }, 'a.2'],
    [{ a: [] }, { a: {} }, 'a'],
    [{ a: '1' }, { a: 1 }, 'a'],
    [{ a: '' }, { a: null }, 'a'],
    [{ a: { b: 1 } }, { a: 'b' }, 'a'],
    [1, 2, ''],
    ['é', 'e\u0301', ''],
  ];
  it.each(rows)('of %j and %j is at %j', (a, b, path) => {
    expect(firstDifference(a, b)).toBe(path);
    expect(firstDifference(b, a)).toBe(path);
  });

  it('is none exactly when the canonical texts are the same', () => {
    const small = fc.jsonValue({ maxDepth: 2, stringUnit: fc.constantFrom('a', 'b') });
    fc.assert(
      fc.property(small, small, (a, b) => {
        const [x, y] = [JSON.parse(JSON.stringify(a)), JSON.parse(JSON.stringify(b))] as [unknown, unknown];
        expect(firstDifference(x, y) === null).toBe(canonicalJson(x) === canonicalJson(y));
        expect(firstDifference(x, structuredClone(x))).toBeNull();
      }),
      { numRuns: 1000 },
    );
  });
});
