import { avenues, blockFt, inHarbor, placeInTown, roads, roadSteps, streets } from './town.ts';

type Plane = readonly [alongFt: number, acrossFt: number];

const position = ([alongFt, acrossFt]: Plane): readonly [number, number] => {
  const { longitudeDeg, latitudeDeg } = placeInTown(alongFt, acrossFt);
  return [Number(longitudeDeg.toFixed(7)), Number(latitudeDeg.toFixed(7))];
};
const corner = (row: number, column: number): Plane => [column * blockFt.along, row * blockFt.across];
const collection = (features: readonly object[]): string =>
  `${JSON.stringify({ type: 'FeatureCollection', features }, null, 1)}\n`;

function line(name: string, places: readonly Plane[]): object {
  return {
    type: 'Feature',
    properties: { name },
    geometry: { type: 'LineString', coordinates: places.map(position) },
  };
}

/** Where each road out of town leaves the grid. */
const roadFrom: Readonly<Record<keyof typeof roads, readonly Plane[]>> = {
  'Mill Pond Rd': [],
  'Quarry Hill Rd': [corner(streets.length - 1, 6)],
  'Gull Point Dr': [corner(3, avenues.length - 1)],
};

/** Tansy Harbor's invented streets as a GIS would export them: a line for each, with a position at every crossing. */
export function townStreetsGeojson(): string {
  const features: object[] = [];
  for (const [row, street] of streets.entries())
    features.push(
      line(
        `${street} St`,
        avenues.flatMap((_, column) => (inHarbor(row, column) ? [] : [corner(row, column)])),
      ),
    );
  // Mill Pond Road meets Pumphouse Avenue between two streets.
  const millPond = roads['Mill Pond Rd'](0);
  for (const [column, avenue] of avenues.entries()) {
    const along: Plane[] = streets.flatMap((_, row) => (inHarbor(row, column) ? [] : [corner(row, column)]));
    if (column === 0) along.push([0, millPond[1]]);
    features.push(
      line(
        `${avenue} Ave`,
        along.toSorted((a, b) => a[1] - b[1]),
      ),
    );
  }
  for (const road of ['Mill Pond Rd', 'Quarry Hill Rd', 'Gull Point Dr'] as const)
    features.push(
      line(road, [
        ...roadFrom[road],
        ...Array.from({ length: roadSteps[road] + 1 }, (_, step): Plane => roads[road](step)),
      ]),
    );
  return collection(features);
}

const areas: Readonly<Record<string, readonly Plane[]>> = {
  'Station 1, Harbor': [
    [-300, -500],
    [11_200, -500],
    [11_200, 2392],
    [200, 2392],
    [200, 1900],
    [-300, 1900],
  ],
  'Station 2, Quarry Hill': [
    [-14_000, 1900],
    [200, 1900],
    [200, 2392],
    [11_200, 2392],
    [11_200, 5600],
    [5200, 11_200],
    [-300, 11_200],
    [-14_000, 5600],
  ],
};

/** The invented first-due areas of the town's two fire stations. */
export function townStationsGeojson(): string {
  return collection(
    Object.entries(areas).map(([name, places]) => ({
      type: 'Feature',
      properties: { name },
      geometry: { type: 'Polygon', coordinates: [[...places, ...places.slice(0, 1)].map(position)] },
    })),
  );
}
