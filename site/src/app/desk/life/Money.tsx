import type { ClaimMoney } from '../../../../../shared/payments/money.ts';
import { useWords } from '../../core/words.ts';

/** What was asked, what came, what was given up, and what is left. Only what there is. */
export function Money({ money }: { readonly money: ClaimMoney }) {
  const words = useWords();
  const rows = (
    [
      ['asked', money.askedCents],
      ['paid', money.paidCents],
      ['held', money.heldCents],
      ['unallocated', money.lines.length > 0 ? money.unallocatedCents : 0],
      ['cut', money.cuts.reduce((sum, { cents }) => sum + cents, 0)],
      ['written-off', money.writtenOffCents],
      ['refunded', money.refundedCents],
      ['shared', money.sharedCents],
      ['overpaid', money.overpaidCents],
    ] as const
  ).filter(([code, cents]) => cents > 0 || code === 'asked' || code === 'paid');
  return (
    <table class="money">
      <caption class="visually-hidden">{words.t('claim.life.money')}</caption>
      <tbody>
        {rows.map(([code, cents]) => (
          <tr key={code}>
            <th scope="row">{words.t(`claim.life.money.${code}`)}</th>
            <td class="amount">{words.money(cents)}</td>
          </tr>
        ))}
        <tr class="total">
          <th scope="row">{words.t('claim.life.money.balance')}</th>
          <td class="amount">{words.money(money.balanceCents)}</td>
        </tr>
      </tbody>
    </table>
  );
}
