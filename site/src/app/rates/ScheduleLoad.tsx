import { useRef, useState } from 'preact/hooks';
import { groupedDollars } from '../../../../shared/costs/money.ts';
import { readSchedule, type Schedule } from '../../../../shared/costs/schedule/readSchedule.ts';
import {
  machineFromRow,
  scheduleTitle,
  type ScheduleRow,
} from '../../../../shared/costs/schedule/scheduleRow.ts';
import { sayProblem } from '../../../../shared/words/index.ts';
import { codesIn } from '../form/specs/rateBook.ts';
import { rowsOf, textOf, type Values } from '../form/nodes.ts';
import type { ExtraProps } from '../form/view/props.ts';
import { useScope } from '../form/view/scope.ts';

type Shown = 'all' | ScheduleRow['state'];
const shownChoices = ['all', 'clean', 'doubtful', 'rejected'] as const;

/**
 * Loads a published equipment schedule from a CSV file: every row with what is doubtful about it, and the choice of
 * those to take. Nothing is sent anywhere; what is taken stands in the draft's machines and can be changed there.
 */
export function ScheduleLoad({ values, change }: ExtraProps) {
  const { words } = useScope();
  const [schedule, setSchedule] = useState<Schedule | null>(null);
  const [name, setName] = useState('');
  const [taken, setTaken] = useState<number | null>(null);
  const read = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setTaken(null);
    setName(file.name);
    setSchedule(readSchedule(await file.text()));
  };
  const take = (rows: readonly ScheduleRow[], authorityId: string): void => {
    const machines = rows.flatMap((row) => {
      const rate = machineFromRow(row, authorityId);
      return rate === null
        ? []
        : [
            {
              machineCode: rate.machineCode,
              title: rate.title,
              unit: rate.unit,
              rateUsd: rate.rateUsd,
              includes: rate.includes ?? [],
              'schedule.code': rate.schedule?.code ?? '',
              'schedule.size': rate.schedule?.size ?? '',
              authorityId,
              _increment: 'no',
            } satisfies Values,
          ];
    });
    // A machine that the draft has already under this code gets the schedule's rate in its place.
    const byCode = new Map<string, Values>(machines.map((machine) => [machine.machineCode, machine]));
    const before = rowsOf(values['machines']);
    const kept = before.map((row) => byCode.get(textOf(row['machineCode'])) ?? row);
    const known = new Set(before.map((row) => textOf(row['machineCode'])));
    change({
      ...values,
      machines: [...kept, ...machines.filter(({ machineCode }) => !known.has(machineCode))],
    });
    setTaken(machines.length);
  };
  return (
    <div class="answer schedule">
      <h3>{words.t('schedule.title')}</h3>
      <p class="help">{words.t('schedule.help')}</p>
      <div class="field">
        <label for="schedule-file">{words.t('schedule.file')}</label>
        <input
          id="schedule-file"
          type="file"
          accept=".csv,text/csv"
          onChange={(event) => void read(event.currentTarget.files?.[0])}
        />
      </div>
      <div role="status">
        {schedule && (
          <p>
            <strong>{words.t('schedule.counts', { name, ...schedule.counts })}</strong>
          </p>
        )}
        {taken !== null && <p>{words.t('schedule.taken', { count: taken })}</p>}
      </div>
      {schedule && schedule.problems.length > 0 && (
        <ul class="doubts">
          {schedule.problems.map((found, index) => (
            <li key={index}>{sayProblem(words.locale, found)}</li>
          ))}
        </ul>
      )}
      {schedule && schedule.rows.length > 0 && (
        <Choice
          key={name}
          schedule={schedule}
          authorities={codesIn(values, 'authorities', 'authorityId')}
          take={take}
        />
      )}
    </div>
  );
}

interface ChoiceProps {
  readonly schedule: Schedule;
  readonly authorities: readonly string[];
  readonly take: (rows: readonly ScheduleRow[], authorityId: string) => void;
}

