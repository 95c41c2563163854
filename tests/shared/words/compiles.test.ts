import { IntlMessageFormat } from 'intl-messageformat';
import { describe, expect, it } from 'vitest';
import { en } from '../../../shared/words/en/index.ts';
import { es } from '../../../shared/words/es/index.ts';

/** A message that ICU MessageFormat cannot read throws where it is shown: a screen would be gone, not a word. */
describe.each([
  ['en-US', en],
  ['es-US', es],
])('every message in %s', (locale, catalogue) => {
  it('can be read', () => {
    const bad = Object.entries(catalogue).flatMap(([key, text]) => {
      try {
        new IntlMessageFormat(text, locale);
        return [];
      } catch (error) {
        return [`${key}: ${String(error)}`];
      }
    });
    expect(bad).toEqual([]);
  });
});
