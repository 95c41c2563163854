import { convert } from '../units/convert.ts';
import type { System } from '../units/units.ts';

/**
 * A distance as a person would pace it, ten feet or a meter. The other system's figure is that of the rounded one, so
 * that the two beside each other are one distance: 20 ft is 6 m.
 */
export function paced(feet: number, system: System, own: System): number {
  const inOwn =
    own === 'us' ? Math.round(feet / 10) * 10 : convert(Math.round(convert(feet, 'ft', 'm')), 'm', 'ft');
  return Math.round(system === 'us' ? inOwn : convert(inOwn, 'ft', 'm'));
}

/**
 * A distance on the ground as the public pages tell it to a reader whose utility measures in `own`: paced below a mile,
 * and in miles or kilometers from there on.
 */
export function toldDistance(
  feet: number,
  system: System,
  own: System,
): { readonly value: number; readonly unit: 'ft' | 'm' | 'mi' } {
  const miles = convert(feet, 'ft', 'mi');
  if (miles >= 1) return { value: miles, unit: 'mi' };
  return { value: paced(feet, system, own), unit: system === 'us' ? 'ft' : 'm' };
}
