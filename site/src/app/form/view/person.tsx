import { focusSoon } from '../../core/focus.ts';
import { stringsOf, textOf } from '../nodes.ts';
import { FieldShell, type Described } from './FieldShell.tsx';
import type { PropsOf } from './props.ts';
import { useObservable } from '../../core/observable.ts';
import { people } from '../../core/people.ts';
import { recalled } from '../../core/recall.ts';
import { useScope } from './scope.ts';

interface InputProps {
  readonly described: Partial<Described> & { readonly id: string };
  readonly label?: string;
  readonly value: string;
  readonly set: (value: string) => void;
}

/** A person by the number the utility knows them by. "Me" is one touch; numbers used before are offered. */
function PersonInput({ described, label, value, set }: InputProps) {
  const { job, words } = useScope();
  const roll = useObservable(people);
  const known = [
    ...roll,
    ...recalled('people')
      .filter((id) => !roll.some(({ personId }) => personId === id))
      .map((personId) => ({ personId, name: '' })),
  ];
  const name = roll.find(({ personId }) => personId === value.trim())?.name ?? '';
  const nameId = `${described.id}-name`;
  return (
    <>
      <div class="with-button">
        <input
          {...described}
          {...(name === ''
            ? {}
            : {
                'aria-describedby': [described['aria-describedby'], nameId].filter(Boolean).join(' '),
              })}
          type="text"
          class="code"
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          value={value}
          {...(label ? { 'aria-label': label } : {})}
          {...(known.length > 0 ? { list: `${described.id}-list` } : {})}
          onInput={(event) => set(event.currentTarget.value)}
        />
        {known.length > 0 && (
          <datalist id={`${described.id}-list`}>
            {known.map(({ personId, name }) => (
              <option key={personId} value={personId} label={name} />
            ))}
          </datalist>
        )}
        {value !== job.personId && (
          <button type="button" class="plain" onClick={() => set(job.personId)}>
            {words.t('form.me')}
          </button>
        )}
      </div>
      {name !== '' && (
        <span class="small soft" id={nameId}>
          {name}
        </span>
      )}
    </>
  );
}

export function PersonField({ leaf, path, value, set }: PropsOf<'person'>) {
  return (
    <FieldShell leaf={leaf} path={path}>
      {(described) => <PersonInput described={described} value={textOf(value)} set={set} />}
    </FieldShell>
  );
}

export function PeopleField({ leaf, path, value, set }: PropsOf<'people'>) {
  const { words } = useScope();
  const people = stringsOf(value);
  const rows = people.length > 0 ? people : [''];
  return (
    <FieldShell leaf={leaf} path={path} group="group">
      {(described) => (
        <>
          {rows.map((person, index) => (
            <div class="row-of-one" key={index}>
              <PersonInput
                described={{ id: `${described.id}-${index}` }}
                label={words.t('form.person-number', { number: index + 1 })}
                value={person}
                set={(next) => set(rows.map((each, at) => (at === index ? next : each)))}
              />
              {rows.length > 1 && (
                <button
                  type="button"
                  class="link"
                  onClick={() => {
                    set(rows.filter((_each, at) => at !== index));
                    focusSoon(`#${described.id}-0`);
                  }}
                >
                  {words.t('form.remove')}
                  <span class="visually-hidden"> {person}</span>
                </button>
              )}
            </div>
          ))}
          <button
            type="button"
            class="plain"
            onClick={() => {
              set([...rows, '']);
              focusSoon(`#${described.id}-${rows.length}`);
            }}
          >
            {words.t('form.add-person')}
          </button>
        </>
      )}
    </FieldShell>
  );
}
