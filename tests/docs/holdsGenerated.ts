import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { repository, withGenerated } from './generated.ts';

/** Compares a generated part with the page; `UPDATE_DOCS=1` writes it instead. */
export function holdsGenerated(file: string, name: string, part: string): void {
  const page = readFileSync(join(repository, file), 'utf8');
  const anew = withGenerated(page, name, part);
  if (process.env['UPDATE_DOCS'] === '1') writeFileSync(join(repository, file), anew);
  else expect(page, 'out of date: UPDATE_DOCS=1 npm run unit -- tests/docs').toBe(anew);
}
