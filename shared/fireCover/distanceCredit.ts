/**
 * Credit of a hydrant by how far it is, as hose can be laid: up to 1,000 gpm within 300 ft, 670 gpm within 600 ft, 250
 * gpm within 1,000 ft, nothing beyond. Source: ISO Fire Suppression Rating Schedule, hydrant distribution (as cities
 * print it in their rating reports; seen there, not in the schedule itself). It supposes a pumper outlet and 1,200 ft of
 * 2½ in hose carried.
 */
export const creditRings = [
  { toFt: 300, mostGpm: 1000 },
  { toFt: 600, mostGpm: 670 },
  { toFt: 1000, mostGpm: 250 },
] as const;
export const FARTHEST_FT = 1000;

/** Most that a hydrant without a pumper outlet is credited with, by its hose outlets. Same schedule, from memory. */
export const twoHoseOutletsGpm = 750;
export const oneHoseOutletGpm = 500;

/** What the credit needs to know of a hydrant. */
export interface Creditable {
  /** Its tested or stated flow at 20 psi, gpm; null when nobody knows. */
  readonly ratedFlowGpm: number | null;
  readonly outlets: readonly { readonly kind: 'hose' | 'pumper' }[];
  /** How many outlets, where only that is known. */
  readonly outletCount?: number | undefined;
}

export interface Credit {
  readonly gpm: number;
  /** False where something that is not known could make the true credit lower. */
  readonly certain: boolean;
  /** What that is. */
  readonly unknown: readonly ('flow' | 'outlets')[];
}

/** Most that its outlets let a hydrant be credited with; null when they are not known. */
function outletLimitGpm({ outlets, outletCount }: Creditable): number | null {
  if (outlets.some(({ kind }) => kind === 'pumper')) return creditRings[0].mostGpm;
  if (outlets.length === 1) return oneHoseOutletGpm;
  if (outlets.length > 1) return twoHoseOutletsGpm;
  // A lone outlet is no pumper and a pair of hoses; how many there are does not say which.
  return outletCount === 1 ? oneHoseOutletGpm : null;
}

/**
 * Credit of one hydrant at a distance in feet (0 or more): the least of what the distance, its outlets and its flow allow.
 *
 * @throws RangeError for a distance that is negative or no number
 */
export function creditOf(hydrant: Creditable, distanceFt: number): Credit {
  if (!(distanceFt >= 0)) throw new RangeError(`no distance: ${distanceFt}`);
  const ring = creditRings.find(({ toFt }) => distanceFt <= toFt);
  if (!ring) return { gpm: 0, certain: true, unknown: [] };
  const { ratedFlowGpm } = hydrant;
  const outlets = outletLimitGpm(hydrant);
  const gpm = Math.min(ring.mostGpm, outlets ?? ring.mostGpm, ratedFlowGpm ?? ring.mostGpm);
  const unknown: ('flow' | 'outlets')[] = [];
  if (ratedFlowGpm === null) unknown.push('flow');
  // Whatever outlets a hydrant has, they allow 500 gpm: below that they make no difference.
  if (outlets === null && gpm > oneHoseOutletGpm) unknown.push('outlets');
  return { gpm, certain: unknown.length === 0, unknown };
}
