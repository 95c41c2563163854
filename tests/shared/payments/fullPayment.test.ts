import { describe, expect, it } from 'vitest';
import { demoUtility } from '../../../infra/local/demo/index.ts';
import { fullPaymentCautions } from '../../../shared/payments/fullPayment.ts';
import { sayFullPayment } from '../../../shared/payments/sayFullPayment.ts';
import { claimRules, type ClaimRules } from '../../../shared/payments/rules.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import type { BodyOf } from '../../../shared/submissions/submission.ts';
import { utilitySettings } from '../../../shared/utility/settings.ts';
import { fact, onClaim, recorded } from '../../support/submissions.ts';

/**
 * UCC § 3-311 (model text as published by the Legal Information Institute, Cornell; read November 2026): (a) the
 * instrument was tendered in good faith as full satisfaction, the claim was unliquidated or subject to a bona fide
 * dispute, and payment of it was obtained; (c)(1) an organization named an office for such cheques; (c)(2) "within 90
 * days after payment of the instrument" repayment was tendered, which is closed to an organization that named an
 * office; (d) it is discharged all the same when who had direct responsibility knew.
 */
const rules = (change: Partial<NonNullable<ClaimRules['fullPayment']>> = {}): ClaimRules =>
  claimRules.parse({
    fullPayment: {
      repayWithinDays: 90,
      officeNamed: null,
      citation: 'UCC 3-311(c)(2)',
      jurisdiction: 'invented state',
      confirmedBy: null,
      ...change,
    },
  });

const claim = onClaim(1);
const paid = (change: Partial<BodyOf<'payment-received'>> = {}) =>
  fact('payment-received', 10, claim, {
    receivedOn: '2026-04-20',
    amountCents: 900_00,
    how: 'cheque',
    marked: 'full',
    deposited: 'deposited',
    lines: [],
    ...change,
  });
const dispute = fact('line-disputed', 9, claim, { saidOn: '2026-04-01' });
const cautions = (submissions: readonly Parameters<typeof recorded>[0][], set: ClaimRules | null = rules()) =>
  fullPaymentCautions(
    effectiveFacts(submissions.map((each) => recorded(each))).facts,
    1000_00,
    set ?? undefined,
  );

describe('a payment marked as full', () => {
  it('may be tendered back within 90 days: 20 April and 90 days is 19 July 2026', () => {
    // date -d '2026-04-20 +90 days' (GNU coreutils): 2026-07-19.
    expect(cautions([dispute, paid()])).toMatchObject([
      { held: false, disputed: true, repayBy: '2026-07-19', amountCents: 900_00 },
    ]);
  });

  it('not where an office was named for such cheques, by 3-311(c)(2), nor where the state has no such rule', () => {
    expect(cautions([dispute, paid()], rules({ officeNamed: 'Box 7' }))[0]!.repayBy).toBeNull();
    expect(cautions([dispute, paid()], rules({ repayWithinDays: null }))[0]!.repayBy).toBeNull();
    expect(cautions([dispute, paid()], null)[0]).toMatchObject({ repayBy: null, rule: null });
  });

  it('leaves the choice open while the cheque is held, and is nothing once it went back', () => {
    expect(cautions([dispute, paid({ deposited: 'held' })])).toMatchObject([{ held: true, repayBy: null }]);
    expect(cautions([dispute, paid({ deposited: 'returned' })])).toEqual([]);
  });

  it('settles nothing when it is all that was asked; another mark is another thing', () => {
    expect(cautions([dispute, paid({ amountCents: 1000_00 })])).toEqual([]);
    expect(cautions([dispute, paid({ marked: 'part' })])).toEqual([]);
    expect(cautions([dispute, paid({ marked: 'not-marked' })])).toEqual([]);
  });

  it('settles nothing when it is all that was left after what came before; less than that may', () => {
    const first = fact('payment-received', 8, claim, {
      receivedOn: '2026-04-10',
      amountCents: 600_00,
      marked: 'part',
      deposited: 'deposited',
      lines: [],
    });
    expect(cautions([dispute, first, paid({ amountCents: 400_00 })])).toEqual([]);
    expect(cautions([dispute, first, paid({ amountCents: 399_99 })])).toHaveLength(1);
    // What came after it, or lies in the drawer, left nothing less to ask for then.
    const later = { ...first, body: { ...first.body, receivedOn: '2026-04-21' } };
    expect(cautions([dispute, later, paid({ amountCents: 400_00 })])).toHaveLength(1);
  });

  it('says whether the claim was in dispute: by a dispute, a denial or a cut, and only from then on', () => {
    expect(cautions([paid()])[0]!.disputed).toBe(false);
    expect(cautions([fact('line-disputed', 11, claim, { saidOn: '2026-05-01' }), paid()])[0]!.disputed).toBe(
      false,
    );
    expect(cautions([fact('claim-denied', 11, claim, { deniedOn: '2026-04-02' }), paid()])[0]!.disputed).toBe(
      true,
    );
    const cut = {
      lineId: 'labor-1',
      paidCents: 0,
      shortCents: 100_00,
      reason: 'hours' as const,
      words: null,
    };
    expect(cautions([paid({ lines: [cut] })])[0]!.disputed).toBe(true);
  });

  it('is told in both languages, with its source, and as unconfirmed until counsel is named', () => {
    for (const locale of ['en', 'es'] as const) {
      const [open] = cautions([dispute, paid()]);
      const told = sayFullPayment(locale, open!).join(' ');
      for (const part of ['90', '2026-07-19', 'UCC 3-311(c)(2)', 'invented state'])
        expect(told).toContain(part);
      expect(told).not.toMatch(/\[|\{/);
      const [sure] = cautions(
        [dispute, paid({ how: 'transfer' })],
        rules({ confirmedBy: { name: 'A. Counsel', on: '2026-02-03' }, officeNamed: 'Box 7' }),
      );
      const known = sayFullPayment(locale, sure!).join(' ');
      for (const part of ['A. Counsel', '2026-02-03', 'Box 7']) expect(known).toContain(part);
      expect(sayFullPayment(locale, cautions([paid()], null)[0]!).join(' ')).toContain('UCC 3-311');
    }
  });
});

describe('the settings', () => {
  it('hold the rules of a state with their sources, and none by default', () => {
    expect(demoUtility.claimRules?.fullPayment?.confirmedBy ?? null).toBeNull();
    // Positions as the project's reference of published cases has them: MCL 500.3121 limits to replacement less
    // depreciation; decisions of Ohio deduct it; Horton v. Georgia Power (1979) and Duke Power v. Thornton (1991) do not.
    for (const [position, citation] of [
      ['replacement-less-depreciation', 'MCL 500.3121'],
      ['deducted', 'decisions of Ohio courts'],
      ['not-deducted', 'Horton v. Georgia Power, 1979'],
    ] as const)
      expect(
        utilitySettings.safeParse({
          ...demoUtility,
          claimRules: { depreciation: { position, citation, jurisdiction: 'a state', confirmedBy: null } },
        }).success,
      ).toBe(true);
  });

  it('take no rule without its source', () => {
    const parsed = claimRules.safeParse({
      fullPayment: { repayWithinDays: 90, officeNamed: null, jurisdiction: 'x', confirmedBy: null },
    });
    expect(parsed.error?.issues.map(({ path }) => path.join('.'))).toEqual(['fullPayment.citation']);
    expect(
      claimRules.safeParse({ fullPayment: { ...rules().fullPayment, repayWithinDays: 0 } }).success,
    ).toBe(false);
  });
});
