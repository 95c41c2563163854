import type { InventoryMeta } from '../../shared/inventory/edition.ts';
import { uuid } from './submissions.ts';

/** What the load of an invented town's inventory says of itself. */
export const townMeta = (rows: number): InventoryMeta => ({
  submissionId: uuid(40),
  loadedAt: '2026-02-01T12:00:00.000Z',
  loadedBy: 'm-1',
  sourceFile: 'town.csv',
  sourceSha256: '0'.repeat(64),
  crs: 'EPSG:4326',
  mapping: {},
  rows,
  accepted: rows,
  doubtful: 0,
  rejected: 0,
});
