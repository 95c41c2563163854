import { stringsOf, textOf } from '../nodes.ts';
import { valueWords } from '../words.ts';
import { FieldShell } from './FieldShell.tsx';
import type { PropsOf } from './props.ts';
import { useScope } from './scope.ts';

interface RadiosProps {
  readonly name: string;
  readonly options: readonly { readonly value: string; readonly label: string; readonly more?: string }[];
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

export function YesNoField({ leaf, ...rest }: PropsOf<'yes-no'>) {
  return <ChoiceField leaf={{ ...leaf, type: 'choice', list: 'seen', choices: ['yes', 'no'] }} {...rest} />;
}

export function ChoiceField({ leaf, path, value, set }: PropsOf<'choice'>) {
  const { words, submissionId } = useScope();
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
