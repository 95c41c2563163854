import * as z from 'zod';
import { chosenId, instant, sha256Hex, shortText } from '../fields.ts';
import { form } from '../form.ts';

/** An inventory came into force. The rows themselves are immutable files; this fact names them by hash. */
export const inventoryLoaded = form({
  kind: 'inventory-loaded',
  subjects: ['utility'],
  writers: ['manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    loadedAt: instant,
    loadedBy: chosenId,
    sourceFile: shortText,
    sourceSha256: sha256Hex,
    manifestSha256: sha256Hex,
    rows: z.number().int().min(0),
    accepted: z.number().int().min(0),
    doubtful: z.number().int().min(0),
    rejected: z.number().int().min(0),
  }),
});
