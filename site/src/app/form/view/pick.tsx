import { deadlineWords } from '../../../../../shared/clocks/words.ts';
import type { Outage } from '../../../../../shared/outages/hydrantStatus.ts';
import { ofKind, effectiveFacts } from '../../../../../shared/submissions/effective.ts';
import type { Submission } from '../../../../../shared/submissions/submission.ts';
import { deadlineTitle } from '../../desk/life/deadlineTitle.ts';
import { lineTitle } from '../../desk/lineWords.ts';
import { useDeadlines, useStatement, useStrikes } from '../../core/records.ts';
import { partyTitle, strikeTitle } from '../../screens/titles.ts';
import { writeCents } from '../number.ts';
import { stringsOf, textOf, type Values } from '../nodes.ts';
import type { FormContext } from '../spec.ts';
import { Dropdown, Radios, type Option } from './choice.tsx';
import { FieldShell } from './FieldShell.tsx';
import type { PropsOf } from './props.ts';
import { useScope, type Scope } from './scope.ts';

const outageOption = ({ words }: Scope, { outageId, cause, since }: Outage): Option => ({
  value: outageId,
  label: words.t(`value.outageCause.${cause}`),
  more: words.t('form.since', { when: words.when(since) }),
});

/** Outages that may be ended: every open one of the hydrant, and the strike in hand even when no hydrant is known. */
function openOutages(scope: Scope, { status, strike }: FormContext): Option[] {
  const open = (status?.open ?? []).map((outage) => outageOption(scope, outage));
  if (!strike || open.some(({ value }) => strike.memberIds.includes(value))) return open;
  const { words } = scope;
  return [
    {
      value: strike.strikeId,
      label: words.t('value.outageCause.strike'),
      more: words.t('form.since', { when: words.when(strike.since) }),
    },
    ...open,
  ];
}

export function OutagesField({ leaf, path, value, set }: PropsOf<'outages'>) {
  const scope = useScope();
  const chosen = stringsOf(value);
  const known = openOutages(scope, scope.job);
  // An id that is no longer open (a correction) stays to be seen and unticked.
  const options = [
    ...known,
    ...chosen
      .filter((id) => !known.some((option) => option.value === id))
      .map((id): Option => ({ value: id, label: id })),
  ];
  const toggle = (id: string): void =>
    set(chosen.includes(id) ? chosen.filter((each) => each !== id) : [...chosen, id]);
  return (
    <FieldShell
      leaf={leaf}
      path={path}
      group="group"
      hint={options.length > 1 ? scope.words.t('form.all-must-end') : undefined}
    >
      {() => (
        <div class="choices wide">
          {options.map((option) => (
            <label class="choice" key={option.value}>
              <input
                type="checkbox"
                checked={chosen.includes(option.value)}
                onChange={() => toggle(option.value)}
              />
              <span>
                {option.label}
                {option.more && <small> {option.more}</small>}
              </span>
            </label>
          ))}
          {options.length === 0 && <p>{scope.words.t('form.no-open-outage')}</p>}
        </div>
      )}
    </FieldShell>
  );
}

/** An event of a claim by what it is, its amount and its day. */
function eventOption({ submissionId, kind, body }: Submission, { words, job }: Scope): Option {
  const event = job.claim?.life.events.find((each) => each.submissionId === submissionId);
  const cents = (body as { readonly amountCents?: number | null }).amountCents ?? null;
  return {
    value: submissionId,
    label: words.t(`kind.${kind}`),
    more: [cents === null ? null : words.money(cents), event ? words.day(event.on) : null]
      .filter((part) => part !== null)
      .join(' · '),
  };
}

interface PickOption extends Option {
  /** What follows from it, as it would be typed. */
  readonly fills?: string;
}

/** A date that still asks for something. */
const runs = (state: string): boolean => ['running', 'due-today', 'overdue'].includes(state);

