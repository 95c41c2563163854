import { evaluateRecorded } from '../../../../shared/hydraulics/evaluateRecorded.ts';
import type { Submission } from '../../../../shared/submissions/submission.ts';
import { formatQuantity } from '../../../../shared/units/format.ts';
import { flowTestSettings } from '../core/utility.ts';
import { lifeHeadline } from './lifeHeadline.ts';
import type { Wording } from '../core/words.ts';

/** The one thing a reader wants to know of a recorded submission, in a line; '' where its title says it all. */
export function headline(submission: Submission, words: Wording): string {
  switch (submission.kind) {
    case 'strike':
      return submission.body.found ? words.t(`headline.flow.${submission.body.found.flow}`) : '';
    case 'outage':
      return words.t(`value.outageCause.${submission.body.cause}`);
    case 'valve-operation': {
      const { valveId, action } = submission.body;
      return `${valveId}: ${words.t(`value.valveAction.${action}`)}`;
    }
    case 'expected-return': {
      const { expectedAt, waitingFor } = submission.body;
      const waiting = words.t(`value.waitingFor.${waitingFor}`);
      return expectedAt === null ? waiting : `${words.when(expectedAt)} · ${waiting}`;
    }
    case 'repair':
      return submission.body.damage === null ? '' : words.t(`value.damage.${submission.body.damage}`);
    case 'flow-test':
      return flowTestLine(submission.body, words);
    case 'return-to-service':
      return words.t('headline.returned', { when: words.when(submission.body.returnedAt) });
    case 'inspection':
      return words.t(`value.inspectionResult.${submission.body.result}`);
    case 'planned-work':
      return words.t(`value.plannedWork.${submission.body.work}`);
    case 'claim-opened':
      return submission.body.claimNumber;
    case 'packet-frozen':
      return words.t('headline.revision', {
        revision: submission.body.revision,
        amount: words.money(submission.body.demandCents),
      });
    case 'demand-sent':
      return words.t('headline.revision', {
        revision: submission.body.revision,
        amount: words.money(submission.body.amountCents),
      });
    case 'correction':
      return submission.body.reason;
    case 'water-quality-answer':
      return words.t('headline.water-quality', {
        decision: words.t(`value.waterQuality.${submission.body.decision}`),
        who: submission.body.answeredBy ?? '—',
      });
    case 'water-lost':
      return waterLine(submission.body, words);
    default:
      return lifeHeadline(submission, words) ?? '';
  }
}

type WaterBody = Extract<Submission, { kind: 'water-lost' }>['body'];

function waterLine({ waterLostGal, estimate }: WaterBody, words: Wording): string {
  const gal = (value: number): string => formatQuantity(value, 'gal', words);
  const claim = gal(waterLostGal);
  if (estimate?.by === 'valve-held' && waterLostGal === 0) return words.t('headline.water-none');
  if (!estimate || estimate.by === 'own-figure') return claim;
  const { lowGal, bestGal, highGal } = estimate;
  return highGal === null
    ? words.t('headline.water-open', { claim, low: gal(lowGal), best: gal(bestGal) })
    : words.t('headline.water', { claim, low: gal(lowGal), high: gal(highGal) });
}

type FlowTestBody = Extract<Submission, { kind: 'flow-test' }>['body'];

function flowTestLine(body: FlowTestBody, words: Wording): string {
  const result = evaluateRecorded(body, flowTestSettings());
  if (!result || result.availableFlowGpm === null || result.className === null)
    return words.t('headline.flow-test-no-rating');
  return words.t('headline.flow-test', {
    flow: formatQuantity(result.availableFlowGpm, 'gpm', words),
    residual: formatQuantity(result.targetResidualPsi, 'psi', words),
    hydrantClass: result.className,
  });
}
