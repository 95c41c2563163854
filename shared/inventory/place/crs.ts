import proj4 from 'proj4';
import { problem } from '../../problems/problem.ts';
import { ImportRefused } from '../refused.ts';
import { statePlaneFeet } from './statePlane.ts';

/** West, south, east, north in degrees. */
export type Area = readonly [west: number, south: number, east: number, north: number];

/** A stated coordinate reference system, ready to use. x is always the easting or longitude, whatever the axis order of its registry. */
export interface Crs {
  /** As a person would recognise it: `EPSG:2263 New York Long Island (ftUS)`. */
  readonly label: string;
  readonly kind: 'degrees' | 'projected';
  /** To WGS 84 longitude and latitude, degrees; null where the projection has no answer. */
  readonly toWgs84: (x: number, y: number) => readonly [longitudeDeg: number, latitudeDeg: number] | null;
  /** Where the system is meant to be used; points outside it mean that the wrong system was stated. */
  readonly area: Area | null;
}

interface Definition {
  readonly name: string;
  readonly proj: string;
  readonly area: Area | null;
}

const zones = new Map<number, Definition>();
for (const line of statePlaneFeet.trim().split('\n')) {
  const [code = '', name = '', proj = '', area = '', others = ''] = line.split('|');
  const definition = {
    name,
    proj: `${proj} +ellps=GRS80`,
    area: area.split(',').map(Number) as unknown as Area,
  };
  for (const each of [code, ...others.split(',').filter(Boolean)]) zones.set(Number(each), definition);
}

/** Degrees on WGS 84 or on a datum within 2 m of it: NAD 83 (and its 2011 realisation) and ETRS 89. */
const degrees: Readonly<Record<number, string>> = {
  4326: 'WGS 84',
  4269: 'NAD 83',
  4258: 'ETRS 89',
  6318: 'NAD 83 (2011)',
};

/** The codes that some software writes for the web map projection besides its own. */
const webMercator = new Set([3857, 900913, 102100, 102113]);

/** UTM families by the hundreds of their code: NAD 83 269xx, ETRS 89 258xx, WGS 84 326xx north and 327xx south. */
function utm(code: number): Definition | null {
  const zone = code % 100;
  const family = Math.floor(code / 100);
  const span =
    family === 269 ? [1, 23] : family === 258 ? [28, 38] : family === 326 || family === 327 ? [1, 60] : null;
  if (!span || zone < (span[0] ?? 0) || zone > (span[1] ?? 0)) return null;
  const datum = family === 269 ? 'NAD 83' : family === 258 ? 'ETRS 89' : 'WGS 84';
  const south = family === 327;
  const middle = zone * 6 - 183;
  return {
    name: `${datum} UTM zone ${zone}${south ? 'S' : 'N'}`,
    proj: `+proj=utm +zone=${zone}${south ? ' +south' : ''} ${datum === 'WGS 84' ? '+datum=WGS84' : '+ellps=GRS80'} +units=m`,
    // A town on a zone's edge is kept in one zone; one zone's width beyond either edge is taken as meant.
    area: [Math.max(-180, middle - 9), south ? -84 : -1, Math.min(180, middle + 9), south ? 1 : 84],
  };
}

function published(code: number): Definition | null {
  if (webMercator.has(code)) {
    return {
      name: 'Web Mercator',
      proj: '+proj=merc +a=6378137 +b=6378137 +lat_ts=0 +lon_0=0 +x_0=0 +y_0=0 +k=1 +units=m +nadgrids=@null',
      area: null,
    };
  }
  return utm(code) ?? zones.get(code) ?? null;
}

const refuse = (code: string, params: Record<string, string | number>): never => {
  throw new ImportRefused(problem(code, 'crs', params));
};

/**
 * True when the definition says how its datum relates to WGS 84. A datum that needs a shift and does not state it
 * (NAD 27, DHDN, OSGB 36) would put every hydrant up to some 200 m off, so it is refused rather than guessed.
 */
function datumIsStated(proj: string): boolean {
  if (/\+towgs84=\s*-?[\d.]+(,-?[\d.]+)*/.test(proj)) return true;
  if (/\+nadgrids=(?!@null)/.test(proj)) return false;
  const datum = /\+datum=(\w+)/.exec(proj)?.[1]?.toLowerCase();
  if (datum !== undefined) return datum !== 'nad27';
  const ellipsoid = /\+ellps=(\w+)/.exec(proj)?.[1]?.toLowerCase();
  return ellipsoid === 'grs80' || ellipsoid === 'wgs84' || /\+nadgrids=@null/.test(proj);
}

function usable(label: string, { proj, area }: Definition): Crs {
  let forward: (point: [number, number]) => number[];
  try {
    const converter = proj4(proj, 'WGS84');
    forward = (point) => converter.forward(point);
    forward([0, 0]);
  } catch (cause) {
    return refuse('inventory-crs-not-readable', {
      value: proj,
      detail: cause instanceof Error ? cause.message : String(cause),
    });
  }
  return {
    label,
    kind: /\+proj=(longlat|latlong)/.test(proj) ? 'degrees' : 'projected',
    area,
    toWgs84: (x, y) => {
      try {
        const [longitude = NaN, latitude = NaN] = forward([x, y]);
        return Number.isFinite(longitude) && Number.isFinite(latitude) ? [longitude, latitude] : null;
      } catch {
        // The projection's own "no answer here", for example beyond its horizon.
        return null;
      }
    },
  };
}

/**
 * The coordinate system a person stated: `EPSG:2263`, `2263`, or a proj4 definition beginning with `+proj=`.
 *
 * @throws ImportRefused for an unknown code, an unreadable definition, or a datum whose shift is not stated.
 */
export function resolveCrs(text: string): Crs {
  const stated = text.trim();
  if (stated.startsWith('+')) {
    if (!datumIsStated(stated)) return refuse('inventory-datum-not-stated', { value: stated });
    return usable(stated, { name: stated, proj: stated, area: null });
  }
  const code = Number(
    /^(?:(?:urn:ogc:def:crs:)?(?:EPSG|ESRI)[:/]+(?:[\d.]*:)?)?(\d{4,6})$/i.exec(stated)?.[1],
  );
  if (/CRS:?84$/i.test(stated)) return wgs84;
  const name = degrees[code];
  if (name !== undefined) return { ...wgs84, label: `EPSG:${code} ${name}` };
  if ([4267, 4268, 26711, 26712, 26713, 26714, 26715, 26716, 26717, 26718, 26719].includes(code)) {
    return refuse('inventory-datum-not-stated', { value: `EPSG:${code} (NAD 27)` });
  }
  const definition = Number.isNaN(code) ? null : published(code);
  if (!definition) return refuse('inventory-crs-unknown', { value: stated });
  return usable(`EPSG:${code} ${definition.name}`, definition);
}

/** Degrees on WGS 84, the system of GPS, GeoJSON (RFC 7946) and OpenStreetMap. */
export const wgs84: Crs = {
  label: 'EPSG:4326 WGS 84',
  kind: 'degrees',
  area: null,
  toWgs84: (x, y) => [x, y],
};

export const isDegrees = (x: number, y: number): boolean => Math.abs(x) <= 180 && Math.abs(y) <= 90;

export const isInside = (
  [west, south, east, north]: Area,
  longitudeDeg: number,
  latitudeDeg: number,
): boolean => longitudeDeg >= west && longitudeDeg <= east && latitudeDeg >= south && latitudeDeg <= north;
