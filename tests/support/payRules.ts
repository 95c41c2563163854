import type { PayRules } from '../../shared/costs/book/labor.ts';
import type { RateBookEdition } from '../../shared/costs/rateBook.ts';
import { labor } from './rates.ts';

/** Invented pay rules: Monday to Friday, 7:30 to 16:00; one and a half outside; nothing else. */
export const plainRules: PayRules = {
  payRulesId: 'rules',
  title: 'Pay rules',
  workingHours: [{ days: [1, 2, 3, 4, 5], from: '07:30', to: '16:00' }],
  workingMinimumHours: null,
  otherHours: { multiplier: '1.5', minimumHours: null, minimumWhenAdjoining: false },
  holiday: null,
  holidays: [],
  week: null,
  increment: null,
  authorityId: 'a',
};

/** A book with one class, `crew`, under pay rules. */
export const ruledRates = (
  rules: Partial<PayRules> = {},
  hourlyUsd = '40',
  more: Partial<RateBookEdition['labor'][number]> = {},
): Pick<RateBookEdition, 'labor' | 'payRules'> => ({
  labor: [{ ...labor('crew', hourlyUsd), payRulesId: 'rules', ...more }],
  payRules: [{ ...plainRules, ...rules }],
});
