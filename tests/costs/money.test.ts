import { describe, expect, it } from 'vitest';
import { groupedDollars } from '../../shared/costs/money.ts';

describe('dollars within a text', () => {
  // How dollars are written in the US (ISO 80000-1 leaves the sign to custom); common practice, no source.
  it.each([
    ['$1048.09', '$1,048.09'],
    ['$999.99', '$999.99'],
    ['$1234567.123456', '$1,234,567.123456'],
    ['-$4104.88', '-$4,104.88'],
    ['2 × $1000 = $2000.00', '2 × $1,000 = $2,000.00'],
    ['(1200 gal) × $7.32', '(1200 gal) × $7.32'],
    ['$0.00005', '$0.00005'],
  ])('%s is %s', (text, shown) => expect(groupedDollars(text)).toBe(shown));
});
