import { convert } from '../../../shared/units/convert.ts';
import type { System } from '../../../shared/units/units.ts';

/**
 * A distance as a person would pace it, ten feet or a meter. The other system's figure is that of the rounded one, so
 * that the two beside each other are one distance: 20 ft is 6 m.
 */
export function paced(feet: number, system: System, own: System): number {
  const inOwn =
    own === 'us' ? Math.round(feet / 10) * 10 : convert(Math.round(convert(feet, 'ft', 'm')), 'm', 'ft');
  return Math.round(system === 'us' ? inOwn : convert(inOwn, 'ft', 'm'));
}
