import { describe, expect, it } from 'vitest';
import type { FormContext } from '../../../site/src/app/form/spec.ts';
import { claimOpenedSpec } from '../../../site/src/app/form/specs/claim.ts';
import { fact, onStrike, recorded } from '../../support/submissions.ts';
import { sampleBodies } from '../../support/sampleBodies.ts';

/** What is on record of the payer is not typed a second time. */
const opened = (insurer: (typeof sampleBodies)['party']['insurer'], parties = 1) => {
  const all = Array.from({ length: parties }, (_, index) =>
    fact('party', 30 + index, onStrike(1), { ...sampleBodies.party, insurer }),
  );
  return claimOpenedSpec.blank({
    strike: { strikeId: 's', partyIds: all.map(({ submissionId }) => submissionId) },
    history: all.map((each) => recorded(each)),
    nextClaimNumber: 'C-1',
  } as unknown as FormContext);
};
const insurer = { ...sampleBodies.party.insurer!, company: 'Harbor Casualty', claimNumber: 'HC-77' };

describe('a claim that is opened', () => {
  it('takes its payer from the insurer of the only party', () => {
    expect(opened(insurer)).toMatchObject({
      payerKind: 'drivers-insurer',
      'payer.name': 'Harbor Casualty',
      'payer.reference': 'HC-77',
    });
  });
  it('is open where no insurer is recorded, or where there are two parties to choose from', () => {
    expect(opened(null)['payer.name']).toBeUndefined();
    expect(opened(insurer, 2)['payer.name']).toBeUndefined();
  });
});
