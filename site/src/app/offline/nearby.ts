import { findHydrants } from '../../../../shared/inventory/find.ts';
import type { Hydrant } from '../../../../shared/inventory/hydrant.ts';
import { greatCircleFt, type Position } from '../../../../shared/nearest/sphere.ts';
import { getJson } from '../core/api.ts';
import { locate } from '../core/locate.ts';
import { observable } from '../core/observable.ts';
import { session } from '../core/session.ts';
import { keepRead, readKept } from './reads.ts';

/** A hydrant as the finder lists it. */
export interface NearbyHydrant {
  readonly hydrant: Hydrant;
  readonly inService: boolean;
}

/** The part of the inventory that is on this device: what lies around a place, as it stood at a time. */
export interface Nearby {
  readonly center: Position;
  readonly withinFt: number;
  /** Epoch milliseconds. */
  readonly fetchedAt: number;
  readonly hydrants: readonly NearbyHydrant[];
  /** True when there are more within that distance than are kept: then the nearest are. */
  readonly more: boolean;
}
export const nearby = observable<Nearby | null>(null);

/** Two miles: further than a truck is sent without passing a signal, and a town's worth of hydrants. */
export const NEARBY_FT = 10_560;
const MOST = 1500;
/** Moved half of the way to the edge, or a shift old: read anew. */
const MOVED_FT = NEARBY_FT / 2;
const OLD_MS = 6 * 3_600_000;
const KEY = 'nearby';

const place: { last: Position | null; reading: boolean } = { last: null, reading: false };

/** Where the crew is or works: the next time there is signal, the hydrants around it are put on the device. */
export function notePlace({ latitudeDeg, longitudeDeg }: Position): void {
  place.last = { latitudeDeg, longitudeDeg };
  void refreshNearby();
}

/** Shows what the device has of this person's, then brings it up to date. Asks for no permission of its own. */
export async function startNearby(): Promise<void> {
  const person = session.get()?.personId;
  nearby.set(null);
  if (person === undefined) return;
  const kept = await readKept(person, KEY);
  if (kept && session.get()?.personId === person) nearby.set(kept.value as Nearby);
  const here = await positionIfAllowed();
  if (here) notePlace(here);
  else void refreshNearby();
}

async function positionIfAllowed(): Promise<Position | null> {
  try {
    const { state } = await navigator.permissions.query({ name: 'geolocation' });
    if (state !== 'granted') return null;
    const here = await locate();
    return here.ok ? here : null;
  } catch {
    return null;
  }
}

/** Reads the hydrants around the last known place, where the device has none, old ones, or those of elsewhere. */
export async function refreshNearby(now = Date.now()): Promise<void> {
  const person = session.get()?.personId;
  const known = nearby.get();
  const center = place.last ?? known?.center;
  if (!center || person === undefined || place.reading) return;
  const fresh = known && now - known.fetchedAt < OLD_MS && greatCircleFt(known.center, center) < MOVED_FT;
  if (fresh) return;
  place.reading = true;
  const near = `${center.latitudeDeg.toFixed(5)},${center.longitudeDeg.toFixed(5)}`;
  const answer = await getJson<{ readonly hydrants: readonly NearbyHydrant[] }>(
    `/api/hydrants?near=${near}&within=${NEARBY_FT}&limit=${MOST}`,
  );
  place.reading = false;
  if (answer.outcome !== 'ok' || session.get()?.personId !== person) return;
  const hydrants = answer.value.hydrants.map(({ hydrant, inService }) => ({ hydrant, inService }));
  const read: Nearby = {
    center,
    withinFt: NEARBY_FT,
    fetchedAt: Date.now(),
    hydrants,
    more: hydrants.length === MOST,
  };
  nearby.set(read);
  await keepRead(person, KEY, read);
}

export function forgetNearby(): void {
  place.last = null;
  nearby.set(null);
}

/** On this device, by number or street. */
export function findNearby(typed: string, most: number): readonly NearbyHydrant[] {
  const all = nearby.get()?.hydrants ?? [];
  const service = new Map(all.map(({ hydrant, inService }) => [hydrant.hydrantId, inService]));
  return findHydrants(
    all.map(({ hydrant }) => hydrant),
    typed,
    most,
  ).map((hydrant) => ({ hydrant, inService: service.get(hydrant.hydrantId) ?? true }));
}

/** On this device, nearest first. */
export function nearestNearby(
  here: Position,
  most: number,
): readonly (NearbyHydrant & { readonly distanceFt: number })[] {
  return (nearby.get()?.hydrants ?? [])
    .map((found) => ({ ...found, distanceFt: greatCircleFt(here, found.hydrant) }))
    .sort((a, b) => a.distanceFt - b.distanceFt)
    .slice(0, most);
}

export const hydrantNearby = (hydrantId: string): NearbyHydrant | null =>
  nearby.get()?.hydrants.find(({ hydrant }) => hydrant.hydrantId === hydrantId) ?? null;
