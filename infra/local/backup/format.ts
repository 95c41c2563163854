import * as z from 'zod';
import { backedUp, type BackedUp } from '../../../functions/stores/backup/backupTables.ts';
import { rowJson } from '../../../functions/stores/backup/rowJson.ts';
import { sha256Hex } from '../../../shared/submissions/fields.ts';

/**
 * A backup is gzipped JSON Lines (RFC 1952, RFC 8259): a head, a line for each row and each file of evidence that stood,
 * and an end that counts them and has the SHA-256 of every byte before it. A file without its end was cut off. Every
 * format that was ever written stays readable.
 */
export const BACKUP_FORMAT = 1;
export const BACKUP_OF = 'hydrant-strike-ledger';

const count = z.number().int().min(0);

export const head = z.strictObject({
  backupOf: z.literal(BACKUP_OF),
  format: z.literal(BACKUP_FORMAT),
  takenAt: z.iso.datetime(),
});
export type Head = z.infer<typeof head>;

export const rowLine = rowJson.extend({ table: z.enum(backedUp) });
export type RowLine = z.infer<typeof rowLine>;

export const evidenceLine = z.strictObject({ evidence: sha256Hex });

export const end = z.strictObject({
  end: z.strictObject({
    rows: z.strictObject(
      Object.fromEntries(backedUp.map((name) => [name, count])) as Record<BackedUp, typeof count>,
    ),
    /** Files that stood in the evidence store. */
    evidence: count,
    /** Documents that facts name and whose bytes had not come. */
    awaited: count,
    /** What was kept for reading, to tell that a restore ends in the same. */
    projections: z.strictObject({ items: count, sha256: sha256Hex }),
    /** Of every byte before this line. */
    sha256: sha256Hex,
  }),
});
export type End = z.infer<typeof end>['end'];
