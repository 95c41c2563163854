import { describe, expect, it } from 'vitest';
import { lifeKinds, nextSteps } from '../../../shared/claims/nextSteps.ts';
import type { ClaimLife } from '../../../shared/claims/life.ts';
import type { ClaimState } from '../../../shared/claims/state.ts';
import type { ClaimMoney } from '../../../shared/payments/money.ts';

const life = (more: Partial<ClaimLife>): ClaimLife =>
  ({
    standing: 'demand-sent',
    closed: false,
    adjusterOf: null,
    informationWaits: [],
    disputes: [],
    offersOpen: [],
    ...more,
  }) as unknown as ClaimLife;
const money = (overpaidCents = 0): ClaimMoney => ({ overpaidCents }) as unknown as ClaimMoney;
const none = { packets: [], demands: [] };
const likely = (more: Partial<ClaimLife>, overpaidCents = 0) =>
  nextSteps({ life: life(more), money: money(overpaidCents), ...none }).likely;
const revisions = (...all: number[]) =>
  all.map((revision) => ({ revision })) as unknown as ClaimState['packets'];

/** Which work comes next is common practice of a claims desk; there is no published source. */
describe('what is next on a claim', () => {
  it('offers every event once: among the likely ones, or among the others', () => {
    const { likely: first, others } = nextSteps({ life: life({}), money: money(), ...none });
    expect([...first, ...others].sort()).toEqual(
      [...lifeKinds].filter((kind) => kind !== 'claim-reopened').sort(),
    );
  });

  it('asks for the adjuster until there is one', () => {
    expect(likely({ standing: 'acknowledged' })[0]).toBe('adjuster-assigned');
    const adjusterOf = { submissionId: 'a', company: null };
    expect(likely({ standing: 'acknowledged', adjusterOf })).not.toContain('adjuster-assigned');
    // Another one may take the claim over.
    expect(
      nextSteps({ life: life({ standing: 'acknowledged', adjusterOf }), money: money(), ...none }).others,
    ).toContain('adjuster-assigned');
  });

  it('puts first what waits for an answer, and before all what was paid too much', () => {
    const informationWaits = [{ submissionId: 'a', on: '2026-03-01', by: null }];
    expect(likely({ standing: 'part-paid', informationWaits }, 1)).toEqual([
      'refund-paid',
      'information-given',
      'payment-received',
      'written-off',
    ]);
  });

  it('asks for a reply to a cut until there is one', () => {
    const cutsUnanswered = [{ submissionId: 'a', on: '2026-03-01', by: null }];
    expect(likely({ standing: 'part-paid', cutsUnanswered })[0]).toBe('dispute-answered');
    expect(likely({ standing: 'part-paid', cutsUnanswered: [] })[0]).toBe('payment-received');
    expect(likely({ standing: 'paid', cutsUnanswered })).toEqual(['claim-closed']);
  });

  it('asks for the demand of a revision that came after the last demand', () => {
    const of = (issued: number[], sent: number[]) =>
      nextSteps({
        life: life({ standing: 'part-paid' }),
        money: money(),
        packets: revisions(...issued),
        demands: revisions(...sent) as unknown as ClaimState['demands'],
      }).likely[0];
    expect(of([1, 2], [1])).toBe('demand-sent');
    expect(of([1, 2], [1, 2])).toBe('payment-received');
  });

  it('offers a closed claim nothing but to be opened again', () => {
    expect(likely({ standing: 'closed', closed: true }, 1)).toEqual(['claim-reopened']);
  });
});
