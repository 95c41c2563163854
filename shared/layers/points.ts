import type { Feature } from './features.ts';
import { partsOf, readPosition, type Reading } from './positions.ts';

/**
 * Collects places that must be covered. Several at one place (the flats of a house) are one place: cover is asked of
 * places, not of people.
 */
export class PointReader {
  /** Longitudes and latitudes by turns. */
  readonly places: number[] = [];
  readonly #firstAt = new Map<string, number>();
  /** Features that lie where another one lies. */
  shared = 0;

  read(feature: Feature, reading: Reading): void {
    const parts = partsOf(feature, 'Point', reading);
    if (!parts) return;
    const found: (readonly [number, number])[] = [];
    for (const [value, path] of parts) {
      const place = readPosition(value, path, feature, reading);
      // A feature is taken whole or not at all.
      if (!place) return;
      found.push(place);
    }
    for (const [longitude, latitude] of found) {
      const key = `${longitude.toFixed(7)} ${latitude.toFixed(7)}`;
      if (this.#firstAt.has(key)) this.shared += 1;
      else {
        this.#firstAt.set(key, feature.row);
        this.places.push(longitude, latitude);
      }
    }
  }
}
