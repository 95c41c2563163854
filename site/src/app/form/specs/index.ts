import { claimLifeSpecs } from './claimLife/index.ts';
import type { FactKind } from '../../../../../shared/submissions/kinds.ts';
import type { FormSpec } from '../spec.ts';
import {
  claimHandlingSpec,
  counterCalculationSpec,
  creditSpec,
  documentsSpec,
  weekHoursSpec,
} from './bill.ts';
import { claimOpenedSpec, demandSentSpec } from './claim.ts';
import { flowTestSpec } from './flowTest.ts';
import { hydrantModelSpec } from './hydrantModel.ts';
import { expectedReturnSpec, noticeSpec, outageSpec } from './notice.ts';
import { letterTextSpec } from './letterText.ts';
import { objectionAnswerSpec } from './objectionAnswer.ts';
import { partySpec } from './party.ts';
import { rateBookSpec } from './rateBook.ts';
import { repairSpec } from './repair.ts';
import { returnToServiceSpec } from './returnToService.ts';
import { inspectionSpec, linkSpec, plannedWorkSpec, valveOperationSpec } from './shortForms.ts';
import { stockCountSpec, stockMinimumSpec, stockMoveSpec } from './stock.ts';
import { strikeSpec } from './strike.ts';
import { waterQualityAnswerSpec } from './waterQualityAnswer.ts';
import { waterLostSpec } from './waterLost.ts';

/** Every form that a person fills in here. What the server writes (a packet frozen) or a command loads is not among it. */
export const specs: Partial<Record<FactKind, FormSpec>> = Object.fromEntries(
  [
    strikeSpec,
    noticeSpec,
    valveOperationSpec,
    expectedReturnSpec,
    partySpec,
    repairSpec,
    flowTestSpec,
    returnToServiceSpec,
    outageSpec,
    inspectionSpec,
    plannedWorkSpec,
    linkSpec,
    waterLostSpec,
    waterQualityAnswerSpec,
    documentsSpec,
    weekHoursSpec,
    creditSpec,
    counterCalculationSpec,
    claimHandlingSpec,
    claimOpenedSpec,
    demandSentSpec,
    ...claimLifeSpecs,
    letterTextSpec,
    objectionAnswerSpec,
    rateBookSpec,
    hydrantModelSpec,
    stockCountSpec,
    stockMoveSpec,
    stockMinimumSpec,
  ].map((spec) => [spec.kind, spec]),
);

export const specOf = (kind: string): FormSpec | null => specs[kind as FactKind] ?? null;
