import Papa from 'papaparse';
import { formulaCells } from '../csv/formulaCells.ts';
import type { PublicOutage, PublicOutOfService, PublicSnapshot } from '../public/snapshot.ts';
import { checkedFactsOf } from './facts.ts';
import { outageUri } from './ids.ts';

/** The columns, in their order. New ones are added at the end within a version. */
export const csvColumns = [
  'row',
  'checked_at',
  'do_not_rely_after',
  'outage_id',
  'hydrant_id',
  'in_inventory',
  'place',
  'latitude_deg',
  'longitude_deg',
  'cause',
  'out_since',
  'expected_back_at',
  'waiting_for',
  'stage',
  'held_by',
  'hydrant_class',
  'rated_flow_gpm',
  'tested_on',
  'hydrants',
  'hydrants_out_of_service',
  'not_in_inventory',
  'utility',
  'emergency_phone',
  'license',
  'license_url',
  'statement',
  'reports_not_yet_shown',
  'not_yet_shown_since',
] as const;
type Cells = Partial<Record<(typeof csvColumns)[number], string | number | null>>;

/**
 * The open outages as CSV (RFC 4180, UTF-8, header present): a row `outage` for each of them, so that a hydrant that is
 * out for two reasons has two. The first row is always `summary`, with the count and its statement: a file with no other
 * row says that nothing is out, and a file without it was cut off. Both kinds carry the time of the check.
 *
 * A cell that a spreadsheet would run as a formula begins with an apostrophe; a figure stays a figure.
 */
export function csvFeed(snapshot: PublicSnapshot): string {
  const { checkedAt, relyUntil } = snapshot;
  const facts = checkedFactsOf(snapshot, snapshot.utility.locale);
  const times = { checked_at: checkedAt, do_not_rely_after: relyUntil };
  const summary: Cells = {
    row: 'summary',
    ...times,
    hydrants: facts.hydrants,
    hydrants_out_of_service: facts.outOfService,
    not_in_inventory: facts.notInInventory,
    utility: facts.utility,
    emergency_phone: facts.emergencyPhone,
    license: facts.license?.name ?? null,
    license_url: facts.license?.url ?? null,
    statement: facts.statement,
    reports_not_yet_shown: facts.notYetShown?.reports ?? 0,
    not_yet_shown_since: facts.notYetShown?.since ?? null,
  };
  const outages = snapshot.outOfService.flatMap((hydrant) =>
    hydrant.outages.map((outage): Cells => ({ row: 'outage', ...times, ...cellsOf(hydrant, outage) })),
  );
  const data = [summary, ...outages].map((cells) => csvColumns.map((column) => cells[column] ?? ''));
  return `${Papa.unparse({ fields: [...csvColumns], data }, { escapeFormulae: formulaCells, newline: '\r\n' })}\r\n`;
}

const cellsOf = (hydrant: PublicOutOfService, outage: PublicOutage): Cells => ({
  outage_id: outageUri(outage.outageId),
  hydrant_id: hydrant.hydrantId,
  in_inventory: hydrant.inInventory ? 'yes' : 'no',
  place: hydrant.place,
  latitude_deg: hydrant.position?.latitudeDeg ?? null,
  longitude_deg: hydrant.position?.longitudeDeg ?? null,
  cause: outage.cause,
  out_since: outage.since,
  expected_back_at: outage.expectedAt,
  waiting_for: outage.waitingFor,
  stage: outage.stage,
  held_by: outage.heldBy?.join(' ') ?? null,
  hydrant_class: hydrant.hydrantClass,
  rated_flow_gpm: hydrant.ratedFlowGpm,
  tested_on: hydrant.testedOn,
});
