import { useState } from 'preact/hooks';
import type { List, Values } from '../nodes.ts';
import { mayMove, type Lanes, type Move, type Running } from '../running.ts';
import { ListProblems } from './ListProblems.tsx';
import { sayLength } from './sayLength.ts';
import { isNamed, useTitleOf } from './rowTitle.ts';
import { fieldId, problemsAt, useScope } from './scope.ts';

/** Longer than any shift: somebody was not stopped. */
const LONG_MS = 16 * 3_600_000;

interface Props {
  readonly list: List;
  readonly lanes: Lanes;
  readonly path: string;
  readonly title: string;
  readonly row: Values;
  readonly state: Running;
  readonly now: Date;
  readonly touch: (move: Move) => void;
  readonly change: (next: Values) => void;
  readonly remove: () => void;
}

/** One person or machine: how it stands, what one touch does, and who and when behind a fold. */
export function RunningRow({ list, lanes, path, title, row, state, now, touch, change, remove }: Props) {
  const { Fields, words, problems } = useScope();
  const name = useTitleOf(list.name)(row);
  // Before anything stands, both ways are open: a touch, or typing what was.
  const [open, setOpen] = useState(() => !isNamed(list, row) || (state.is === 'idle' && state.minutes === 0));
  const wrong = problemsAt(problems, path, true).length > 0;
  const of = list.name;
  const since = state.since === null ? 0 : now.getTime() - Date.parse(state.since);
  const press = (move: Move): void => {
    if (move === 'start' && isNamed(list, row)) setOpen(false);
    touch(move);
  };
  const button = (move: Move, label: string, main = false) =>
    mayMove(move, state, lanes) && (
      <button type="button" class={main ? 'primary' : 'plain'} onClick={() => press(move)}>
        {words.t(label)}
        <span class="visually-hidden"> {name || title}</span>
      </button>
    );
  return (
    <fieldset class={`row timed ${state.is}`} id={fieldId(path)}>
      <legend>{title}</legend>
      <ListProblems list={list} path={path} />
      <div class="timer">
        <p class="who">
          {name !== '' && <strong>{name}</strong>}
          <span class={`state ${state.is}`}>
            {state.since === null
              ? state.minutes === 0
                ? words.t('running.is.idle')
                : ''
              : words.t(`running.is.${state.is}.${of}`, { when: words.clock(state.since) })}
          </span>
          {(state.since !== null || state.minutes > 0) && (
            <span class="small">
              {words.t(`running.total.${of}`, { length: sayLength(state.minutes, words) })}
            </span>
          )}
        </p>
        <div class="actions">
          {button('start', 'running.start', true)}
          {button('resume', `running.resume.${of}`, true)}
          {button('aside', `running.aside.${of}`)}
          {button('stop', 'running.stop')}
        </div>
        {since > LONG_MS && (
          <p class="label-note">
            {words.t('running.long', { length: sayLength(Math.floor(since / 60_000), words) })}
          </p>
        )}
      </div>
      <details open={open || wrong} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>{words.t(`running.times.${of}`)}</summary>
        <Fields nodes={list.item} values={row} base={path} change={change} />
        <button type="button" class="link" onClick={remove}>
          {words.t('form.remove')}
          <span class="visually-hidden"> {title}</span>
        </button>
      </details>
    </fieldset>
  );
}
