import { missingBefore } from '../../../../../shared/procedure/holdPoints.ts';
import { hazardsOf, recordedElsewhere, type ProcedureStep } from '../../../../../shared/procedure/steps.ts';
import { nameOf } from '../../core/people.ts';
import { to } from '../../core/router.ts';
import { localDay, readLocalTime } from '../localTime.ts';
import { textOf, type Values } from '../nodes.ts';
import type { ProcedureSoFar } from '../procedureSoFar.ts';
import { problemsAt, useScope } from './scope.ts';
import { StepExtras } from './StepExtras.tsx';
import type { StepProps } from './stepProps.ts';
import { StepModel } from './StepModel.tsx';

/** One step: done, recorded by another, held, or to be ticked with one touch. */
export function StepCard(props: StepProps) {
  const { id, planned, soFar, model, isNext, row, tick } = props;
  const { words } = useScope();
  const { step, ifNeeded, asked } = planned;
  const before = soFar.recorded.get(step);
  const title = words.t(`step.${step}`);
  const typed = row ? readLocalTime(textOf(row['doneAt']), words.zone) : null;
  const atMs = typed?.ok ? Date.parse(typed.instant) : Date.now();
  const missing = missingBefore(step, atMs, soFar.record);
  const held = missing.length > 0;
  const elsewhere = recordedElsewhere[step];
  const look = [
    row || before ? 'done' : held ? 'held' : isNext ? 'next' : '',
    asked ? '' : 'unasked',
    ifNeeded ? 'if-needed' : '',
  ];
  return (
    <li id={id} class={look.filter(Boolean).join(' ')}>
      <p class="step-title">
        {isNext && <span class="tag">{words.t('procedure.next')}</span>} {title}
      </p>
      {(ifNeeded || !asked) && (
        <p class="small soft">{words.t(asked ? 'procedure.if-needed' : 'procedure.not-here')}</p>
      )}
      {!row && (!before || held) && (
        <>
          <Hazards step={step} />
          <p class="caution">{words.t(`step.${step}.caution`)}</p>
        </>
      )}
      {model && <StepModel step={step} model={model} />}
      {step === 'isolated' && soFar.shutValve && (
        <p class="recorded">
          {words.t('procedure.valve-closed', {
            valveId: soFar.shutValve.valveId,
            when: words.when(soFar.shutValve.at),
            who: nameOf(soFar.shutValve.byWorkerId),
          })}
        </p>
      )}
      {before && (
        <p class="recorded">
          {words.t('procedure.recorded', { when: words.when(before.at), who: nameOf(before.byWorkerId) })}
        </p>
      )}
      <StepExtras {...props} />
      {row ? (
        <Ticked {...props} row={row} title={title} missing={missing} />
      ) : elsewhere ? (
        <Elsewhere kind={elsewhere} />
      ) : held ? (
        <Held missing={missing} soFar={soFar} />
      ) : (
        <button type="button" class={before ? 'link' : isNext ? 'primary tick' : 'plain tick'} onClick={tick}>
          {words.t(before ? 'form.done-again' : 'form.done')}
          <span class="visually-hidden"> {title}</span>
        </button>
      )}
    </li>
  );
}

function Hazards({ step }: { readonly step: ProcedureStep }) {
  const { words } = useScope();
  const hazards = hazardsOf(step);
  if (hazards.length === 0) return null;
  return (
    <p class="step-hazards">
      {hazards.map((hazard, index) => (
        <span key={hazard}>
          {index > 0 && ' · '}
          {words.t(`step-hazard.${hazard}`)}
        </span>
      ))}
    </p>
  );
}

const said = (steps: readonly ProcedureStep[], words: ReturnType<typeof useScope>['words']): string =>
  steps.map((step) => words.t(`step.${step}`)).join('; ');

interface HeldProps {
  readonly missing: readonly ProcedureStep[];
  readonly soFar: ProcedureSoFar;
}

/** Why it is not offered; and that what was confirmed counts no more, where water came in again. */
function Held({ missing, soFar }: HeldProps) {
  const { words } = useScope();
  const onceDone = missing.some((step) => soFar.record.done.some((each) => each.step === step));
  return (
    <p class="held-why">
      {words.t('form.step-held', { missing: said(missing, words) })}
      {onceDone && soFar.record.waterLetInMs.length > 0 && ` ${words.t('procedure.water-let-in')}`}
    </p>
  );
}

interface TickedProps extends StepProps {
  readonly row: Values;
  readonly title: string;
  readonly missing: readonly ProcedureStep[];
}

/** The clock alone on the day itself: that is when steps are ticked. */
const saidAt = (instant: string, words: ReturnType<typeof useScope>['words']): string =>
  localDay(new Date(instant), words.zone) === localDay(new Date(), words.zone)
    ? words.clock(instant)
    : words.when(instant);

/** Ticked here: when and who in one line, the fields behind a touch, and the way back. */
function Ticked({ row, title, missing, list, path, change, untick }: TickedProps) {
  const { Fields, words, problems } = useScope();
  const read = readLocalTime(textOf(row['doneAt']), words.zone);
  const who = textOf(row['byWorkerId']).trim();
  const wrong = problemsAt(problems, path, true).length > 0;
  const note = textOf(row['note']).trim();
  return (
    <div class="row ticked">
      {missing.length > 0 && (
        <p class="warning">{words.t('form.step-breach', { missing: said(missing, words) })}</p>
      )}
      <p>
        <strong>
          {words.t('procedure.ticked', {
            when: read.ok ? saidAt(read.instant, words) : '…',
            who: who === '' ? '…' : nameOf(who),
          })}
        </strong>
        {note !== '' && <span class="small"> {note}</span>}
      </p>
      <details open={wrong || !read.ok || who === ''}>
        <summary>
          {words.t('procedure.more')}
          <span class="visually-hidden"> {title}</span>
        </summary>
        <p class="caution">{words.t(`step.${textOf(row['step'])}.caution`)}</p>
        <Fields nodes={list.item} values={row} base={path} change={change} />
      </details>
      <button type="button" class="link" onClick={untick}>
        {words.t('form.not-done')}
        <span class="visually-hidden"> {title}</span>
      </button>
    </div>
  );
}

/** Recorded by a form of its own: the way there; this form is kept. */
function Elsewhere({ kind }: { readonly kind: 'flow-test' | 'return-to-service' }) {
  const { job, words } = useScope();
  return (
    <p class="small">
      {words.t(`procedure.elsewhere.${kind}`)}{' '}
      {(job.strike || job.hydrantId) && (
        <a href={to(['new', kind], { strike: job.strike?.strikeId ?? null, hydrant: job.hydrantId })}>
          {words.t(`procedure.to.${kind}`)}
        </a>
      )}
    </p>
  );
}
