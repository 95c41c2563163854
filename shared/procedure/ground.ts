import * as z from 'zod';
import { chosenId, instant } from '../submissions/fields.ts';

/** What the look for hidden damage showed. Words: `value.hiddenDamage.<code>`. */
export const hiddenDamages = [
  'nothing',
  'bent-stem',
  'cracked-barrel',
  'scored-seat',
  'blocked-drain',
  'other',
] as const;
export type HiddenDamage = (typeof hiddenDamages)[number];

/**
 * Found damage that is not mended from the top: the form then proposes the dig. A bent stem, a scored seat and a blocked
 * drain often are, with the maker's tools; the crew says. Common practice, no source.
 */
export const asksForDig: readonly HiddenDamage[] = ['cracked-barrel'];

/**
 * How the sides of the excavation are held. `shallow-and-sound`: less than 5 ft and no sign of a cave-in, as a competent
 * person found (29 CFR 1926.652(a)(1), from memory). Words: `value.trenchProtection.<code>`.
 */
export const trenchProtections = ['sloped', 'shored', 'shield', 'stable-rock', 'shallow-and-sound'] as const;

/** From this depth a trench is protected unless it is cut in stable rock, ft (29 CFR 1926.652(a)(1), from memory). */
export const PROTECT_FROM_FT = 5;

/**
 * What a dig stands on. Utilities are located before the ground is opened (29 CFR 1926.651(b), seen); who may enter, and
 * how the sides are held, a competent person decides (1926.651(k) and .652, from memory). All of it may follow later: a
 * record without it is kept, and shown as a breach where the ground was opened.
 */
export const dig = z.strictObject({
  /** Number of the locate ticket, an emergency ticket's too. */
  locateTicket: z.string().trim().min(1).max(60).optional(),
  /** From when the ticket lets the ground be opened. */
  locateClearFrom: instant.optional(),
  trenchDepthFt: z.number().gt(0).max(40).optional(),
  trenchProtection: z.enum(trenchProtections).optional(),
  competentPersonWorkerId: chosenId.optional(),
});
export type Dig = z.output<typeof dig>;

/**
 * True where a trench of this depth is said to need nothing because it is shallow: 5 ft and more are protected or cut in
 * stable rock. A doubt beside the field, never a refusal.
 */
export const tooDeepForNothing = ({ trenchDepthFt, trenchProtection }: Dig): boolean =>
  trenchProtection === 'shallow-and-sound' && trenchDepthFt !== undefined && trenchDepthFt >= PROTECT_FROM_FT;
