import { convert } from '../../../../shared/units/convert.ts';
import { displays } from '../../../../shared/units/format.ts';
import { units, type System, type UnitId } from '../../../../shared/units/units.ts';
import type { TypedQuantity } from './nodes.ts';
import { readNumber } from './number.ts';

/** The unit in which a person of this system types a quantity that is stored in `unit`. */
export const typingUnit = (unit: UnitId, system: System): UnitId => displays[unit][system].unit;

/**
 * A typed quantity as the other system shows it: rounded for the eye only. What was typed stays what is stored until
 * somebody types over it.
 */
export function shownQuantity(
  typed: TypedQuantity,
  system: System,
  typedIn: UnitId = typed.unit,
): TypedQuantity {
  if (units[typed.unit].system === system && typingUnit(typedIn, system) === typed.unit) return typed;
  const amount = readNumber(typed.text);
  if (amount === null) return typed;
  const { unit, decimals: usual } = displays[typedIn][system];
  // A foot or a meter where inches are kept is shown as finely as an inch is: two digits.
  const decimals = typedIn === typed.unit ? usual : Math.max(usual, 2);
  return { text: String(Number(convert(amount, typed.unit, unit).toFixed(decimals))), unit };
}
