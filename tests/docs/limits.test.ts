import { expect, it } from 'vitest';
import { holdsGenerated } from './holdsGenerated.ts';
import { limitsTable, throttleTable } from './limitsTable.ts';

const page = 'docs/limits.md';

it('the page of limits says what the code holds to', () => {
  holdsGenerated(page, 'limits', limitsTable());
  holdsGenerated(page, 'throttles', throttleTable());
});

it('and no line of it is empty', () => {
  expect(`${limitsTable()}\n${throttleTable()}`).not.toMatch(/NaN|undefined|Infinity|\| *\|/);
});
