import type { ComponentChildren } from 'preact';
import { hasWords } from '../../../../../shared/words/index.ts';
import type { Leaf } from '../nodes.ts';
import { wordsOf } from '../words.ts';
import { fieldId, problemsAt, useScope } from './scope.ts';
import { sentenceFor } from './sentences.ts';

export interface Described {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': 'true' | undefined;
}

interface Props {
  readonly leaf: Leaf;
  readonly path: string;
  /** A group of controls (choice buttons) is named by its label instead of carrying it. */
  readonly group?: 'radiogroup' | 'group';
  /** Stands after the label of a single control, such as the time zone. */
  readonly aside?: string | undefined;
  /** More help than the catalogue has, such as the time zone. */
  readonly hint?: string | undefined;
  readonly children: (described: Described) => ComponentChildren;
}

/** Label, help, problems and control of one field, tied together for eyes and for screen readers. */
export function FieldShell({ leaf, path, group, aside, hint, children }: Props) {
  const { spec, problems, words } = useScope();
  const id = fieldId(path);
  const key = wordsOf(spec.kind, leaf, path);
  const found = problemsAt(
    problems,
    path,
    leaf.type === 'position' ||
      leaf.type === 'people' ||
      leaf.type === 'outages' ||
      leaf.type === 'choices' ||
      (leaf.type === 'text' && leaf.many === true),
  );
  const help = [hasWords(`${key}.help`) ? words.t(`${key}.help`) : '', hint ?? ''].filter(Boolean).join(' ');
  const describedBy = [help ? `${id}-help` : '', found.length > 0 ? `${id}-error` : '']
    .filter(Boolean)
    .join(' ');
  const described: Described = {
    id,
    'aria-describedby': describedBy || undefined,
    'aria-invalid': found.length > 0 ? 'true' : undefined,
  };
  const label = (
    <>
      {words.t(key)}
      {leaf.required && <span class="needed"> {words.t('form.needed')}</span>}
    </>
  );
  const messages = (
    <>
      {help && (
        <p class="help" id={`${id}-help`}>
          {help}
        </p>
      )}
      {found.length > 0 && (
        <p class="error" id={`${id}-error`}>
          <span class="visually-hidden">{words.t('form.problem')} </span>
          {found.map((each) => sentenceFor(leaf, each, words, key)).join(' ')}
        </p>
      )}
    </>
  );
  const className = `field ${found.length > 0 ? 'invalid' : ''}`;
  if (!group)
    return (
      <div class={className}>
        <label for={id}>
          {label}
          {aside && <span class="aside"> {aside}</span>}
        </label>
        {messages}
        {children(described)}
      </div>
    );
  return (
    <div
      class={className}
      role={group}
      id={id}
      tabIndex={-1}
      aria-labelledby={`${id}-label`}
      aria-describedby={described['aria-describedby']}
      {...(group === 'radiogroup' ? { 'aria-invalid': described['aria-invalid'] } : {})}
    >
      <span class="label" id={`${id}-label`}>
        {label}
      </span>
      {messages}
      {children(described)}
    </div>
  );
}
