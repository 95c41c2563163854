import { describe, expect, it } from 'vitest';
import { readCents, readNumber, writeCents } from '../../../site/src/app/form/number.ts';

// Arithmetic; how people write fractions of an inch is common practice, no source.
describe('a typed number', () => {
  it.each([
    ['42', 42],
    [' 42.5 ', 42.5],
    ['.5', 0.5],
    ['1,234.5', 1234.5],
    ['12,345,678', 12_345_678],
    ['-71.05', -71.05],
    ['2 1/2', 2.5],
    ['2-1/2', 2.5],
    ['2½', 2.5],
    ['4 ½', 4.5],
    ['¾', 0.75],
    ['3/8', 0.375],
  ])('%s is %f', (typed, value) => {
    expect(readNumber(typed)).toBe(value);
  });

  // A comma as decimal sign would be wrong a hundredfold if it were taken for thousands.
  it.each(['', 'abc', '2,5', '1,23', '12,34,567', '1/0', '4..5', '1e3', '0x10', '½½', '2.5 in'])(
    '%j is none',
    (typed) => {
      expect(readNumber(typed)).toBeNull();
    },
  );
});

describe('a typed amount', () => {
  it.each([
    ['12', 1200],
    ['12.5', 1250],
    ['$1,234.56', 123_456],
    ['0.07', 7],
    ['1000000.10', 100_000_010],
  ])('%s is %i cents', (typed, cents) => {
    expect(readCents(typed)).toBe(cents);
  });

  it.each(['', '12.345', '-5', '1,23', 'ten', '1.2.3'])('%j is none', (typed) => {
    expect(readCents(typed)).toBeNull();
  });

  it.each([0, 5, 50, 1250, 123_456, 9_999_999_99])(
    '%i cents come back from how they are written',
    (cents) => {
      expect(readCents(writeCents(cents))).toBe(cents);
    },
  );
});
