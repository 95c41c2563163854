import { rule, when, type Rule } from '../case.ts';
import { at, DAY_MS } from '../reading.ts';

/** How long before the last day to sue a reader is warned, days (common practice, no source). */
const LIMITATION_NEAR_DAYS = 180;

const filled = (value: string | null | undefined): boolean => (value ?? '').trim() !== '';

/** Who did it, who pays, and by when. */
export const liabilityRules: readonly Rule[] = [
  rule('no-crash-report', 'party', ({ party, facts, statement }) =>
    when(
      !filled(party?.police?.reportNumber) &&
        !facts.some(
          ({ fact }) =>
            fact.kind === 'documents' &&
            // A report that nobody can open, with no number to ask for it by, shows nothing.
            fact.body.documents.some(({ what, number }) => what === 'police-report' && filled(number)),
        ),
      () => ({ atStakeCents: statement.totalCents }),
    ),
  ),
  rule('liability-not-shown', 'party', ({ party, claim, statement }) =>
    when(
      party !== null &&
        claim.payerKind !== 'own-policy' &&
        !filled(party.driver?.name) &&
        !party.vehicles.some(({ plate, vin }) => filled(plate) || filled(vin)),
      () => ({ atStakeCents: statement.totalCents }),
    ),
  ),
  rule('nobody-known', 'party', ({ party, claim, statement }) =>
    when(party === null && claim.payerKind !== 'own-policy', () => ({ atStakeCents: statement.totalCents })),
  ),
  rule('hit-and-run-no-payer', 'claim-opened', ({ party, claim, statement }) =>
    when(
      party?.hitAndRun === 'yes' &&
        !filled(party.driver?.name) &&
        ['drivers-insurer', 'driver', 'unknown'].includes(claim.payerKind),
      () => ({ atStakeCents: statement.totalCents }),
    ),
  ),
  rule('insurer-unknown', 'party', ({ party, claim, statement }) =>
    when(
      claim.payerKind === 'drivers-insurer' && !filled(party?.insurer?.company) && !filled(claim.payer.name),
      () => ({ atStakeCents: statement.totalCents }),
    ),
  ),
  rule('no-policy-number', 'party', ({ party, claim, statement }) =>
    when(
      claim.payerKind === 'drivers-insurer' &&
        party !== null &&
        !filled(party.insurer?.policyNumber) &&
        !filled(party.insurer?.claimNumber) &&
        !filled(claim.payer.reference),
      () => ({ atStakeCents: statement.totalCents }),
    ),
  ),
  rule('time-of-strike-unknown', 'strike', ({ strike, statement }) =>
    when(strike.struckAt === null, () => ({ atStakeCents: statement.totalCents })),
  ),
  rule('limitation-near', null, ({ limitation, now, statement }) => {
    if (limitation === null) return [];
    const days = Math.floor((at(`${limitation.lastDay}T23:59:59Z`) - at(now)) / DAY_MS);
    return when(days < LIMITATION_NEAR_DAYS, () => ({
      atStakeCents: statement.totalCents,
      params: {
        days: Math.max(0, days),
        over: days < 0 ? 'yes' : 'no',
        lastDay: limitation.lastDay,
        citation: limitation.citation,
      },
    }));
  }),
];
