import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differences } from '../../shared/verify/printed/differences.ts';
import { joined } from '../../shared/verify/printed/joined.ts';
import { plain } from '../../shared/verify/printed/plain.ts';

/** What the gaps say of two texts, put together again. */
function rebuilt(wanted: string, found: string): string {
  let at = 0;
  let text = '';
  for (const { wantedFrom, wantedTo, foundFrom, foundTo } of differences(wanted, found)) {
    text += wanted.slice(at, wantedFrom) + found.slice(foundFrom, foundTo);
    at = wantedTo;
  }
  return text + wanted.slice(at);
}

describe('differences of two texts', () => {
  it('with the gaps exchanged one text is the other, whatever they are', () => {
    const signs = fc.string({ unit: fc.constantFrom('a', 'b', '1', '2', '$', '.'), maxLength: 300 });
    fc.assert(
      fc.property(signs, signs, (one, other) => rebuilt(one, other) === other),
      { numRuns: 500 },
    );
  });

  it('the same holds for long texts with stretches cut, doubled and moved', () => {
    const long = fc.array(fc.stringMatching(/^[a-z0-9$.,]{1,40}$/), { minLength: 5, maxLength: 60 });
    fc.assert(
      fc.property(long, fc.nat(), fc.nat(), (parts, from, to) => {
        const moved = [...parts];
        const [part = ''] = moved.splice(from % parts.length, 1);
        moved.splice(to % parts.length, 0, part, part.slice(1));
        return rebuilt(parts.join(''), moved.join('')) === moved.join('');
      }),
    );
  });

  it('like texts have none, and one sign is one gap of one sign', () => {
    fc.assert(fc.property(fc.string(), (text) => differences(text, text).length === 0));
    const text = Array.from({ length: 2000 }, (_, index) => `line ${index} $${index * 7}.43`).join('');
    const at = text.indexOf('$7000.43') + 7;
    expect(differences(text, `${text.slice(0, at)}4${text.slice(at + 1)}`)).toEqual([
      { wantedFrom: at, wantedTo: at + 1, foundFrom: at, foundTo: at + 1 },
    ]);
  });

  it('takes no longer than the texts for a page of a long one that is gone', () => {
    const lines = Array.from({ length: 20_000 }, (_, index) => `record ${index} of ${index * index} stands`);
    const started = performance.now();
    const gaps = differences(lines.join(''), [...lines.slice(0, 9000), ...lines.slice(11_000)].join(''));
    expect(gaps).toHaveLength(1);
    expect(performance.now() - started).toBeLessThan(10_000);
  });
});

describe('text as it is compared', () => {
  it.each([
    ['one and a half', '1 1/2 in', '1½ in'],
    ['an eighth, which no face has', '1 1/8', '1⅛'],
    ['a ligature', 'flow', 'ﬂow'],
    ['lines and narrow spaces', '9:14 AM EST', '9:14\u202fAM\n EST'],
    ['a hyphen that does not break', 'D-51', 'D\u201151'],
    // Unicode Standard Annex 15: a letter and its accent, apart and together.
    ['an accent apart', 'Cronología', 'Cronologi\u0301a'],
  ])('%s', (_, one, other) => {
    expect(plain(one)).toBe(plain(other));
  });

  it('never takes one figure for another', () => {
    for (const [one, other] of [
      ['$187.43', '$187.44'],
      ['$1,374', '$1.374'],
      ['-5', '5'],
      ['±2%', '2%'],
    ] as const)
      expect(plain(one)).not.toBe(plain(other));
  });
});

it('quotes a long text around the place that differs', () => {
  const text = `${'many words before it '.repeat(20)}$187.43${' and after it'.repeat(20)}`;
  const pieces = joined([{ text: 'Another piece' }, { text }]);
  const at = pieces.text.indexOf('$187.43');
  const quote = pieces.quote(at, at + 7, 80);
  expect(quote).toContain(' $187.43 ');
  expect(quote.length).toBeLessThan(90);
});
