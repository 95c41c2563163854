import * as z from 'zod';
import { problemIssue } from '../problems/fromZod.ts';

/**
 * One hydrant of the utility's inventory. It holds what later work needs (model for the kit, install date for
 * depreciation, outlets for the flow test, lateral and valves for water lost and isolation). Everything but the id
 * and the place may be unknown, because real inventories are.
 */
export const hydrantId = z
  .string()
  .trim()
  // One spelling for one hydrant: `th-0348` typed at night is TH-0348, and a composed letter is the same letter.
  .normalize('NFC')
  .toUpperCase()
  // A capital can be written in parts again where the small letter was one (ΰ̀ becomes Ϋ and two accents).
  .normalize('NFC')
  .min(1)
  .max(64)
  // The id stands in addresses, file names and keys; control characters would break all three.
  .regex(/^[^\p{Cc}\u2028\u2029]+$/u);

/**
 * An id in something new. Signs that nobody sees (Unicode category Cf: marks that turn the direction of writing, joiners)
 * make two ids look alike or one look like another; records of before that have them stay readable by `hydrantId`.
 */
export const newHydrantId = hydrantId.superRefine((id, ctx) => {
  if (/\p{Cf}/u.test(id)) ctx.addIssue(problemIssue('unseen-signs'));
});

export const hydrantTypes = [
  'dry-barrel',
  'wet-barrel',
  'underground',
  'wall',
  'standpipe',
  'unknown',
] as const;
/**
 * `service` is the inventory's own word on an asset; whether a hydrant can be relied on comes from the ledger.
 * `inactive` is a source that says "out of service" at the time of the load: see `mayServe`.
 */
export const serviceStates = ['active', 'inactive', 'abandoned', 'planned', 'unknown'] as const;

/**
 * False for an asset that its own inventory says is not in use (inactive, abandoned, planned). Such a hydrant is never
 * offered as the nearest one, whatever the ledger holds; `unknown` (most open data) leaves the answer to the ledger.
 */
export const mayServe = ({ service }: { service: (typeof serviceStates)[number] }): boolean =>
  service === 'active' || service === 'unknown';
/** An abandoned or planned hydrant serves nobody: it is not counted. */
export const shouldServe = ({ service }: { service: (typeof serviceStates)[number] }): boolean =>
  service !== 'abandoned' && service !== 'planned';

export const outlet = z.strictObject({
  kind: z.enum(['hose', 'pumper']),
  diameterIn: z.number().min(1).max(12),
});

export const hydrant = z.strictObject({
  hydrantId,
  /** WGS 84 (EPSG:4326), decimal degrees. */
  latitudeDeg: z.number().min(-90).max(90),
  longitudeDeg: z.number().min(-180).max(180),
  place: z.string().max(200).nullable(),
  type: z.enum(hydrantTypes),
  service: z.enum(serviceStates),
  modelId: z.string().max(80).nullable(),
  installedOn: z.iso.date().nullable(),
  outlets: z.array(outlet).max(8),
  /** How many outlets, where the source counts them and does not give their sizes. Absent when `outlets` says it. */
  outletCount: z.number().int().min(0).max(8).optional(),
  mainSizeIn: z.number().min(1).max(120).nullable(),
  lateralSizeIn: z.number().min(1).max(48).nullable(),
  lateralLengthFt: z.number().min(0).max(2000).nullable(),
  buryDepthFt: z.number().min(0).max(30).nullable(),
  isolationValveId: z.string().max(64).nullable(),
  owner: z.string().max(120).nullable(),
  /** True when the hydrant is not the utility's own (a private yard, a plant). */
  private: z.boolean().nullable(),
  lastInspectedOn: z.iso.date().nullable(),
  /** The source's own rating or test result, if it had one; the ledger's flow tests override it. */
  ratedFlowGpm: z.number().min(0).max(20000).nullable(),
  /** Where this row came from, so that a doubtful value can be traced: file, line or feature number. */
  source: z.strictObject({ file: z.string().max(200), row: z.number().int().min(0) }),
});

export type Hydrant = z.infer<typeof hydrant>;
