import { nameKey } from '../../../../shared/stock/names.ts';
import { readNumber } from './number.ts';
import { rowsOf, textOf, type Values } from './nodes.ts';

/** A part as some list on this device knows it. */
export interface KnownPart {
  readonly partNumber: string;
  readonly description: string;
  /** Shelves and trucks that have some. */
  readonly places: readonly string[];
}

export interface Taken {
  readonly parts: readonly Values[];
  readonly partNumber: string;
  readonly description: string;
  /** How many of it stand in the list now; null where the number there cannot be read. */
  readonly quantity: number | null;
  readonly is: 'added' | 'more' | 'unknown';
}

/**
 * A scanned part goes into the list: one more where it stands there from stock already, else a new row of one. Its number
 * is spelt as the lists spell it. Where exactly one shelf has it, it was taken from there; of several, the crew says which.
 */
export function withPart(values: Values, code: string, known: readonly KnownPart[]): Taken {
  const parts = rowsOf(values['parts']);
  const part = known.find(({ partNumber }) => nameKey(partNumber) === nameKey(code));
  const partNumber = part?.partNumber ?? code.trim();
  const at = parts.findIndex(
    (row) => nameKey(textOf(row['partNumber'])) === nameKey(code) && row['source.from'] === 'stock',
  );
  const there = parts[at];
  if (there) {
    const before = readNumber(textOf(there['quantity']));
    const quantity = before === null ? null : before + 1;
    return {
      // What cannot be read as a number is somebody's to put right, not to be guessed over.
      parts: parts.map((row, index) =>
        index === at && quantity !== null ? { ...row, quantity: String(quantity) } : row,
      ),
      partNumber,
      description: textOf(there['description']),
      quantity,
      is: 'more',
    };
  }
  const [place, ...others] = part?.places ?? [];
  const row: Values = {
    partNumber,
    description: part?.description ?? '',
    quantity: '1',
    'source.from': 'stock',
    'source.location': place !== undefined && others.length === 0 ? place : '',
  };
  // A row that was opened and left blank is the one to fill.
  const said = parts.filter(
    (each) => textOf(each['partNumber']).trim() !== '' || textOf(each['description']).trim() !== '',
  );
  return {
    parts: [...said, row],
    partNumber,
    description: part?.description ?? '',
    quantity: 1,
    is: part ? 'added' : 'unknown',
  };
}
