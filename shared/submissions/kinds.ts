import { acknowledged } from './forms/claimLife/acknowledged.ts';
import { adjusterAssigned } from './forms/claimLife/adjusterAssigned.ts';
import { deadlineAnswered, legalHold } from './forms/claimLife/deadlineAnswered.ts';
import { claimDenied } from './forms/claimLife/denied.ts';
import { disputeAnswered } from './forms/claimLife/disputeAnswered.ts';
import { writtenOff, claimClosed, claimReopened } from './forms/claimLife/ended.ts';
import { informationAsked, informationGiven } from './forms/claimLife/information.ts';
import { letterSent } from './forms/claimLife/letterSent.ts';
import { lineDisputed } from './forms/claimLife/lineDisputed.ts';
import { paymentReversed, refundPaid, recoveryShared } from './forms/claimLife/moneyOut.ts';
import { offerMade, offerAnswered } from './forms/claimLife/offer.ts';
import { paymentReceived } from './forms/claimLife/paymentReceived.ts';
import { claimReferred, restitutionOrdered, paymentPlan } from './forms/claimLife/referred.ts';
import { claimHandling } from './forms/claimHandling.ts';
import { claimOpened } from './forms/claimOpened.ts';
import { counterCalculation } from './forms/counterCalculation.ts';
import { credit } from './forms/credit.ts';
import { demandSent } from './forms/demandSent.ts';
import { documents } from './forms/documents.ts';
import { erasure } from './forms/erasure.ts';
import { expectedReturn } from './forms/expectedReturn.ts';
import { flowTest } from './forms/flowTest.ts';
import { hydrantModel } from './forms/hydrantModel.ts';
import { inspection } from './forms/inspection.ts';
import { inventoryLoaded } from './forms/inventoryLoaded.ts';
import { letterText } from './forms/letterText.ts';
import { link } from './forms/link.ts';
import { objectionAnswer } from './forms/objectionAnswer.ts';
import { outage } from './forms/outage.ts';
import { outOfServiceNotice } from './forms/outOfServiceNotice.ts';
import { packetFrozen } from './forms/packetFrozen.ts';
import { party } from './forms/party.ts';
import { plannedWork } from './forms/plannedWork.ts';
import { rateBook } from './forms/rateBook.ts';
import { repair } from './forms/repair.ts';
import { returnToService } from './forms/returnToService.ts';
import { stockCount } from './forms/stockCount.ts';
import { stockMinimum } from './forms/stockMinimum.ts';
import { stockMove } from './forms/stockMove.ts';
import { strike } from './forms/strike.ts';
import { valveOperation } from './forms/valveOperation.ts';
import { waterLost } from './forms/waterLost.ts';
import { waterQualityAnswer } from './forms/waterQualityAnswer.ts';
import { weekHours } from './forms/weekHours.ts';

/** Every form but the correction, which replaces one of these. */
export const forms = {
  [strike.kind]: strike,
  [party.kind]: party,
  [outage.kind]: outage,
  [outOfServiceNotice.kind]: outOfServiceNotice,
  [expectedReturn.kind]: expectedReturn,
  [inspection.kind]: inspection,
  [plannedWork.kind]: plannedWork,
  [valveOperation.kind]: valveOperation,
  [waterQualityAnswer.kind]: waterQualityAnswer,
  [waterLost.kind]: waterLost,
  [repair.kind]: repair,
  [flowTest.kind]: flowTest,
  [returnToService.kind]: returnToService,
  [link.kind]: link,
  [documents.kind]: documents,
  [weekHours.kind]: weekHours,
  [credit.kind]: credit,
  [counterCalculation.kind]: counterCalculation,
  [claimHandling.kind]: claimHandling,
  [claimOpened.kind]: claimOpened,
  [letterText.kind]: letterText,
  [objectionAnswer.kind]: objectionAnswer,
  [packetFrozen.kind]: packetFrozen,
  [demandSent.kind]: demandSent,
  [acknowledged.kind]: acknowledged,
  [adjusterAssigned.kind]: adjusterAssigned,
  [informationAsked.kind]: informationAsked,
  [informationGiven.kind]: informationGiven,
  [lineDisputed.kind]: lineDisputed,
  [disputeAnswered.kind]: disputeAnswered,
  [offerMade.kind]: offerMade,
  [offerAnswered.kind]: offerAnswered,
  [paymentReceived.kind]: paymentReceived,
  [paymentReversed.kind]: paymentReversed,
  [refundPaid.kind]: refundPaid,
  [recoveryShared.kind]: recoveryShared,
  [claimDenied.kind]: claimDenied,
  [claimReferred.kind]: claimReferred,
  [restitutionOrdered.kind]: restitutionOrdered,
  [paymentPlan.kind]: paymentPlan,
  [letterSent.kind]: letterSent,
  [deadlineAnswered.kind]: deadlineAnswered,
  [legalHold.kind]: legalHold,
  [writtenOff.kind]: writtenOff,
  [claimClosed.kind]: claimClosed,
  [claimReopened.kind]: claimReopened,
  [inventoryLoaded.kind]: inventoryLoaded,
  [rateBook.kind]: rateBook,
  [hydrantModel.kind]: hydrantModel,
  [stockCount.kind]: stockCount,
  [stockMove.kind]: stockMove,
  [stockMinimum.kind]: stockMinimum,
  [erasure.kind]: erasure,
} as const;

export type FactKind = keyof typeof forms;
export const factKinds = Object.keys(forms) as [FactKind, ...FactKind[]];
export const isFactKind = (kind: unknown): kind is FactKind =>
  typeof kind === 'string' && Object.hasOwn(forms, kind);

export const correctionKind = 'correction';
export type Kind = FactKind | typeof correctionKind;
export const kinds: readonly Kind[] = [...factKinds, correctionKind];
