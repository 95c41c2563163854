import { describe, expect, it } from 'vitest';
import { plateMatches } from '../../../shared/search/search.ts';

describe('a plate', () => {
  it.each([
    ['HTX 4471', 'htx4471', true],
    ['HTX-4471', '4471', true],
    ['htx·4471', 'HTX 44', true],
    ['HTX 4471', '44 72', false],
    // Two signs would match half the town.
    ['HTX 4471', '44', false],
    [null, '4471', false],
  ])('%s answers %s: %s', (plate, find, answers) => expect(plateMatches(plate, find)).toBe(answers));
});
