import type { ClaimRules } from '../../payments/rules.ts';
import type { ShortReason } from '../../submissions/forms/claimLife/common.ts';
import type { Locale } from '../../words/index.ts';
import type { LaterValues } from './fields.ts';
import type { LaterLetterKind } from './letter.ts';

/** A letter after the packet as the desk begins it. */
export interface LaterDraft {
  readonly letter: LaterLetterKind;
  readonly locale: Locale;
  /** Today in the utility's zone. */
  readonly on: string;
  readonly to: string;
  readonly template: string;
  readonly values: LaterValues;
  /** Reasons on which published decisions differ: said to the clerk, not in the letter. */
  readonly contrary: readonly ShortReason[];
  /** What the utility's settings say of its own courts on depreciation. */
  readonly depreciationHere: NonNullable<ClaimRules['depreciation']> | null;
}
