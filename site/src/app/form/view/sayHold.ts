import type { Hold } from '../../../../../shared/outages/returnEffect.ts';
import type { Wording } from '../../core/words.ts';

/** Why a return has no effect, as a sentence. */
export const sayHold = ({ code, proof, valveId }: Hold, words: Wording): string =>
  words.t(`hold.${code}`, { proof: proof ? words.t(`proof.${proof}`) : '', valveId: valveId ?? '' });
