import { assertLands, chooseCrs } from '../inventory/place/decide.ts';
import { ImportRefused } from '../inventory/refused.ts';
import { problem, type Problem } from '../problems/problem.ts';
import { buildStreets } from '../streets/build.ts';
import { streetsToBytes } from '../streets/file.ts';
import { looseJoints, type LooseJoint } from '../streets/joints.ts';
import { MOST_STATIONS, stationsToBytes, type Station } from '../stations/stations.ts';
import { AreaReader, nameFieldOf } from './areas.ts';
import { pointsToBytes } from './coverPoints.ts';
import { eachFeature, type Feature, type LayerFile } from './features.ts';
import { Findings, type Finding } from './findings.ts';
import type { LayerKind } from './kinds.ts';
import { readStreet, type StreetLine } from './lines.ts';
import { PointReader } from './points.ts';
import type { Reading } from './positions.ts';

/** What the person decides, because no file says it. */
export interface LayerChoices {
  readonly kind: LayerKind;
  /** The system of the coordinates, where they are not in degrees on WGS 84. */
  readonly crs: string | null;
  /** Streets: how far off one a hydrant or a place may lie and still stand on it, feet. */
  readonly snapFt: number;
  /** Streets: make one network where two cross without a common position. */
  readonly joinCrossings: boolean;
  /** Streets: join an end that stops this far from another street, feet; 0 joins none. */
  readonly joinWithinFt: number;
  /** Stations: the property that holds the name; null leaves it to the file. */
  readonly nameField: string | null;
}

/** The layer as it is kept, and what is said of the file it came from. */
export interface LayerResult {
  readonly bytes: Uint8Array;
  readonly crs: string;
  readonly features: number;
  readonly accepted: number;
  readonly doubtful: number;
  readonly findings: readonly Finding[];
  /** What is said of the file as a whole. */
  readonly remarks: readonly Problem[];
  /** A place in each accepted feature or so, to look whether they lie where the hydrants are: longitude and latitude by turns. */
  readonly places: readonly number[];
  /** Of a station layer. */
  readonly stations: readonly Station[];
}

/** Enough positions to tell a system of coordinates by. */
const mostSampled = 20_000;
/** Ends this near a street that they do not meet are told, feet. Mapped by hand, streets miss each other by less. */
const tellEndsFt = 3;
/** Of a layer of streets, one for so many is enough to see where it lies. */
const mostPlaces = 20_000;
/** Findings of one kind about how streets join, each naming two features; the remark has the number. */
const mostJoints = 1000;

/**
 * Reads a layer that other people made, and says of every feature that is not in it, or only with a doubt, which and
 * why. Nothing is written. The file is read twice: for its coordinate system, then for its features.
 *
 * @throws ImportRefused when the file as a whole cannot be taken
 */
export async function readLayer(file: LayerFile, choices: LayerChoices): Promise<LayerResult> {
  const { xs, ys, properties, statedCrs } = await lookThrough(file);
  const { crs, remarks } = chooseCrs(statedCrs, false, choices.crs);
  assertLands(crs, { xs, ys });
  const findings = new Findings();
  const reading: Reading = { crs, findings };
  let features = 0;
  const each = async (use: (feature: Feature) => void): Promise<void> => {
    await eachFeature(file, (feature) => {
      features += 1;
      use(feature);
    });
  };
  const made = await layerOf(each, reading, choices, [...properties]);
  const rejected = findings.rejected;
  if (features === rejected) throw new LayerEmpty(findings.all);
  return {
    ...made,
    crs: crs.label,
    features,
    accepted: features - rejected,
    doubtful: findings.doubtful,
    findings: findings.all,
    remarks: [...remarks, ...made.remarks],
  };
}

/** No feature of the file can be taken; the findings say why of each. */
export class LayerEmpty extends ImportRefused {
  readonly findings: readonly Finding[];

  constructor(findings: readonly Finding[]) {
    super(problem('layers-none-accepted', 'features'));
    this.findings = findings;
  }
}

type Made = Pick<LayerResult, 'bytes' | 'places' | 'stations' | 'remarks'>;
type Each = (use: (feature: Feature) => void) => Promise<void>;

async function layerOf(
  each: Each,
  reading: Reading,
  choices: LayerChoices,
  properties: readonly string[],
): Promise<Made> {
  switch (choices.kind) {
    case 'streets':
      return streetLayer(each, reading, choices);
    case 'addresses':
      return addressLayer(each, reading);
    case 'stations':
      return areaLayer(each, reading, choices.nameField, properties);
  }
}

