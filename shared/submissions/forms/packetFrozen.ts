import * as z from 'zod';
import { cents, instant, longText, sha256Hex, submissionId } from '../fields.ts';
import { form } from '../form.ts';

/**
 * A packet as it stood: its dates and ids come from here, so the same facts give the same bytes. Written by the
 * server when a clerk freezes; the hash lets anyone tell "issued by us" from "consistent".
 */
export const packetFrozen = form({
  kind: 'packet-frozen',
  subjects: ['claim'],
  writers: ['clerk', 'manager'],
  readers: ['clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    revision: z.number().int().min(1).max(999),
    frozenAt: instant,
    /** The submissions it was built from, so that a later one cannot slip in. */
    builtFrom: z.array(submissionId).min(1).max(5000),
    demandCents: cents,
    pdfSha256: sha256Hex,
    pdfBytes: z.number().int().min(1),
    /** From the second revision on: what changed and why, in the words of who froze it. */
    changes: longText.optional(),
    /** The companion archive with the originals. */
    archiveSha256: sha256Hex.optional(),
    archiveBytes: z.number().int().min(1).optional(),
    /** The detached signature of the PDF's hash: a compact JWS (RFC 7515), and the id of its key. */
    signature: z.string().max(2000).optional(),
    keyId: z.string().max(120).optional(),
  }),
});
