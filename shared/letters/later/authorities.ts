import type { ShortReason } from '../../submissions/forms/claimLife/common.ts';

/**
 * Reasons for which a published authority can be named in a reply. Its sentence is `letter.authority.<reason>`; what goes
 * the other way, for the clerk and not for the letter, is `letter.contrary.<reason>`. They are persuasive by analogy at
 * best: the federal rules bind whoever bills under them and no insurer, and counsel confirms before one is relied on.
 *
 * Sources, read as quoted in the costs reference: 23 CFR 645.117(b), (d), (e), (f), (h); 2 CFR 200.430(g); Horton v.
 * Georgia Power (1979), Duke Power v. Thornton (1991), Curt's Trucking v. Anchorage, 578 P.2d 975 (1978); MCL 500.3121;
 * 18 CFR 101.
 */
export const withAuthority: readonly ShortReason[] = [
  'depreciation',
  'betterment',
  'overhead',
  'hours',
  'rate',
  'equipment',
  'materials',
  'no-evidence',
];
/** Reasons on which published decisions differ. */
export const withContrary: readonly ShortReason[] = ['depreciation', 'overhead'];
