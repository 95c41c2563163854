import type { WalkFt } from '../fireCover/cover.ts';
import { fireCoverFrom } from '../fireCover/settings.ts';
import { flowTestSettingsFrom } from '../hydraulics/flowTestSettings.ts';
import { mayServe, shouldServe, type Hydrant } from '../inventory/hydrant.ts';
import type { CoverPoints } from '../layers/coverPoints.ts';
import type { NearestIndex } from '../nearest/nearest.ts';
import type { HydrantStatus } from '../outages/hydrantStatus.ts';
import { publicStations } from '../stations/build.ts';
import type { Station } from '../stations/stations.ts';
import type { StrikeState } from '../strikes/state.ts';
import type { UtilitySettings } from '../utility/settings.ts';
import type { ClaimState } from '../claims/state.ts';
import { yearsOf } from '../yearly/yearsOf.ts';
import { areasOf } from './areas.ts';
import { publicEdition, type PublicEdition } from './edition.ts';
import { publicFireCoverOf } from './fireCover.ts';
import { relyUntilOf } from './freshness.ts';
import type { PublicHydrantPage } from './hydrantPage.ts';
import { looksLikeId } from './looksLikeId.ts';
import { mapCells, type MapHydrant } from './mapCells.ts';
import { notRetested, type NotRetested } from './notRetested.ts';
import { openPlaces, type OpenPlace } from './openOutages.ts';
import { hydrantTests } from './hydrantTests.ts';
import { publicWork, stillToCome } from './plannedWork.ts';
import { possiblyStruck } from './possiblyStruck.ts';
import { roundedPosition } from './position.ts';
import { ratingOf, type FlowTestFact, type Rating, type RatingRules } from './ratings.ts';
import type { PublicOutOfService, PublicSnapshot } from './snapshot.ts';
import { summaryOf } from './summary.ts';
import { surroundings } from './surroundings.ts';
import { mayStandAt } from './town.ts';

/** The state of the utility as it was read, nothing rounded and nothing left out. */
export interface PublicSources {
  /** Null when none has been loaded. */
  readonly inventory: {
    readonly hydrants: readonly Hydrant[];
    readonly loadedAt: string;
    readonly sha256: string;
    /** Of the same hydrants. */
    readonly index: NearestIndex<Hydrant>;
  } | null;
  /** When facts were recorded that the rest does not know yet, earliest first; left out: none. */
  readonly unprojected?: readonly string[];
  /** For a year's sums, and for nothing else; left out: none. */
  readonly claims?: readonly ClaimState[];
  readonly statuses: readonly HydrantStatus[];
  readonly strikes: readonly StrikeState[];
  /** Standing flow tests by residual hydrant. */
  readonly flowTests: ReadonlyMap<string, readonly FlowTestFact[]>;
  /** Distances along the streets, where a street network has been loaded. Without one they are straight lines. */
  readonly streets?: { readonly walkFt: WalkFt } | null;
  /** Places that must have cover (addresses), where they have been loaded. Without them a grid is looked at. */
  readonly mustCover?: CoverPoints | null;
  /** Areas of the fire stations, where they have been loaded. */
  readonly stations?: readonly Station[] | null;
}

const notYetShown = (recordedAt: readonly string[] = []): Pick<PublicSnapshot, 'notYetShown'> => {
  const [since] = recordedAt;
  return since === undefined ? {} : { notYetShown: { reports: recordedAt.length, since } };
};

/**
 * What the public may know, from the state of the utility as read at `checkedAt` or later (so every fact recorded
 * before `checkedAt` is in it).
 *
 * @throws ZodError when something does not fit the public schema; nothing is left out to make it fit.
 */
