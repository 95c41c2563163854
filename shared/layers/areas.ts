import { LONGEST_NAME, slugOf, type Station } from '../stations/stations.ts';
import type { Feature } from './features.ts';
import { partsOf, readLine, type Reading } from './positions.ts';
import { crossesItself } from './selfCrossing.ts';

/** Properties that hold a station's name in the files that people have, best first. */
const nameFields = [
  'name',
  'station_name',
  'stationname',
  'station',
  'stn_name',
  'first_due',
  'firstdue',
  'area_name',
  'label',
  'station_id',
  'stationid',
  'id',
];

/** The property that names the areas, among those that the file has; null when none can be told. */
export function nameFieldOf(properties: readonly string[]): string | null {
  for (const field of nameFields) {
    const found = properties.find((each) => each.toLowerCase() === field);
    if (found !== undefined) return found;
  }
  return null;
}

/** Collects the areas of a station layer. Two features of one name are one area in two parts, which is said. */
export class AreaReader {
  readonly #nameField: string;
  readonly #bySlug = new Map<string, { readonly name: string; readonly polygons: number[][][] }>();

  constructor(nameField: string) {
    this.#nameField = nameField;
  }

  get stations(): readonly Station[] {
    return [...this.#bySlug]
      .map(([slug, { name, polygons }]) => ({ name, slug, polygons }))
      .toSorted((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }));
  }

  read(feature: Feature, reading: Reading): void {
    const { findings } = reading;
    const parts = partsOf(feature, 'Polygon', reading);
    if (!parts) return;
    const polygons: number[][][] = [];
    for (const [value, path] of parts) {
      const rings = readRings(value, path, feature, reading);
      if (!rings) return;
      polygons.push(rings);
    }
    const path = `properties.${this.#nameField}`;
    const given = feature.properties[this.#nameField];
    const name = typeof given === 'string' ? given.trim() : typeof given === 'number' ? String(given) : '';
    if (name === '') return findings.add(feature, 'layers-no-name', path);
    if (name.length > LONGEST_NAME)
      return findings.add(feature, 'layers-name-too-long', path, { most: LONGEST_NAME, length: name.length });
    const slug = slugOf(name);
    if (slug === '') return findings.add(feature, 'layers-name-not-usable', path, { name });
    const before = this.#bySlug.get(slug);
    if (!before) {
      this.#bySlug.set(slug, { name, polygons });
      return;
    }
    if (before.name !== name)
      return findings.add(feature, 'layers-same-address', path, { name, other: before.name });
    before.polygons.push(...polygons);
    findings.add(feature, 'layers-same-name', path, { name });
  }
}

/** A polygon's rings; null when one of them is none, which has been said. */
function readRings(value: unknown, path: string, feature: Feature, reading: Reading): number[][] | null {
  const { findings } = reading;
  if (!Array.isArray(value) || value.length === 0) {
    findings.add(feature, 'layers-no-positions', path, { value: JSON.stringify(value ?? null).slice(0, 40) });
    return null;
  }
  const rings: number[][] = [];
  for (const [index, each] of value.entries()) {
    const at = `${path}.${index}`;
    const places = readLine(each, at, feature, reading);
    if (!places) return null;
    // RFC 7946, 3.1.6: four or more positions, the last the same as the first.
    if (places.length < 8) {
      findings.add(feature, 'layers-too-few-positions', at, { count: places.length / 2, least: 4 });
      return null;
    }
    if (places[0] !== places.at(-2) || places[1] !== places.at(-1)) {
      findings.add(feature, 'layers-ring-open', at);
      return null;
    }
    const crossing = crossesItself(places);
    if (crossing) {
      findings.add(feature, 'layers-ring-crosses', at, {
        latitude: crossing.latitudeDeg.toFixed(5),
        longitude: crossing.longitudeDeg.toFixed(5),
      });
      return null;
    }
    rings.push([...places]);
  }
  return rings;
}
