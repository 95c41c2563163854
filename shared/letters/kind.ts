import type { PayerKind } from '../submissions/forms/claimOpened.ts';
import type { letterKinds } from '../submissions/forms/letterText.ts';
import type { BodyOf } from '../submissions/submission.ts';

export type LetterKind = (typeof letterKinds)[number];

const byPayer: Record<PayerKind, LetterKind> = {
  'drivers-insurer': 'demand-insurer',
  'self-insured': 'demand-self-insured',
  government: 'notice-government',
  'own-policy': 'claim-own-policy',
  driver: 'demand-driver',
  restitution: 'restitution-statement',
  unknown: 'cover-unknown-payer',
};
/** Letters to somebody who is found only once the driver is. */
const needsDriver: readonly LetterKind[] = ['demand-insurer', 'demand-driver', 'demand-self-insured'];

export interface Payer {
  readonly payerKind: PayerKind;
  readonly payerName: string | null;
  readonly hitAndRun: BodyOf<'party'>['hitAndRun'];
}

/**
 * Which letter a claim's packet opens with. After a hit and run there is nobody to demand from until a payer is named;
 * until then the letter is the one for a payer who is not known.
 */
export function letterKindFor({ payerKind, payerName, hitAndRun }: Payer): LetterKind {
  const letter = byPayer[payerKind];
  return hitAndRun === 'yes' && payerName === null && needsDriver.includes(letter)
    ? 'cover-unknown-payer'
    : letter;
}
