import type { ClassBand, HydrantClass } from '../hydraulics/hydrantClass.ts';
import type { Hydrant } from '../inventory/hydrant.ts';
import type { PublicPosition } from '../public/position.ts';
import type { System } from '../units/units.ts';
import { stationDrawing } from './drawing.ts';
import { areasHolding } from './inArea.ts';
import type { PublicStation } from './page.ts';
import type { Station } from './stations.ts';

export interface StationInput {
  readonly stations: readonly Station[];
  readonly hydrants: readonly Hydrant[];
  /** Whether a hydrant should serve, and whether it does. */
  readonly serves: (hydrant: Hydrant) => boolean;
  readonly isOut: (hydrant: Hydrant) => boolean;
  readonly classOf: (hydrant: Hydrant) => HydrantClass | null;
  /** Highest first. */
  readonly classes: readonly ClassBand[];
  /** True places of what is out, in the order of the list; null where none is known. */
  readonly out: readonly (PublicPosition | null)[];
  /** As the public may know a place. */
  readonly rounded: (position: PublicPosition) => PublicPosition;
  readonly system: System;
}

type Held = readonly (readonly Hydrant[])[];
/** Which hydrants stand in which area is the same until another inventory or another layer is loaded. */
const known = new WeakMap<readonly Station[], WeakMap<readonly Hydrant[], Held>>();

function hydrantsByStation(stations: readonly Station[], hydrants: readonly Hydrant[]): Held {
  const ofLayer = known.get(stations) ?? new WeakMap<readonly Hydrant[], Held>();
  known.set(stations, ofLayer);
  const found = ofLayer.get(hydrants);
  if (found) return found;
  const holding = areasHolding(stations);
  const held: Hydrant[][] = stations.map(() => []);
  for (const hydrant of hydrants) for (const station of holding(hydrant)) held[station]?.push(hydrant);
  ofLayer.set(hydrants, held);
  return held;
}

/** What the public is told of each station's area, in the order of the layer. */
export function publicStations(input: StationInput): PublicStation[] {
  const { stations, hydrants, serves, isOut, classOf, classes, rounded, system } = input;
  if (stations.length === 0) return [];
  const held = hydrantsByStation(stations, hydrants);
  const holding = areasHolding(stations);
  const outOf = stations.map((): { entry: number; position: PublicPosition }[] => []);
  for (const [entry, position] of input.out.entries())
    if (position)
      for (const station of holding(position)) outOf[station]?.push({ entry, position: rounded(position) });
  return stations.map((station, number) => {
    const serving = (held[number] ?? []).filter(serves);
    const inService = serving.filter((hydrant) => !isOut(hydrant));
    const counts = new Map<HydrantClass | null, number>();
    for (const hydrant of inService) counts.set(classOf(hydrant), (counts.get(classOf(hydrant)) ?? 0) + 1);
    const out = outOf[number] ?? [];
    return {
      name: station.name,
      slug: station.slug,
      hydrants: serving.length,
      outOfService: serving.length - inService.length,
      inService: [...classes.map(({ hydrantClass }) => hydrantClass), null].flatMap((hydrantClass) => {
        const count = counts.get(hydrantClass) ?? 0;
        return count > 0 ? [{ hydrantClass, count }] : [];
      }),
      out: out.map(({ entry }) => entry),
      drawing: stationDrawing(station, inService.map(rounded), out, system),
    };
  });
}
