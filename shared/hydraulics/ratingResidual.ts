/** Residual pressure at which hydrants are rated, psi. NFPA 291 §4.2.1 (seen). A setting. */
export const RATING_RESIDUAL_PSI = 20;
/** A system with a static below this is weak, psi. NFPA 291 §4.2 (from memory). A setting. */
export const WEAK_STATIC_PSI = 40;

/** `fixed`: always the rating residual. `half-static-when-weak`: half the static where that is below 40 psi. */
export const ratingRules = ['fixed', 'half-static-when-weak'] as const;
export type RatingRule = (typeof ratingRules)[number];

export interface Rating {
  readonly residualPsi: number;
  /** What was applied, so that a result always says how it was rated. */
  readonly basis: 'fixed' | 'half-static';
}

/** The residual at which a hydrant with this static is rated, psi. */
export function ratingResidual(
  staticPsi: number,
  rule: RatingRule,
  {
    ratingResidualPsi,
    weakStaticPsi,
  }: { readonly ratingResidualPsi: number; readonly weakStaticPsi: number },
): Rating {
  return rule === 'half-static-when-weak' && staticPsi < weakStaticPsi
    ? { residualPsi: staticPsi / 2, basis: 'half-static' }
    : { residualPsi: ratingResidualPsi, basis: 'fixed' };
}