/** What can be picked, and what to say when there is nothing. */
function useOptions({ of, kinds = [] }: PropsOf<'pick'>['leaf'], chosen: string): readonly PickOption[] {
  const scope = useScope();
  const { job, words } = scope;
  const strikes = useStrikes(of === 'strike');
  const claimId = job.claim?.claimId ?? null;
  const statement = useStatement(of === 'line' ? claimId : null);
  const deadlines = useDeadlines(of === 'deadline' ? claimId : null);
  switch (of) {
    case 'outage':
      return (job.status?.open ?? [])
        .filter(({ cause }) => cause !== 'strike')
        .map((outage) => outageOption(scope, outage));
    case 'party':
      return ofKind(effectiveFacts(job.history).facts, 'party').map(({ fact }) => ({
        value: fact.submissionId,
        label: partyTitle(fact.body, words),
      }));
    case 'event':
      return job.events
        .filter(({ submission }) => kinds.includes(submission.kind))
        .map(({ submission }) => eventOption(submission, scope))
        .reverse();
    case 'line':
      return (statement.value?.lines ?? []).map((line) => ({
        value: line.lineId,
        label: lineTitle(line, words),
        more: line.amountCents === null ? '' : words.money(line.amountCents),
        ...(line.amountCents === null ? {} : { fills: writeCents(line.amountCents) }),
      }));
    case 'deadline':
      return (deadlines.value?.deadlines ?? [])
        .filter(({ id, state }) => id === chosen || runs(state))
        .map((deadline) => ({
          value: deadline.id,
          label: deadlineTitle(deadline.id, words),
          more: `${words.day(deadline.dueOn)} · ${deadlineWords(words.locale, deadline).of}`,
          fills: deadline.dueOn,
        }));
    case 'strike':
      return (strikes.value?.strikes ?? [])
        .filter(({ memberIds }) => !memberIds.some((id) => job.strike?.memberIds.includes(id)))
        .map((strike) => ({
          value: strike.strikeId,
          label: strikeTitle(strike, words),
          more: words.when(strike.since),
        }))
        .slice(0, 20);
  }
}

export function PickField({ leaf, path, value, change, level }: PropsOf<'pick'>) {
  const scope = useScope();
  const { words, submissionId } = scope;
  const chosen = textOf(value);
  const known = useOptions(leaf, chosen);
  // What was picked stays to be seen where it is no longer offered, or cannot be read now.
  const options =
    chosen === '' || known.some((option) => option.value === chosen)
      ? known
      : [...known, { value: chosen, label: unknownLabel(leaf.of, chosen, scope) }];
  const choose = (next: string): void => {
    const fills = known.find((option) => option.value === next)?.fills;
    const more: Values =
      leaf.fills === undefined || fills === undefined
        ? {}
        : // A sum that somebody typed stands; a day goes with its date.
          leaf.of === 'line' && textOf(level[leaf.fills]).trim() !== ''
          ? {}
          : { [leaf.fills]: fills };
    change({ ...more, [leaf.name]: next });
  };
  if (leaf.of === 'line')
    return (
      <FieldShell leaf={leaf} path={path}>
        {(described) => (
          <Dropdown
            described={described}
            options={options}
            none={words.t('form.no-one-line')}
            chosen={chosen}
            choose={choose}
          />
        )}
      </FieldShell>
    );
  return (
    <FieldShell leaf={leaf} path={path} group="radiogroup">
      {() =>
        options.length > 0 ? (
          <Radios
            name={`${submissionId}-${path}`}
            options={options}
            chosen={chosen}
            choose={choose}
            clearable={leaf.required !== true}
            wide
          />
        ) : (
          <p>{words.t(`form.no-${leaf.of}`)}</p>
        )
      }
    </FieldShell>
  );
}

const unknownLabel = (of: PropsOf<'pick'>['leaf']['of'], id: string, { words }: Scope): string =>
  of === 'deadline' ? deadlineTitle(id, words) : id;
