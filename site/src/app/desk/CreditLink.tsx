import type { StillBilled } from '../../../../shared/audit/accepted.ts';
import { useObservable } from '../core/observable.ts';
import { to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { mayWrite } from '../screens/may.ts';
import { sayParams } from './sayParams.ts';

interface Props {
  readonly billed: StillBilled;
  readonly strikeId: string;
  /** The claim to come back to. */
  readonly claimId: string;
}

/** The way to a credit for an accepted objection, filled in with what it is about, the money and the reason. */
export function CreditLink({ billed: { objection, leftCents }, strikeId, claimId }: Props) {
  const words = useWords();
  if (!mayWrite(useObservable(session), 'credit')) return null;
  const { key, rule, params, answered } = objection;
  const sentence = words.t(`objection.${rule}`, sayParams(params, words));
  return (
    <a
      class="button"
      href={to(['new', 'credit'], {
        strike: strikeId,
        claim: claimId,
        objection: key,
        title: sentence.slice(0, 200),
        cents: String(leftCents),
        basis: answered?.reason ?? '',
      })}
    >
      {words.t('objections.add-credit', { amount: words.money(leftCents) })}
      <span class="visually-hidden"> {sentence}</span>
    </a>
  );
}
