import { isBlank } from '../values/blank.ts';
import type { Draft } from './draft.ts';

/**
 * Words and numbers that stand where nobody knew the id. `?` and `N/A` are blanks already. Compared in upper case
 * without surrounding space.
 */
const placeholderIds = new Set([
  '0',
  '00',
  '000',
  '0000',
  '00000',
  '-1',
  '-99',
  '-999',
  '-9999',
  'X',
  'XX',
  'XXX',
  'XXXX',
  'NEW',
  'TEMP',
  'TEST',
  'PRIVATE',
  'HYD',
  'HYDRANT',
  'FH',
  'NO ID',
  'NOID',
  'NO TAG',
  'NO NUMBER',
  'NOT TAGGED',
  'UNASSIGNED',
  'PENDING',
  'SIN NUMERO',
]);

/** More rows than this under one id, at more places than this, and it is nobody's number. */
const mostRowsOfOneId = 5;

export const foldId = (id: string): string => id.trim().replace(/\s+/g, ' ').toUpperCase();

export const isPlaceholderWord = (id: string): boolean => isBlank(id) || placeholderIds.has(foldId(id));

/** True when so many rows at so many places carry the id that it cannot be one hydrant's. */
export function isPlaceholderGroup(drafts: readonly Draft[]): boolean {
  if (drafts.length <= mostRowsOfOneId) return false;
  const places = new Set<string>();
  for (const { hydrant } of drafts) {
    places.add(placeId(hydrant));
    if (places.size > mostRowsOfOneId) return true;
  }
  return false;
}

/** An id the inventory can keep: up to 64 characters, none of them a control character. */
export const isUsableId = (id: string): boolean => id.length <= 64 && !/[\p{Cc}\u2028\u2029]/u.test(id);

/** `@35.06239,-85.30722`: five decimals of a degree, about a metre, so the same place gives the same id at every import. */
export const placeId = ({
  latitudeDeg,
  longitudeDeg,
}: {
  latitudeDeg: number;
  longitudeDeg: number;
}): string => `@${latitudeDeg.toFixed(5)},${longitudeDeg.toFixed(5)}`;

/**
 * The id of a row that brings none: the id the source gives its record (an OSM element, a GeoJSON feature), else its
 * place. Both stay the same when the file is exported again in another order.
 */
export const generatedId = ({ featureId, hydrant }: Draft): string =>
  featureId !== null && isUsableId(featureId) ? featureId : placeId(hydrant);

/** The id of a hydrant whose number another one bears too: `81040 (node/279877718)`. */
export function qualifiedId(id: string, draft: Draft): string {
  const qualified = `${id} (${generatedId(draft)})`;
  return isUsableId(qualified) ? qualified : generatedId(draft);
}

/** `PLH309 Blow Off Plug`: a number with a remark behind it. `Hydrant 12` is a name of its own. */
export const numberThenWords = /\d\S*\s.*\p{L}{3,}/u;
