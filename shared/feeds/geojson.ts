import * as z from 'zod';
import { lastExpected } from '../public/lastExpected.ts';
import {
  publicOutOfService,
  publicOutage,
  type PublicOutOfService,
  type PublicSnapshot,
} from '../public/snapshot.ts';
import { checkedFacts, checkedFactsOf } from './facts.ts';
import { outageUri } from './ids.ts';

const { outageId: _outageId, heldBy, ...outageFields } = publicOutage.shape;
/** What the nearest hydrants are stands in the snapshot: beside a point on a map it would be taken for more points. */
const { hydrantId, inInventory, place, hydrantClass, ratedFlowGpm, testedOn } = publicOutOfService.shape;

const feature = z.strictObject({
  type: z.literal('Feature'),
  /** The hydrant's id; where it is not known, that of its outage. The same from check to check while it is out. */
  id: z.string().min(1),
  /** Longitude before latitude, WGS 84; null for a place that is not known ("unlocated", RFC 7946 §3.2). */
  geometry: z
    .strictObject({
      type: z.literal('Point'),
      coordinates: z.tuple([z.number().min(-180).max(180), z.number().min(-90).max(90)]),
    })
    .nullable(),
  properties: z.strictObject({
    hydrantId,
    inInventory,
    place,
    hydrantClass,
    ratedFlowGpm,
    testedOn,
    /** The outage that began first, for programs that cannot look into a list. */
    cause: publicOutage.shape.cause,
    since: publicOutage.shape.since,
    /** The last of the times at which its outages are expected to be over; null while any has none. */
    expectedAt: publicOutage.shape.expectedAt,
    /** Every open outage of it, earliest first. */
    outages: z.array(z.strictObject({ id: z.string(), ...outageFields, heldBy: heldBy.unwrap() })).min(1),
  }),
});

/** A feature collection with what is said of the whole beside it, as foreign members (RFC 7946 §6.1). */
export const outOfServiceGeoJson = z.strictObject({
  type: z.literal('FeatureCollection'),
  ...checkedFacts.shape,
  features: z.array(feature),
});
export type OutOfServiceGeoJson = z.infer<typeof outOfServiceGeoJson>;

/**
 * The hydrants out of service as GeoJSON (RFC 7946, `application/geo+json`): one feature for each hydrant or reported
 * place, in the order of the list. No feature and a count of 0 is a checked fact, said in `statement`.
 *
 * @throws ZodError when something does not fit the schema; nothing is left out to make it fit.
 */
export function geoJsonFeed(snapshot: PublicSnapshot): OutOfServiceGeoJson {
  return outOfServiceGeoJson.parse({
    type: 'FeatureCollection',
    ...checkedFactsOf(snapshot, snapshot.utility.locale),
    features: snapshot.outOfService.map(featureOf),
  });
}

function featureOf(hydrant: PublicOutOfService): object {
  const { outages, position } = hydrant;
  const [first] = outages;
  return {
    type: 'Feature',
    id: hydrant.hydrantId ?? outageUri(first?.outageId ?? ''),
    geometry: position && { type: 'Point', coordinates: [position.longitudeDeg, position.latitudeDeg] },
    properties: {
      hydrantId: hydrant.hydrantId,
      inInventory: hydrant.inInventory,
      place: hydrant.place,
      hydrantClass: hydrant.hydrantClass,
      ratedFlowGpm: hydrant.ratedFlowGpm,
      testedOn: hydrant.testedOn,
      cause: first?.cause,
      since: first?.since,
      expectedAt: lastExpected(outages),
      outages: outages.map(({ outageId, heldBy: held, ...outage }) => ({
        id: outageUri(outageId),
        ...outage,
        heldBy: held ?? [],
      })),
    },
  };
}