function Choice({ schedule, authorities, take }: ChoiceProps) {
  const { words } = useScope();
  const [shown, setShown] = useState<Shown>('all');
  const [find, setFind] = useState('');
  const [ticked, setTicked] = useState<ReadonlySet<number>>(new Set());
  const [authorityId, setAuthorityId] = useState('');
  const [asked, setAsked] = useState(false);
  const authorityField = useRef<HTMLSelectElement>(null);
  const sought = find.trim().toLowerCase();
  const rows = schedule.rows.filter(
    (row) =>
      (shown === 'all' || row.state === shown) &&
      (sought === '' || `${row.code} ${scheduleTitle(row)}`.toLowerCase().includes(sought)),
  );
  const open = rows.filter(({ state }) => state !== 'rejected');
  const toggle = (line: number): void => {
    const next = new Set(ticked);
    if (!next.delete(line)) next.add(line);
    setTicked(next);
  };
  const lacks = asked && authorityId === '';
  const onTake = (): void => {
    setAsked(true);
    if (authorityId === '') {
      authorityField.current?.focus();
      return;
    }
    take(
      schedule.rows.filter(({ line }) => ticked.has(line)),
      authorityId,
    );
    setTicked(new Set());
  };
  return (
    <>
      <div class="filters" role="group" aria-label={words.t('schedule.show')}>
        {shownChoices.map((each) => (
          <button
            type="button"
            key={each}
            class="plain"
            aria-pressed={shown === each}
            onClick={() => setShown(each)}
          >
            {words.t(`schedule.show.${each}`)}
          </button>
        ))}
      </div>
      <div class="field">
        <label for="schedule-find">{words.t('schedule.find')}</label>
        <input
          id="schedule-find"
          type="search"
          value={find}
          onInput={(event) => setFind(event.currentTarget.value)}
        />
      </div>
      <p class="actions">
        <button
          type="button"
          class="plain"
          onClick={() =>
            setTicked(
              new Set([...ticked, ...open.filter(({ state }) => state === 'clean').map(({ line }) => line)]),
            )
          }
        >
          {words.t('schedule.tick-clean')}
        </button>
        <button type="button" class="plain" onClick={() => setTicked(new Set())}>
          {words.t('schedule.tick-none')}
        </button>
      </p>
      <div class="wide-table tall" tabIndex={0} role="group" aria-label={words.t('schedule.table')}>
        <table class="schedule-rows">
          <caption class="visually-hidden">{words.t('schedule.table')}</caption>
          <thead>
            <tr>
              <th scope="col">{words.t('schedule.col.take')}</th>
              <th scope="col">{words.t('schedule.col.machine')}</th>
              <th scope="col">{words.t('schedule.col.rate')}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.line}>
                <td>
                  <input
                    type="checkbox"
                    aria-label={words.t('schedule.take-row', { code: row.code, title: scheduleTitle(row) })}
                    disabled={row.state === 'rejected'}
                    checked={ticked.has(row.line)}
                    onChange={() => toggle(row.line)}
                  />
                </td>
                <th scope="row">
                  {row.code} {scheduleTitle(row)}
                  {row.notes && <span class="block small soft">{row.notes}</span>}
                  {row.state !== 'clean' && (
                    <span class="block">
                      <span class="tag out">{words.t(`schedule.state.${row.state}`)}</span>
                    </span>
                  )}
                  {row.reasons.map((reason, index) => (
                    <span class="block small" key={index}>
                      {sayProblem(words.locale, reason)}
                    </span>
                  ))}
                </th>
                <td>
                  {row.rateUsd === null ? words.t('schedule.no-rate') : groupedDollars(`$${row.rateUsd}`)}
                  {row.unit && ` / ${words.t(`value.machineUnit.${row.unit}`)}`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div class={`field ${lacks ? 'invalid' : ''}`}>
        <label for="schedule-authority">{words.t('schedule.authority')}</label>
        {authorities.length === 0 && <p class="help">{words.t('schedule.authority-first')}</p>}
        {lacks && (
          <p class="error" id="schedule-authority-error">
            {words.t('schedule.authority-needed')}
          </p>
        )}
        <select
          id="schedule-authority"
          ref={authorityField}
          value={authorityId}
          aria-invalid={lacks ? 'true' : undefined}
          aria-describedby={lacks ? 'schedule-authority-error' : undefined}
          onChange={(event) => setAuthorityId(event.currentTarget.value)}
        >
          <option value="">{words.t('schedule.authority-choose')}</option>
          {[...new Set(authorities)].map((each) => (
            <option key={each} value={each}>
              {each}
            </option>
          ))}
        </select>
      </div>
      <p>
        <button type="button" class="primary" disabled={ticked.size === 0} onClick={onTake}>
          {words.t('schedule.take', { count: ticked.size })}
        </button>
      </p>
    </>
  );
}
