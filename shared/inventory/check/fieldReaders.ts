import type { ImportChoices } from '../choices.ts';
import type { ImportField } from '../mapping/fields.ts';
import type { ColumnUse } from '../mapping/propose.ts';
import type { SourceRow } from '../read/source.ts';
import { isBlank } from '../values/blank.ts';
import type { Cell, Cells } from './cells.ts';
import type { Remark } from './finding.ts';
import { countReader, dateReader, quantityReader, remembering, textReader, type Reading } from './values.ts';

/** Says what was found in a cell while a field was read. */
export type SayOfField = (found: Remark, field: ImportField, cell: Cell) => void;
/** A field's value in a row, or null; what there is to say about it is said. */
type Read<T> = (row: SourceRow, say: SayOfField) => T | null;

/** A reader for each field of text, date, quantity or count, made once per file. */
export function fieldReaders(cells: Cells, choices: ImportChoices) {
  function reader<T>(field: ImportField, make: (use: ColumnUse) => (text: string) => Reading<T>): Read<T> {
    const use = cells.use(field);
    const columns = cells.columnsOf(field);
    if (!use || columns.length === 0) return () => null;
    const read = remembering(make(use));
    const label = columns.join(' + ');
    const textOf = (row: SourceRow): string =>
      columns
        .map((column) => cells.cell(row, column).text)
        .filter((part) => !isBlank(part))
        .join(' ');
    return (row, say) => {
      const text = textOf(row);
      if (text === '') return null;
      const { value, remark } = read(text);
      if (remark) say(remark, field, { column: label, text });
      return value;
    };
  }
  const text = (field: ImportField, longest: number) => reader(field, () => textReader(longest));
  const date = (field: ImportField) => reader(field, (use) => dateReader(use, choices));
  const quantity = (field: ImportField) => reader(field, (use) => quantityReader(use, choices));
  const count = (field: ImportField) => reader(field, () => countReader);
  return {
    place: text('place', 200),
    modelId: text('modelId', 80),
    isolationValveId: text('isolationValveId', 64),
    owner: text('owner', 120),
    installedOn: date('installedOn'),
    lastInspectedOn: date('lastInspectedOn'),
    mainSizeIn: quantity('mainSizeIn'),
    lateralSizeIn: quantity('lateralSizeIn'),
    lateralLengthFt: quantity('lateralLengthFt'),
    buryDepthFt: quantity('buryDepthFt'),
    ratedFlowGpm: quantity('ratedFlowGpm'),
    hoseOutletDiameterIn: quantity('hoseOutletDiameterIn'),
    pumperOutletDiameterIn: quantity('pumperOutletDiameterIn'),
    outletCount: count('outletCount'),
    hoseOutletCount: count('hoseOutletCount'),
    pumperOutletCount: count('pumperOutletCount'),
  };
}
export type FieldReaders = ReturnType<typeof fieldReaders>;
