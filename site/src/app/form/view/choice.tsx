import { stringsOf, textOf } from '../nodes.ts';
import { valueWords } from '../words.ts';
import { FieldShell, type Described } from './FieldShell.tsx';
import type { PropsOf } from './props.ts';
import { useScope } from './scope.ts';

export interface Option {
  readonly value: string;
  readonly label: string;
  readonly more?: string;
}

interface RadiosProps {
  readonly name: string;
  readonly options: readonly Option[];
  readonly chosen: string;
  readonly choose: (value: string) => void;
  /** An answer that is not needed can be taken back. */
  readonly clearable: boolean;
  readonly wide?: boolean;
}

/** Native radio buttons drawn as buttons: arrows, space and screen readers work as they always do. */
export function Radios({ name, options, chosen, choose, clearable, wide }: RadiosProps) {
  const { words } = useScope();
  return (
    <div class={`choices ${wide ? 'wide' : ''}`}>
      {options.map(({ value, label, more }) => (
        <label class="choice" key={value}>
          <input
            type="radio"
            name={name}
            value={value}
            checked={chosen === value}
            onChange={() => choose(value)}
          />
          <span>
            {label}
            {more && <small> {more}</small>}
          </span>
        </label>
      ))}
      {clearable && chosen !== '' && (
        <button type="button" class="link" onClick={() => choose('')}>
          {words.t('form.clear')}
        </button>
      )}
    </div>
  );
}

interface DropdownProps {
  readonly described: Described;
  readonly options: readonly Option[];
  /** What stands there while nothing is chosen. */
  readonly none: string;
  readonly chosen: string;
  readonly choose: (value: string) => void;
}

/** One of many, in one line: for choices that repeat row after row. */
export function Dropdown({ described, options, none, chosen, choose }: DropdownProps) {
  return (
    <select {...described} value={chosen} onChange={(event) => choose(event.currentTarget.value)}>
      <option value="">{none}</option>
      {options.map(({ value, label, more }) => (
        <option key={value} value={value}>
          {more ? `${label} · ${more}` : label}
        </option>
      ))}
    </select>
  );
}

export function YesNoField({ leaf, ...rest }: PropsOf<'yes-no'>) {
  return <ChoiceField leaf={{ ...leaf, type: 'choice', list: 'seen', choices: ['yes', 'no'] }} {...rest} />;
}

export function ChoiceField({ leaf, path, value, set }: PropsOf<'choice'>) {
  const { words, submissionId } = useScope();
  if (leaf.compact)
    return (
      <FieldShell leaf={leaf} path={path}>
        {(described) => (
          <Dropdown
            described={described}
            options={leaf.choices.map((choice) => ({
              value: choice,
              label: words.t(valueWords(leaf.list, choice)),
            }))}
            none={words.t('form.choose')}
            chosen={textOf(value)}
            choose={set}
          />
        )}
      </FieldShell>
    );
  return (
    <FieldShell leaf={leaf} path={path} group="radiogroup">
      {() => (
        <Radios
          name={`${submissionId}-${path}`}
          options={leaf.choices.map((choice) => ({
            value: choice,
            label: words.t(valueWords(leaf.list, choice)),
          }))}
          chosen={textOf(value)}
          choose={set}
          clearable={leaf.required !== true}
        />
      )}
    </FieldShell>
  );
}

export function ChoicesField({ leaf, path, value, set }: PropsOf<'choices'>) {
  const { words } = useScope();
  const ticked = stringsOf(value);
  const toggle = (choice: string): void =>
    set(ticked.includes(choice) ? ticked.filter((each) => each !== choice) : [...ticked, choice]);
  return (
    <FieldShell leaf={leaf} path={path} group="group">
      {() => (
        <div class="choices">
          {leaf.choices.map((choice) => (
            <label class="choice" key={choice}>
              <input type="checkbox" checked={ticked.includes(choice)} onChange={() => toggle(choice)} />
              <span>{words.t(valueWords(leaf.list, choice))}</span>
            </label>
          ))}
        </div>
      )}
    </FieldShell>
  );
}