export function buildEdition(
  sources: PublicSources,
  settings: UtilitySettings,
  checkedAt: string,
): PublicEdition {
  const { inventory, statuses, strikes, flowTests } = sources;
  const { positionDecimals, showFlow } = settings.publishing;
  const fireCoverSettings = fireCoverFrom(settings.fireCover);
  const rules: RatingRules = {
    timeZone: settings.timeZone,
    showFlow,
    flowTest: flowTestSettingsFrom(settings.flowTest),
  };
  const strikesOf = Map.groupBy(strikes, ({ hydrantId }) => hydrantId);
  const hydrants = new Map(inventory?.hydrants.map((hydrant) => [hydrant.hydrantId, hydrant]));
  const hydrantOf = (id: string | null): Hydrant | null => (id === null ? null : (hydrants.get(id) ?? null));
  const testsOf = (hydrantId: string): readonly FlowTestFact[] => flowTests.get(hydrantId) ?? [];
  const rate = (hydrant: Hydrant | null, hydrantId: string | null): Rating =>
    ratingOf(hydrant, hydrantId === null ? [] : testsOf(hydrantId), rules);

  const places = openPlaces(statuses, strikes);
  const out = new Set(places.flatMap(({ hydrantId }) => hydrantId ?? []));
  // One that its own inventory says is not in use is counted with those that are out, once it is reported as out.
  const serves = (hydrant: Hydrant): boolean =>
    mayServe(hydrant) || (hydrant.service === 'inactive' && out.has(hydrant.hydrantId));
  const owing = new Map<string, NotRetested>();
  for (const status of statuses) {
    const { hydrantId } = status;
    if (out.has(hydrantId)) continue;
    const tested = testsOf(hydrantId).map(({ body }) => body.testedAt);
    const owed = notRetested(status, hydrants.get(hydrantId)?.type ?? 'unknown', tested);
    if (owed) owing.set(hydrantId, owed);
  }

  const mayBeStruck = possiblyStruck(places, inventory?.index ?? null, (id) => hydrants.has(id));
  const publicHydrant = (hydrant: Hydrant): MapHydrant => ({
    hydrantId: hydrant.hydrantId,
    place: hydrant.place,
    position: roundedPosition(hydrant, positionDecimals),
    ...rate(hydrant, hydrant.hydrantId),
    notRetested: owing.has(hydrant.hydrantId),
    private: hydrant.private,
    ...(mayBeStruck.has(hydrant.hydrantId) ? { maybeStruck: true as const } : {}),
  });
  const around =
    inventory &&
    surroundings({
      index: inventory.index,
      out,
      owing,
      mayBeStruck,
      rate: (hydrant) => rate(hydrant, hydrant.hydrantId),
      serves,
      describe: publicHydrant,
      classes: rules.flowTest.classBands,
      showFlow,
      walkFt: sources.streets?.walkFt ?? null,
      settings: fireCoverSettings,
    });

  const entryOf = ({ hydrantId, reportedPosition, outages }: OpenPlace): PublicOutOfService => {
    const hydrant = hydrantOf(hydrantId);
    const position = hydrant ?? reportedPosition;
    return {
      hydrantId: hydrant === null && hydrantId !== null && !looksLikeId(hydrantId) ? null : hydrantId,
      inInventory: hydrant !== null,
      place: hydrant?.place ?? null,
      position: position && roundedPosition(position, positionDecimals),
      ...rate(hydrant, hydrantId),
      outages: [...outages],
      ...(inventory && around && position && mayStandAt(inventory.index, position)
        ? { nearest: around.nearestTo(position, hydrantId), cover: around.coverOf(position) }
        : { nearest: [] }),
    };
  };
  const outOfService = places.map(entryOf);
  const shows = (hydrantId: string): boolean => hydrants.has(hydrantId) || looksLikeId(hydrantId);
  const entries = new Map(outOfService.map((entry) => [entry.hydrantId, entry]));

  const plannedWork = publicWork(statuses, hydrantOf, checkedAt);
  const toComeAt = Map.groupBy(stillToCome(plannedWork, checkedAt), (work) => work.hydrantId);
  const pageOf = (status: HydrantStatus): PublicHydrantPage => {
    const { hydrantId } = status;
    const hydrant = hydrantOf(hydrantId);
    return {
      hydrantId,
      inInventory: hydrant !== null,
      place: hydrant?.place ?? null,
      position: hydrant && roundedPosition(hydrant, positionDecimals),
      type: hydrant?.type ?? 'unknown',
      outOfService: entries.get(hydrantId) ?? null,
      notRetested: [...(owing.get(hydrantId)?.proofs ?? [])],
      plannedWork: toComeAt.get(hydrantId) ?? [],
      past: status.past
        .flatMap(({ outageId, cause, since, endedAt, deferred }) =>
          endedAt === null
            ? []
            : [{ outageId, cause, since, endedAt, deferred: deferred.map(({ proof }) => proof) }],
        )
        .toSorted((a, b) => Date.parse(b.since) - Date.parse(a.since)) as PublicHydrantPage['past'],
      ...hydrantTests(testsOf(hydrantId), strikesOf.get(hydrantId) ?? [], rules),
    };
  };
  const hasEvent = ({ open, past, flowTestIds }: HydrantStatus): boolean =>
    open.length > 0 || past.length > 0 || flowTestIds.length > 0;

  const serving = inventory?.hydrants.filter(serves) ?? [];
  const cover =
    around &&
    publicFireCoverOf({
      surroundings: around,
      out: outOfService.flatMap(({ hydrantId }, index) => {
        const hydrant = hydrantOf(hydrantId);
        return hydrant && shouldServe(hydrant) ? [{ hydrant, number: index + 1 }] : [];
      }),
      mustCover: sources.mustCover ?? null,
      settings: fireCoverSettings,
      showFlow,
      positionDecimals,
      notCounted: outOfService.filter(({ inInventory }) => !inInventory).length,
    });
  const snapshot: PublicSnapshot = {
    version: 1,
    utility: {
      name: settings.name,
      timeZone: settings.timeZone,
      locale: settings.locale,
      units: settings.units,
      emergencyPhone: settings.emergencyPhone,
      publishedEveryMinutes: settings.publishing.everyMinutes,
      license: settings.publishing.license ?? null,
      mapTiles: settings.publishing.mapTiles ?? null,
      classes: rules.flowTest.classBands.map((band) => ({ ...band })),
      ratingResidualPsi: rules.flowTest.ratingResidualPsi,
    },
    checkedAt,
    relyUntil: relyUntilOf(checkedAt, settings.publishing),
    inventory: inventory && {
      hydrants: serving.length,
      outOfService: serving.filter(({ hydrantId }) => out.has(hydrantId)).length,
      loadedAt: inventory.loadedAt,
      sha256: inventory.sha256,
      inactive: inventory.hydrants.filter((hydrant) => shouldServe(hydrant) && !serves(hydrant)).length,
    },
    summary: summaryOf(outOfService, statuses, strikes, checkedAt),
    ...(cover ? { fireCover: cover.fireCover } : {}),
    ...notYetShown(sources.unprojected),
    outOfService,
    notRetested: [...owing]
      .filter(([hydrantId]) => shows(hydrantId))
      .map(([hydrantId, { returnedAt, proofs }]) => ({
        hydrantId,
        place: hydrantOf(hydrantId)?.place ?? null,
        returnedAt,
        proofs: [...proofs],
      }))
      .toSorted((a, b) => Date.parse(b.returnedAt) - Date.parse(a.returnedAt)),
  };
  return publicEdition.parse({
    snapshot,
    cells: mapCells(
      serving.filter((hydrant) => mayServe(hydrant) && !out.has(hydrant.hydrantId)),
      (hydrant) => roundedPosition(hydrant, positionDecimals),
      publicHydrant,
      outOfService,
    ),
    areaDrawings: cover?.drawings ?? [],
    yearly: yearsOf({
      statuses,
      strikes,
      claims: sources.claims ?? [],
      hydrantOf,
      timeZone: settings.timeZone,
      checkedAt,
    }),
    listAreas: areasOf(inventory?.hydrants ?? [], serving, outOfService),
    hydrants: statuses.filter((status) => hasEvent(status) && shows(status.hydrantId)).map(pageOf),
    stations: publicStations({
      stations: sources.stations ?? [],
      hydrants: inventory?.hydrants ?? [],
      serves,
      isOut: ({ hydrantId }) => out.has(hydrantId),
      classOf: (hydrant) => rate(hydrant, hydrant.hydrantId).hydrantClass,
      classes: rules.flowTest.classBands,
      out: places.map(({ hydrantId, reportedPosition }) => hydrantOf(hydrantId) ?? reportedPosition),
      rounded: (position) => roundedPosition(position, positionDecimals),
      system: settings.units,
    }),
    plannedWork,
  });
}
