import { describe, expect, it } from 'vitest';
import { encode } from '../../../site/src/app/form/encode.ts';
import { entries, type Leaf, type List, type Node } from '../../../site/src/app/form/nodes.ts';
import { strikeSpec } from '../../../site/src/app/form/specs/strike.ts';
import { shownQuantity, typingUnit } from '../../../site/src/app/form/quantity.ts';

const allOf = (node: Node): (Leaf | List)[] => entries([node], 'always');

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

  it('kept in inches and typed in feet is asked for and shown in feet, or in meters', () => {
    const jet = strikeSpec.nodes
      .flatMap((node) => allOf(node))
      .find((leaf) => leaf.type === 'quantity' && leaf.name === 'found.jetHeightIn');
    expect(jet).toMatchObject({ unit: 'in', typedIn: 'ft' });
    expect(shownQuantity({ text: '66', unit: 'in' }, 'us', 'ft')).toEqual({ text: '5.5', unit: 'ft' });
    expect(shownQuantity({ text: '5 1/2', unit: 'ft' }, 'us', 'ft')).toEqual({ text: '5 1/2', unit: 'ft' });
    // 66 in × 0.0254 m/in = 1.6764 m.
    expect(shownQuantity({ text: '66', unit: 'in' }, 'metric', 'ft')).toEqual({ text: '1.68', unit: 'm' });
    // What is kept: 30 ft are 360 in, not 30.
    expect(
      encode([jet!], { 'found.jetHeightIn': { text: '30', unit: 'ft' } }, { zone: 'UTC', nullable: [] }).body,
    ).toEqual({ found: { jetHeightIn: 360 } });
  });

  it('that is no number stays as it was typed, with its unit', () => {
    expect(shownQuantity({ text: '28?', unit: 'psi' }, 'metric')).toEqual({ text: '28?', unit: 'psi' });
  });
});
