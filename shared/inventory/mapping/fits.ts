import { compact, folded } from '../values/blank.ts';
import { looksLikeDate } from '../values/date.ts';
import { readOutlets } from '../values/outlets.ts';
import { readNumber, readQuantity, toUnit } from '../values/quantity.ts';
import { readCountWord, readPrivate, readStatus, readType, readYesNo } from '../values/words.ts';
import { fieldRules, type ImportField } from './fields.ts';
import { distinctShare, shareOf, type ColumnProfile } from './profile.ts';
import { decideUnit, usesDecimalComma } from './units.ts';

/** `POINT (-73.98 40.75)`, also with an SRID before or a Z behind. */
export const wktPoint = /^(?:SRID=\d+;)?\s*POINT\s*Z?M?\s*\(\s*(-?[\d.]+)\s+(-?[\d.]+)[^)]*\)$/i;

export const readCount = (text: string): number | null => {
  const value = readNumber(text) ?? readCountWord(text);
  return value !== null && Number.isInteger(value) && value >= 0 && value <= 8 ? value : null;
};

/** A size on its own, `2 1/2"`. */
export const isSize = (text: string): boolean => {
  const read = readQuantity(text);
  return read !== null && !('unknownUnit' in read);
};

/**
 * True when at least half of what a column holds can be what its name says. A column called FLOW that holds `GOOD`,
 * or codes from 1 to 4, is not a flow.
 */
export function valuesFit(field: ImportField, column: ColumnProfile): boolean {
  const { kind, quantity } = fieldRules[field];
  const half = (test: (text: string) => boolean): boolean => shareOf(column, test) >= 0.5;
  const isNumber = (text: string): boolean => readNumber(text) !== null;
  switch (kind) {
    case 'id':
      // One value on most rows is a placeholder or a kind, not an id; a handful of rows proves nothing.
      return column.filled < 10 || distinctShare(column) >= 0.5;
    case 'coordinate': {
      const comma = usesDecimalComma(column);
      return half((text) => readNumber(text, comma) !== null);
    }
    case 'point':
      return half((text) => wktPoint.test(text));
    case 'text':
      return field === 'modelId' || field === 'isolationValveId' || !half(isNumber);
    case 'type':
      return half((text) => readType(text) !== null);
    case 'kind':
      return half((text) => readType(text) !== null || readStatus(text) === 'deleted');
    case 'status':
      return half((text) => readStatus(text) !== null);
    case 'private':
      // A column of owners' names belongs to the owner; one of the single words Public and Private belongs here.
      return half(
        (text) =>
          readPrivate(text) !== null && (compact(column.name) !== 'owner' || !folded(text).includes(' ')),
      );
    case 'mark':
      return half((text) => readYesNo(text) !== null || looksLikeDate(text));
    case 'date':
      return half(looksLikeDate);
    case 'count':
      return half((text) => readCount(text) !== null);
    case 'outlets':
      return half((text) => readOutlets(text) !== null || isSize(text));
    case 'remarks':
    case 'source':
      return true;
    case 'quantity':
      if (!quantity) return false;
      return quantityFits(field, column);
  }
}

function quantityFits(field: ImportField, column: ColumnProfile): boolean {
  const rule = fieldRules[field].quantity;
  if (!rule) return false;
  const { bare, commaIsDecimal } = decideUnit(column, rule, null);
  const inUnit = (text: string): number | null => {
    const read = readQuantity(text, commaIsDecimal);
    if (!read || 'unknownUnit' in read) return null;
    const unit = read.unit ?? bare ?? rule.candidates[0];
    return unit === undefined ? null : toUnit(read.value, unit, rule.target);
  };
  if (shareOf(column, (text) => inUnit(text) !== null) < 0.5) return false;
  if (field !== 'ratedFlowGpm') return true;
  // Numbers below any hydrant's flow are codes or classes.
  return (
    shareOf(column, (text) => {
      const value = inUnit(text);
      return value !== null && (value === 0 || (value >= rule.minimum && value <= rule.maximum));
    }) >= 0.5 && shareOf(column, (text) => inUnit(text) !== 0) >= 0.5
  );
}
