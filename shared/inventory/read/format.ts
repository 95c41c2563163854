import { problem } from '../../problems/problem.ts';
import { ImportRefused } from '../refused.ts';
import { CsvReader } from './csv.ts';
import { GeoJsonReader } from './geojson.ts';
import { OsmReader } from './osm.ts';
import type { RowReader } from './source.ts';

export const formats = ['csv', 'geojson', 'osm'] as const;
export type Format = (typeof formats)[number];

/** What other files begin with, and what to do about each. `latin1` is the head read byte for byte. */
const others: readonly (readonly [RegExp, string])[] = [
  [/^PK\u0003\u0004/, 'inventory-is-zip'],
  [/^SQLite format 3/, 'inventory-is-database'],
  [/^\u0000\u0000\u0027\u000a/, 'inventory-is-shapefile'],
  [/^\u00d0\u00cf\u0011\u00e0/, 'inventory-is-old-spreadsheet'],
];

/**
 * The format of a file from its beginning; its name is not asked, because names lie.
 *
 * @param head the first few thousand characters, a byte-order mark removed
 * @throws ImportRefused for a file that is none of CSV, GeoJSON or OSM XML, saying what to export instead
 */
export function sniffFormat(head: string): Format {
  for (const [start, code] of others) if (start.test(head)) throw new ImportRefused(problem(code));
  if (head.trim() === '') throw new ImportRefused(problem('inventory-empty'));
  if (/^\s*</.test(head)) {
    if (/<kml[\s>]/.test(head))
      throw new ImportRefused(problem('inventory-xml-not-osm', '', { element: 'kml' }));
    return 'osm';
  }
  if (/^\s*(?:(?:var|let|const)\s+[\w$]+\s*=\s*|[\w$.]+\s*=\s*|[\w$.]+\()?\s*[[{]/.test(head))
    return 'geojson';
  if (head.includes('\u0000')) throw new ImportRefused(problem('inventory-format-unknown'));
  return 'csv';
}

/** A fresh reader; `head` is the beginning of the file, which CSV needs to find its delimiter. */
export function readerFor(format: Format, head: string): RowReader {
  return format === 'csv'
    ? new CsvReader(head)
    : format === 'geojson'
      ? new GeoJsonReader()
      : new OsmReader();
}
