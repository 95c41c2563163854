import { useState } from 'preact/hooks';
import { focusSoon } from '../../core/focus.ts';
import { keepLast, idOf, lastNotIn } from '../lastRows.ts';
import { rowsOf, type Values } from '../nodes.ts';
import { lanesOf, mayMove, moved, movedAll, runningOf, type Lanes, type Move } from '../running.ts';
import { wordsOf } from '../words.ts';
import { ListProblems } from './ListProblems.tsx';
import type { ListProps } from './props.ts';
import { RunningRow } from './RunningRow.tsx';
import { StillRunning } from './StillRunning.tsx';
import { fieldId, useScope } from './scope.ts';
import { useMinute } from './useMinute.ts';
import { useTitleOf } from './rowTitle.ts';

const none: Lanes = { main: '', aside: '', within: true };

/** People or machines whose time is taken with one touch, one by one or all at once. Every time stays editable. */
export function RunningList({ list, path, value, set, level, changeLevel }: ListProps) {
  const { spec, words } = useScope();
  const [said, setSaid] = useState<string | null>(null);
  const now = useMinute();
  const titleOf = useTitleOf(list.name);
  const lanes = lanesOf[list.name] ?? none;
  const rows = rowsOf(value);
  const key = wordsOf(spec.kind, list, path);
  const states = rows.map((row) => runningOf(row, lanes, words.zone, now));
  const offered = (move: Move): number => states.filter((state) => mayMove(move, state, lanes)).length;

  const write = (next: readonly Values[]): void => {
    keepLast(list.name, next);
    set(next);
  };
  const touch = (index: number, move: Move): void => {
    const result = moved(move, rows[index] ?? {}, lanes, words.zone, new Date());
    setSaid(!result.ok ? 'running.clock-back' : result.dropped ? 'running.dropped' : null);
    if (!result.ok) return;
    write(rows.map((row, at) => (at === index ? result.row : row)));
    // The button that was touched goes; the focus stays with its person.
    focusSoon(`#${fieldId(`${path}.${index}`)} .timer button`);
  };
  const touchAll = (move: Move): void => {
    const result = movedAll(move, rows, lanes, words.zone, new Date());
    setSaid(result.ok ? null : 'running.clock-back');
    if (!result.ok) return;
    write(result.rows);
    focusSoon(`#${fieldId(path)} .all-at-once button`);
  };
  const remove = (index: number): void => {
    set(rows.filter((_row, at) => at !== index));
    focusSoon(`#${fieldId(path)} > .add`);
  };

  const last = lastNotIn(list.name, rows);
  const addLast = (): void => {
    // The row that a form starts with for its author is one of them.
    const kept = rows.filter((row) => idOf(row, list.name) !== '');
    set([...kept, ...last.map((row) => ({ ...list.blank, ...row }))]);
    focusSoon(`#${fieldId(path)} .all-at-once button`);
  };
  // Breaks of all only for people: machines stand by one by one.
  const together = (['start', 'aside', 'resume', 'stop'] as const).filter(
    (move) => offered(move) > 1 && (list.name === 'crew' || move === 'start' || move === 'stop'),
  );

  return (
    <div class="rows timed" id={fieldId(path)} tabIndex={-1}>
      <ListProblems list={list} path={path} />
      {rows.length > 1 && (
        <div class="all-at-once actions" role="group" aria-label={words.t(`running.all.${list.name}`)}>
          {together.map((move) => (
            <button
              type="button"
              key={move}
              class={move === 'start' ? 'primary' : 'plain'}
              onClick={() => touchAll(move)}
            >
              {words.t(`running.${move}-all.${list.name}`)}
            </button>
          ))}
        </div>
      )}
      <p role="status" class="said-now">
        {said === null ? '' : words.t(said)}
      </p>
      {rows.map((row, index) => (
        <RunningRow
          key={index}
          list={list}
          lanes={lanes}
          path={`${path}.${index}`}
          title={words.t(`${key}.item`, { number: index + 1 })}
          row={row}
          state={states[index] ?? runningOf(row, lanes, words.zone, now)}
          now={now}
          touch={(move) => touch(index, move)}
          change={(next) => set(rows.map((each, at) => (at === index ? next : each)))}
          remove={() => remove(index)}
        />
      ))}
      {last.length > 0 && rows.length + last.length <= list.atMost && (
        <button type="button" class="plain" onClick={addLast}>
          {words.t(`running.last.${list.name}`, { who: last.map(titleOf).join(', ') })}
        </button>
      )}
      {rows.length < list.atMost && (
        <button
          type="button"
          class="plain add"
          onClick={() => {
            set([...rows, list.blank ?? {}]);
            focusSoon(`#${fieldId(`${path}.${rows.length}`)} input`);
          }}
        >
          {words.t(`${key}.add`)}
        </button>
      )}
      {list.name === 'crew' && <StillRunning values={level} change={changeLevel} />}
    </div>
  );
}
