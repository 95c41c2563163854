import { lifeCautions, type LifeCaution } from '../../../../../shared/claims/cautions.ts';
import type { Statement } from '../../../../../shared/costs/statement.ts';
import { useFocusOnMount } from '../../core/focus.ts';
import { useStatement } from '../../core/records.ts';
import type { Wording } from '../../core/words.ts';
import { encode } from '../encode.ts';
import type { Values } from '../nodes.ts';
import type { FormContext, FormSpec } from '../spec.ts';
import { useScope } from './scope.ts';

/**
 * What to have read before this event of a claim is recorded, from what is typed so far. The balance holds a record that
 * is corrected already, so a correction is not measured against it.
 */
function cautionsNow(
  spec: FormSpec,
  job: FormContext,
  values: Values,
  zone: string,
  corrects = false,
  statement: Statement | null = null,
): readonly LifeCaution[] {
  const { body } = encode(spec.nodes, values, { zone, nullable: spec.nullable });
  return lifeCautions(
    spec.kind,
    body,
    corrects ? null : (job.claim?.money ?? null),
    new Map(statement?.lines.map(({ lineId, amountCents }) => [lineId, amountCents ?? 0])),
  );
}

/** A payment marked as full that would be recorded as cashed is asked about once more. */
export const asksToHold = (spec: FormSpec, job: FormContext, values: Values, zone: string): boolean =>
  values['deposited'] === 'deposited' &&
  cautionsNow(spec, job, values, zone).some(({ code }) => code === 'full-payment');

function sayCaution({ code, params }: LifeCaution, words: Wording): string {
  const amounts = Object.entries(params).map(([name, value]) => [
    name.replace(/Cents$/, ''),
    typeof value === 'number' ? words.money(value) : value,
  ]);
  return words.t(`caution.life.${code}`, Object.fromEntries(amounts) as Record<string, string>);
}

export interface LifeCautionsProps {
  readonly corrects: boolean;
  readonly values: Values;
  readonly change: (next: Values) => void;
}

/** The cautions that what is typed calls for, said as soon as it calls for them. */
export function LifeCautions({ corrects, values, change }: LifeCautionsProps) {
  const { spec, job, words } = useScope();
  // Read already by whoever picks a line; only a dispute is measured against them.
  const statement = useStatement(spec.kind === 'line-disputed' ? (job.claim?.claimId ?? null) : null);
  const cautions = cautionsNow(spec, job, values, words.zone, corrects, statement.value);
  const mayHold = cautions.some(({ code }) => code === 'full-payment') && values['deposited'] !== 'held';
  return (
    <div role="status">
      {cautions.length > 0 && (
        <div class="cautions">
          {cautions.map((caution) => (
            <p key={caution.code}>{sayCaution(caution, words)}</p>
          ))}
          {mayHold && (
            <p>
              <button type="button" class="plain" onClick={() => change({ ...values, deposited: 'held' })}>
                {words.t('caution.life.hold')}
              </button>
            </p>
          )}
        </div>
      )}
    </div>
  );
}

export interface AskToHoldProps {
  readonly onHold: () => void;
  readonly onSure: () => void;
}

/** Asks once: a cheque marked as full payment is held, or was deposited knowingly. */
export function AskToHold({ onHold, onSure }: AskToHoldProps) {
  const { words } = useScope();
  const hold = useFocusOnMount<HTMLButtonElement>();
  return (
    <div class="warning" role="alertdialog" aria-label={words.t('full-payment-ask.title')}>
      <p>
        <strong>{words.t('full-payment-ask.title')}</strong>
      </p>
      <p>{words.t('caution.life.full-payment')}</p>
      <p class="actions">
        <button type="button" class="primary" onClick={onHold} ref={hold}>
          {words.t('caution.life.hold')}
        </button>
        <button type="button" onClick={onSure}>
          {words.t('full-payment-ask.sure')}
        </button>
      </p>
    </div>
  );
}