async function streetLayer(each: Each, reading: Reading, choices: LayerChoices): Promise<Made> {
  const lines: StreetLine[] = [];
  const refs = new Map<number, Feature>();
  await each((feature) => {
    const read = readStreet(feature, reading);
    // The geometry is in the lines by now; only what the feature is called is kept.
    if (read.length > 0) refs.set(feature.row, { ...feature, geometry: null, properties: {} });
    for (const line of read) lines.push(line);
  });
  const { joinCrossings, joinWithinFt, snapFt } = choices;
  const loose = looseJoints(lines, Math.max(joinWithinFt, tellEndsFt));
  const doubt = (joint: LooseJoint, code: 'layers-crosses-unjoined' | 'layers-end-near-street'): void => {
    const ref = refs.get(joint.row);
    if (ref)
      reading.findings.add(ref, code, 'geometry.coordinates', {
        other: joint.otherRow,
        latitude: joint.at.latitudeDeg.toFixed(6),
        longitude: joint.at.longitudeDeg.toFixed(6),
      });
  };
  const joinEnds = joinWithinFt > 0;
  const openEnds = joinEnds ? loose.ends.filter(({ offFt }) => offFt > joinWithinFt) : loose.ends;
  const joinedEnds = loose.ends.length - openEnds.length;
  if (!joinCrossings)
    for (const joint of loose.crossings.slice(0, mostJoints)) doubt(joint, 'layers-crosses-unjoined');
  for (const joint of openEnds.slice(0, mostJoints)) doubt(joint, 'layers-end-near-street');
  const { streets, parts } = buildStreets(
    joinCrossings || joinEnds
      ? loose.joined({ crossings: joinCrossings, endsWithinFt: joinEnds ? joinWithinFt : -1 })
      : lines,
    snapFt,
  );
  const count = streets.fromNode.length;
  const remarks = [
    problem('layers-streets-made', '', { streets: count, places: streets.nodes }),
    ...(loose.crossings.length > 0
      ? [
          problem(joinCrossings ? 'layers-crossings-joined' : 'layers-crossings-open', '', {
            count: loose.crossings.length,
          }),
        ]
      : []),
    ...(joinedEnds > 0 ? [problem('layers-ends-joined', '', { count: joinedEnds, feet: joinWithinFt })] : []),
    ...(openEnds.length > 0
      ? [problem('layers-ends-open', '', { count: openEnds.length, feet: tellEndsFt })]
      : []),
    ...(parts.length > 1
      ? [
          problem('layers-parts', '', {
            count: parts.length,
            percent: Math.floor((100 * (parts[0] ?? 0)) / Math.max(1, count)),
          }),
        ]
      : []),
  ];
  const step = Math.max(1, Math.ceil(lines.length / mostPlaces));
  const places = lines.filter((_, index) => index % step === 0).flatMap((line) => line.places.slice(0, 2));
  return { bytes: streetsToBytes(streets), places, stations: [], remarks };
}

async function addressLayer(each: Each, reading: Reading): Promise<Made> {
  const reader = new PointReader();
  await each((feature) => reader.read(feature, reading));
  const { places, shared } = reader;
  return {
    bytes: pointsToBytes(places),
    places,
    stations: [],
    remarks: [
      problem('layers-places-made', '', { places: places.length / 2 }),
      ...(shared > 0 ? [problem('layers-places-shared', '', { count: shared })] : []),
    ],
  };
}

async function areaLayer(
  each: Each,
  reading: Reading,
  nameField: string | null,
  properties: readonly string[],
): Promise<Made> {
  const field = nameField ?? nameFieldOf(properties);
  const has = properties.slice(0, 30).join(', ');
  if (field === null) throw new ImportRefused(problem('layers-no-name-field', 'properties', { has }));
  if (!properties.includes(field))
    throw new ImportRefused(problem('layers-name-field-missing', '--name', { field, has }));
  const reader = new AreaReader(field);
  await each((feature) => reader.read(feature, reading));
  const { stations } = reader;
  if (stations.length > MOST_STATIONS)
    throw new ImportRefused(problem('layers-too-many-stations', 'features', { most: MOST_STATIONS }));
  return {
    bytes: stationsToBytes(stations),
    places: stations.flatMap(({ polygons }) => polygons[0]?.[0]?.slice(0, 2) ?? []),
    stations,
    remarks: [problem('layers-names-from', '', { field, count: stations.length })],
  };
}

interface Looked {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly properties: ReadonlySet<string>;
  readonly statedCrs: string | null;
}

/** What a first reading tells: the system that the file states, some of its numbers, the names of its properties. */
async function lookThrough(file: LayerFile): Promise<Looked> {
  const xs: number[] = [];
  const ys: number[] = [];
  const properties = new Set<string>();
  const statedCrs = await eachFeature(file, (feature) => {
    if (properties.size < 1000) for (const name of Object.keys(feature.properties)) properties.add(name);
    if (xs.length >= mostSampled) return;
    const [x, y] = firstPosition(feature.geometry?.coordinates);
    if (typeof x === 'number' && typeof y === 'number') {
      xs.push(x);
      ys.push(y);
    }
  });
  return { xs, ys, properties, statedCrs };
}

/** The first position of a geometry's coordinates, however deep it lies (a MultiPolygon's: four lists deep). */
function firstPosition(coordinates: unknown, depth = 0): readonly unknown[] {
  if (!Array.isArray(coordinates) || depth > 4) return [];
  const [first] = coordinates as unknown[];
  return Array.isArray(first) ? firstPosition(first, depth + 1) : coordinates;
}
