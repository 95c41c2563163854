import { expect, test } from 'vitest';
import { looksLikeId } from '../../shared/public/looksLikeId.ts';

/** What an id may look like is a rule of this project; no outside source. */
test.each(['TH-0348', 'H 7/2', '#12', 'NW_14.B', '4411', 'ÁREA-3'])('%s looks like an id', (id) => {
  expect(looksLikeId(id)).toBe(true);
});
test.each([
  ['has words', 'PLATE KLM-4411 DRIVER ANN OTHER 555-0199'],
  ['is a name with a number', 'ANN OTHER 5'],
  ['has no digit', 'CORNER'],
  ['is too long', 'A'.repeat(24) + '1'],
  ['has other signs', 'ann@example.com1'],
  ['has a control for direction', 'TH-\u202E0348'],
])('what %s does not', (_, id) => {
  expect(looksLikeId(id)).toBe(false);
});
