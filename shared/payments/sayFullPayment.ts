import { say, type Locale, type WordKey } from '../words/index.ts';
import type { FullPaymentCaution } from './fullPayment.ts';

/** The caution as sentences, in a person's language. */
export function sayFullPayment(locale: Locale, caution: FullPaymentCaution): string[] {
  const { rule, held, disputed, repayBy, how } = caution;
  const sentence = (key: WordKey, params: Record<string, string | number> = {}): string =>
    say(locale, key, params);
  return [
    sentence(held ? 'caution.full-payment.held' : 'caution.full-payment.cashed'),
    sentence(disputed ? 'caution.full-payment.disputed' : 'caution.full-payment.not-disputed'),
    ...(how === 'cheque' ? [] : [sentence('caution.full-payment.no-cheque')]),
    ...(repayBy === null
      ? []
      : [sentence('caution.full-payment.repay-by', { days: rule?.repayWithinDays ?? 0, date: repayBy })]),
    ...(rule?.officeNamed ? [sentence('caution.full-payment.office', { office: rule.officeNamed })] : []),
    rule === null
      ? sentence('caution.full-payment.no-rule')
      : rule.confirmedBy === null
        ? sentence('caution.full-payment.to-confirm', {
            citation: rule.citation,
            jurisdiction: rule.jurisdiction,
          })
        : sentence('caution.full-payment.confirmed', {
            citation: rule.citation,
            jurisdiction: rule.jurisdiction,
            name: rule.confirmedBy.name,
            date: rule.confirmedBy.on,
          }),
  ];
}
