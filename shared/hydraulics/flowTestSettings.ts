import { standardBands, type ClassBand } from './hydrantClass.ts';
import { MINIMUM_DROP_FRACTION } from './pressureDrop.ts';
import { RATING_RESIDUAL_PSI, WEAK_STATIC_PSI, type RatingRule } from './ratingResidual.ts';

/** A pitot gauge's useful range on one kind of outlet, psi. */
export interface PitotRange {
  readonly minimumPsi: number;
  readonly maximumPsi: number;
}

/** What a utility may set otherwise. Each default names its source in its own file or below. */
export interface FlowTestSettings {
  readonly ratingResidualPsi: number;
  readonly weakStaticPsi: number;
  readonly ratingRule: RatingRule;
  readonly minimumDropFraction: number;
  readonly classBands: readonly ClassBand[];
  /**
   * Hose outlet 10 to 30 psi: at least 10 psi by one fire department's form (seen), up to 30 psi by NFPA 291 (from
   * memory). Pumper outlet 5 to 10 psi: NFPA 291 (second-hand).
   */
  readonly pitot: Readonly<Record<'hose' | 'pumper', PitotRange>>;
  /** 0.70 projecting to 0.90 rounded by shape, up to 0.97 for a smooth tapered nozzle (common practice, no source). */
  readonly usualCoefficient: { readonly minimum: number; readonly maximum: number };
  /** Hose outlets are 2½ or 3 in; one this wide is likely a pumper outlet (common practice, no source). */
  readonly pumperFromIn: number;
  /** No test of a few hydrants flows more; a slip of the pen does (common practice, no source). */
  readonly mostFlowGpm: number;
}

export const standardFlowTestSettings: FlowTestSettings = {
  ratingResidualPsi: RATING_RESIDUAL_PSI,
  weakStaticPsi: WEAK_STATIC_PSI,
  ratingRule: 'fixed',
  minimumDropFraction: MINIMUM_DROP_FRACTION,
  classBands: standardBands,
  pitot: { hose: { minimumPsi: 10, maximumPsi: 30 }, pumper: { minimumPsi: 5, maximumPsi: 10 } },
  usualCoefficient: { minimum: 0.7, maximum: 0.97 },
  pumperFromIn: 4,
  mostFlowGpm: 20_000,
};
