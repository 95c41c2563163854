import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { problem, type Problem } from '../../problems/problem.ts';
import { ImportRefused } from '../refused.ts';
import { Columns, type Passed, type RowReader, type SourceRow } from './source.ts';

interface Open {
  readonly kind: string;
  readonly id: string;
  readonly line: number;
  readonly lat: string | undefined;
  readonly lon: string | undefined;
  readonly visible: boolean;
  readonly tags: [string, string][];
}

/**
 * Reads the tagged nodes of an OSM XML file. Nodes without tags are the corners of ways and no records of their own;
 * they are counted as passed over. A way or relation tagged as a hydrant is a record, though one without a point.
 */
export class OsmReader implements RowReader {
  readonly passed: Passed = { blankLines: 0, otherElements: 0 };
  readonly statedCrs = null;
  readonly #columns = new Columns();
  readonly #parser = new SaxesParser();
  #rows: SourceRow[] = [];
  #open: Open | null = null;
  #sawRoot = false;
  #any = false;

  constructor() {
    this.#parser.on('error', (error) => {
      throw new ImportRefused(
        problem('inventory-not-xml', '', { line: this.#parser.line, detail: error.message }),
      );
    });
    this.#parser.on('opentag', (tag) => this.#opened(tag));
    this.#parser.on('closetag', (tag) => this.#closed(tag));
  }

  get columns(): readonly string[] {
    return this.#columns.names;
  }

  push(text: string): SourceRow[] {
    this.#parser.write(text);
    return this.#taken();
  }

  end(): SourceRow[] {
    this.#parser.close();
    if (!this.#any) throw new ImportRefused(problem('inventory-empty'));
    return this.#taken();
  }

  #taken(): SourceRow[] {
    const rows = this.#rows;
    this.#rows = [];
    return rows;
  }

  #opened({ name, attributes }: SaxesTagPlain): void {
    if (!this.#sawRoot) {
      this.#sawRoot = true;
      if (name !== 'osm') throw new ImportRefused(problem('inventory-xml-not-osm', '', { element: name }));
      return;
    }
    if (name === 'node' || name === 'way' || name === 'relation') {
      this.#open = {
        kind: name,
        id: attributes.id ?? '',
        line: this.#parser.line,
        lat: attributes.lat,
        lon: attributes.lon,
        // An editor marks what it will delete; a history export marks what was deleted.
        visible: attributes.visible !== 'false' && attributes.action !== 'delete',
        tags: [],
      };
    } else if (name === 'tag') {
      this.#open?.tags.push([attributes.k ?? '', (attributes.v ?? '').trim()]);
    }
  }

  #closed({ name }: SaxesTagPlain): void {
    const open = this.#open;
    if (!open || name !== open.kind) return;
    this.#open = null;
    const hydrant = open.tags.some(([key, value]) => key.endsWith('emergency') && value === 'fire_hydrant');
    if (open.tags.length === 0 || (open.kind !== 'node' && !hydrant)) {
      this.passed.otherElements += 1;
      return;
    }
    this.#any = true;
    const values: string[] = [];
    for (const [key, value] of open.tags) values[this.#columns.placeOf(key)] = value;
    const fault = faultOf(open);
    this.#rows.push({
      row: open.line,
      line: open.line,
      featureId: `${open.kind}/${open.id}`,
      point: fault ? null : { x: open.lon ?? '', y: open.lat ?? '', asText: false },
      values,
      fault,
      doubt: null,
    });
  }
}

function faultOf(open: Open): Problem | null {
  if (!open.visible) return problem('inventory-deleted-asset', '', { value: 'visible="false"' });
  if (open.kind !== 'node') return problem('inventory-not-a-point', '', { geometry: open.kind });
  if (open.lat === undefined || open.lon === undefined) return problem('inventory-no-coordinates');
  return null;
}
