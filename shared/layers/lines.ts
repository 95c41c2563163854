import { greatCircleFt } from '../nearest/sphere.ts';
import type { Feature } from './features.ts';
import { partsOf, readLine, type Places, type Reading } from './positions.ts';

/** One street, or a part of one: positions in a row, all different from the one before. */
export interface StreetLine {
  readonly row: number;
  readonly places: Places;
  /** Above or below the ground by the file's own word (OSM `layer`, `bridge`, `tunnel`); 0 where it says nothing. */
  readonly level: number;
}

/** Two miles with no position between: a corner that is far from the next one, or wrong. */
const longStepFt = 10_560;

/** OSM's words for streets that are not there (https://wiki.openstreetmap.org/wiki/Key:highway). */
const notBuilt = new Set(['proposed', 'planned', 'construction', 'abandoned', 'razed', 'disused', 'no']);
/** Nobody lays hose along these, nor may walk there. */
const motorways = new Set(['motorway', 'motorway_link']);
/** Tags of lines that are no streets, in files where streets carry `highway`. */
const otherLines = ['railway', 'waterway', 'power', 'aeroway', 'barrier', 'boundary', 'natural', 'route'];

const text = (value: unknown): string =>
  typeof value === 'string' || typeof value === 'number' ? String(value).trim().toLowerCase() : '';

function levelOf({ properties }: Feature): number {
  const layer = Number.parseInt(text(properties.layer), 10);
  if (Number.isInteger(layer)) return layer;
  const says = (key: string): boolean => !['', 'no', '0', 'false'].includes(text(properties[key]));
  return says('bridge') ? 1 : says('tunnel') ? -1 : 0;
}

/** The lines of a feature of the street layer; none when it is no street, which has been said. */
export function readStreet(feature: Feature, reading: Reading): readonly StreetLine[] {
  const { findings } = reading;
  const parts = partsOf(feature, 'LineString', reading);
  if (!parts) return [];
  const highway = text(feature.properties.highway);
  const other = highway === '' ? otherLines.find((tag) => text(feature.properties[tag]) !== '') : undefined;
  if (other !== undefined) {
    findings.add(feature, 'layers-not-a-street', `properties.${other}`, { tag: other });
    return [];
  }
  if (notBuilt.has(highway)) {
    findings.add(feature, 'layers-not-built', 'properties.highway', { value: highway });
    return [];
  }
  if (motorways.has(highway)) {
    findings.add(feature, 'layers-motorway', 'properties.highway', { value: highway });
    return [];
  }
  const level = levelOf(feature);
  const lines: StreetLine[] = [];
  for (const [value, path] of parts) {
    const places = readLine(value, path, feature, reading);
    if (!places) return [];
    const given = (value as readonly unknown[]).length;
    if (given < 2) {
      findings.add(feature, 'layers-too-few-positions', path, { count: given, least: 2 });
      return [];
    }
    if (places.length < 4) {
      findings.add(feature, 'layers-no-length', path);
      return [];
    }
    lines.push({ row: feature.row, places, level });
  }
  const long = longestStep(lines);
  if (long.ft > longStepFt)
    findings.add(feature, 'layers-long-step', 'geometry.coordinates', { feet: Math.round(long.ft) });
  return lines;
}

function longestStep(lines: readonly StreetLine[]): { ft: number } {
  let ft = 0;
  for (const { places } of lines)
    for (let at = 2; at < places.length; at += 2)
      ft = Math.max(
        ft,
        greatCircleFt(
          { longitudeDeg: places[at - 2] ?? 0, latitudeDeg: places[at - 1] ?? 0 },
          { longitudeDeg: places[at] ?? 0, latitudeDeg: places[at + 1] ?? 0 },
        ),
      );
  return { ft };
}
