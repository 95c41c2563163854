import type { FormSpec } from '../../spec.ts';
import { paymentReceivedSpec, paymentReversedSpec, recoverySharedSpec, refundPaidSpec } from './money.ts';
import {
  acknowledgedSpec,
  adjusterAssignedSpec,
  claimDeniedSpec,
  informationAskedSpec,
  informationGivenSpec,
  lineDisputedSpec,
  offerMadeSpec,
} from './payer.ts';
import {
  claimClosedSpec,
  claimReferredSpec,
  claimReopenedSpec,
  deadlineAnsweredSpec,
  disputeAnsweredSpec,
  legalHoldSpec,
  offerAnsweredSpec,
  paymentPlanSpec,
  restitutionOrderedSpec,
  writtenOffSpec,
} from './utility.ts';

/** The forms of a claim's life after its packet. A letter sent is recorded by the server and has none. */
export const claimLifeSpecs: readonly FormSpec[] = [
  acknowledgedSpec,
  adjusterAssignedSpec,
  informationAskedSpec,
  informationGivenSpec,
  lineDisputedSpec,
  disputeAnsweredSpec,
  offerMadeSpec,
  offerAnsweredSpec,
  paymentReceivedSpec,
  paymentReversedSpec,
  refundPaidSpec,
  recoverySharedSpec,
  claimDeniedSpec,
  claimReferredSpec,
  restitutionOrderedSpec,
  paymentPlanSpec,
  deadlineAnsweredSpec,
  legalHoldSpec,
  writtenOffSpec,
  claimClosedSpec,
  claimReopenedSpec,
];
