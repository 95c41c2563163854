import { ElementCutter, type ElementText } from '../inventory/read/elements.ts';
import { unpackTags } from '../inventory/read/hstore.ts';
import { ImportRefused } from '../inventory/refused.ts';
import { problem } from '../problems/problem.ts';
import type { FeatureRef } from './findings.ts';

/** A file as the loading sees it: text that can be read more than once, a byte-order mark removed. */
export interface LayerFile {
  readonly text: () => AsyncIterable<string>;
}

/** One feature of a GeoJSON FeatureCollection, before anyone decides what it is. */
export interface Feature extends FeatureRef {
  readonly geometry: { readonly type: string; readonly coordinates: unknown } | null;
  readonly properties: Readonly<Record<string, unknown>>;
  /** Why it is no feature at all. */
  readonly broken: string | null;
}

/** More features than any utility's town has addresses. */
const mostFeatures = 5_000_000;

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const asText = (value: unknown): string =>
  typeof value === 'string' ? value.trim() : typeof value === 'number' ? String(value) : '';

/**
 * Reads the features of a FeatureCollection (RFC 7946) as the text goes by, in the memory of one feature.
 *
 * @returns the name of the CRS that the file itself states (a member of GeoJSON 2008 that files still carry), or null
 * @throws ImportRefused when the file is no FeatureCollection, ends early, holds nothing, or holds too much
 */
export async function eachFeature(file: LayerFile, use: (feature: Feature) => void): Promise<string | null> {
  const cutter = new ElementCutter('features');
  let count = 0;
  for await (const text of file.text())
    for (const element of cutter.push(text)) {
      count += 1;
      if (count > mostFeatures)
        throw new ImportRefused(problem('layers-too-many-features', '', { most: mostFeatures }));
      use(featureOf(element, count));
    }
  const frame = cutter.frame();
  if (!cutter.foundList) throw new ImportRefused(problem('layers-no-features', 'features'));
  if (count === 0) throw new ImportRefused(problem('layers-empty', 'features'));
  if (!isObject(frame) || !isObject(frame.crs)) return null;
  const name = isObject(frame.crs.properties) ? asText(frame.crs.properties.name) : '';
  return name === '' ? JSON.stringify(frame.crs) : name;
}

function featureOf({ text, line }: ElementText, row: number): Feature {
  const nothing = { row, line, featureId: null, geometry: null, properties: {} };
  let feature: unknown;
  try {
    feature = JSON.parse(text);
  } catch (cause) {
    return { ...nothing, broken: (cause as Error).message };
  }
  if (!isObject(feature) || feature.type !== 'Feature') return { ...nothing, broken: text.slice(0, 40) };
  const properties = unpacked(isObject(feature.properties) ? feature.properties : {});
  const { geometry } = feature;
  const featureId = asText(feature.id) || asText(properties['@id']);
  return {
    row,
    line,
    featureId: featureId === '' ? null : featureId.slice(0, 80),
    properties,
    geometry:
      isObject(geometry) && typeof geometry.type === 'string'
        ? { type: geometry.type, coordinates: geometry.coordinates }
        : null,
    broken: null,
  };
}

/** An export of OSM data may hold what it has no column for as tags in one string. */
function unpacked(properties: Record<string, unknown>): Record<string, unknown> {
  const { other_tags: packed } = properties;
  const tags = typeof packed === 'string' ? unpackTags(packed) : null;
  return tags ? { ...Object.fromEntries(tags), ...properties } : properties;
}
