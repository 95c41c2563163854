import * as z from 'zod';

/** Longitudes and latitudes by turns, WGS 84 degrees, the first position again at the end. */
const ring = z.array(z.number()).min(8);

export const LONGEST_NAME = 80;

/** The area in which a fire station is the first to be sent. */
export const station = z.strictObject({
  name: z.string().trim().min(1).max(LONGEST_NAME),
  /** Its page's address: `station-1-harbor`. */
  slug: z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/),
  /** Polygons, each its outer ring and then its holes. */
  polygons: z.array(z.array(ring).min(1)).min(1),
});
export type Station = z.infer<typeof station>;

/** No town has as many stations: a layer of more is of something else. */
export const MOST_STATIONS = 1000;

const stationLayer = z.strictObject({
  version: z.literal(1),
  stations: z.array(station).max(MOST_STATIONS),
});

/** The areas as the bytes of a file. @throws ZodError for what is no layer of stations */
export const stationsToBytes = (stations: readonly Station[]): Uint8Array =>
  new TextEncoder().encode(`${JSON.stringify(stationLayer.parse({ version: 1, stations }))}\n`);

/** @throws SyntaxError or ZodError for bytes that are no layer of stations */
export const stationsFromBytes = (bytes: Uint8Array): readonly Station[] =>
  stationLayer.parse(JSON.parse(new TextDecoder().decode(bytes))).stations;

/** The longest name that an address is made of. */
const longestSlug = 60;

/**
 * A name as it can stand in an address: small letters without their accents, digits, hyphens. Empty where the name has
 * none of these.
 */
export const slugOf = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, longestSlug)
    .replace(/^-|-$/g, '');

/** Path of a station area's page within a language. */
export const stationPath = (slug: string): string => `stations/${slug}/`;
