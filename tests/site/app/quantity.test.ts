import { describe, expect, it } from 'vitest';
import { shownQuantity, typingUnit } from '../../../site/src/app/form/quantity.ts';

// 1 psi = 6.894757 kPa, 1 in = 25.4 mm, 1 US gpm = 3.785412 L/min (NIST SP 811, second-hand).
describe('a typed quantity', () => {
  it('is typed in the unit of the person’s system', () => {
    expect(typingUnit('psi', 'metric')).toBe('kPa');
    expect(typingUnit('in', 'metric')).toBe('mm');
    expect(typingUnit('psi', 'us')).toBe('psi');
  });

  it('is shown rounded in the other system and untouched in its own', () => {
    expect(shownQuantity({ text: '28', unit: 'psi' }, 'metric')).toEqual({ text: '193', unit: 'kPa' });
    expect(shownQuantity({ text: '2 1/2', unit: 'in' }, 'metric')).toEqual({ text: '63.5', unit: 'mm' });
    expect(shownQuantity({ text: '2 1/2', unit: 'in' }, 'us')).toEqual({ text: '2 1/2', unit: 'in' });
    expect(shownQuantity({ text: '193', unit: 'kPa' }, 'us')).toEqual({ text: '28', unit: 'psi' });
  });

  it('that is no number stays as it was typed, with its unit', () => {
    expect(shownQuantity({ text: '28?', unit: 'psi' }, 'metric')).toEqual({ text: '28?', unit: 'psi' });
  });
});
