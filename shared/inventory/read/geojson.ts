import { problem, type Problem } from '../../problems/problem.ts';
import { ImportRefused } from '../refused.ts';
import { ElementCutter, type ElementText } from './elements.ts';
import { unpackTags } from './hstore.ts';
import { Columns, type Passed, type RowReader, type SourceRow } from './source.ts';

const asText = (value: unknown): string => {
  if (typeof value === 'string') return value.trim();
  // Numbers, booleans, lists and objects; null and nothing are blank.
  return value === null || value === undefined ? '' : JSON.stringify(value);
};

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * Reads the point features of a GeoJSON FeatureCollection (RFC 7946), also behind `var name =`, with coordinates
 * written as text, with a feature `id` or an OSM `@id`/`osm_id`, and with tags packed into one string.
 */
export class GeoJsonReader implements RowReader {
  readonly passed: Passed = { blankLines: 0, otherElements: 0 };
  readonly #cutter = new ElementCutter('features');
  readonly #columns = new Columns();
  #count = 0;
  #statedCrs: string | null = null;

  get columns(): readonly string[] {
    return this.#columns.names;
  }

  get statedCrs(): string | null {
    return this.#statedCrs;
  }

  push(text: string): SourceRow[] {
    return this.#cutter.push(text).map((element) => this.#row(element));
  }

  end(): SourceRow[] {
    const frame = this.#cutter.frame();
    if (!this.#cutter.foundList) throw new ImportRefused(problem('inventory-no-features'));
    if (this.#count === 0) throw new ImportRefused(problem('inventory-empty'));
    // The older form of GeoJSON (2008) could name its CRS; RFC 7946 dropped the member but files still carry it.
    if (isObject(frame) && isObject(frame.crs)) {
      const name = isObject(frame.crs.properties) ? asText(frame.crs.properties.name) : '';
      this.#statedCrs = name === '' ? JSON.stringify(frame.crs) : name;
    }
    return [];
  }

  #row({ text, line }: ElementText): SourceRow {
    this.#count += 1;
    const base = { row: this.#count, line, featureId: null, point: null, values: [], doubt: null };
    let feature: unknown;
    try {
      feature = JSON.parse(text);
    } catch (cause) {
      return {
        ...base,
        fault: problem('inventory-broken-feature', '', { detail: (cause as Error).message }),
      };
    }
    if (!isObject(feature))
      return { ...base, fault: problem('inventory-broken-feature', '', { detail: text.slice(0, 40) }) };
    const properties = isObject(feature.properties) ? feature.properties : {};
    const values = this.#values(properties);
    const featureId =
      asText(feature.id) ||
      asText(properties['@id']) ||
      (properties.osm_id ? `node/${asText(properties.osm_id)}` : '');
    const place = pointOf(feature.geometry);
    return {
      ...base,
      featureId: featureId === '' ? null : featureId,
      values,
      ...('fault' in place ? { fault: place.fault } : { fault: null, point: place }),
    };
  }

  #values(properties: Record<string, unknown>): string[] {
    const values: string[] = [];
    for (const [key, value] of Object.entries(properties)) {
      const tags =
        typeof value === 'string'
          ? unpackTags(value)
          : isObject(value)
            ? Object.entries(value).map(([k, v]) => [`${key}.${k}`, asText(v)] as const)
            : null;
      if (tags) for (const [tag, text] of tags) values[this.#columns.placeOf(tag)] = text.trim();
      else values[this.#columns.placeOf(key)] = asText(value);
    }
    return values;
  }
}

function pointOf(geometry: unknown): { x: string; y: string; asText: boolean } | { fault: Problem } {
  if (!isObject(geometry)) return { fault: problem('inventory-no-coordinates') };
  let { coordinates } = geometry;
  // A MultiPoint of one point is how some programs export points.
  if (geometry.type === 'MultiPoint' && Array.isArray(coordinates) && coordinates.length === 1)
    coordinates = coordinates[0] as unknown;
  else if (geometry.type !== 'Point')
    return { fault: problem('inventory-not-a-point', '', { geometry: asText(geometry.type) || '?' }) };
  if (!Array.isArray(coordinates) || coordinates.length < 2)
    return { fault: problem('inventory-no-coordinates') };
  const [x, y] = coordinates as unknown[];
  return { x: asText(x), y: asText(y), asText: typeof x === 'string' || typeof y === 'string' };
}
