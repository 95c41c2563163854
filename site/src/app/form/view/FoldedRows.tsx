import { useRef, useState } from 'preact/hooks';
import { focusSoon } from '../../core/focus.ts';
import { rowsOf } from '../nodes.ts';
import { wordsOf } from '../words.ts';
import { ListProblems } from './ListProblems.tsx';
import type { ListProps } from './props.ts';
import { fieldId, problemsAt, useScope } from './scope.ts';

/**
 * A long list: each row a line that opens. What is shut is not drawn, so that a schedule of a thousand machines stays
 * quick to type in. A row with a problem is open.
 */
export function FoldedRows({ list, path, value, set }: ListProps) {
  const { Fields, spec, words, problems } = useScope();
  const [opened, setOpened] = useState<ReadonlySet<number>>(new Set());
  const add = useRef<HTMLButtonElement>(null);
  const rows = rowsOf(value);
  const key = wordsOf(spec.kind, list, path);
  const open = (index: number, is: boolean): void => {
    if (opened.has(index) === is) return;
    const next = new Set(opened);
    if (is) next.add(index);
    else next.delete(index);
    setOpened(next);
  };
  const remove = (index: number): void => {
    set(rows.filter((_row, at) => at !== index));
    setOpened(new Set([...opened].filter((at) => at !== index).map((at) => (at > index ? at - 1 : at))));
    add.current?.focus();
  };
  return (
    <div class="rows folded" id={fieldId(path)} tabIndex={-1}>
      <h3>
        {words.t(key)} <span class="count">{rows.length}</span>
      </h3>
      <ListProblems list={list} path={path} />
      {rows.map((row, index) => {
        const title = words.t(`${key}.item`, { number: index + 1 });
        const at = `${path}.${index}`;
        const isOpen = opened.has(index) || problemsAt(problems, at, true).length > 0;
        return (
          <details
            key={index}
            id={fieldId(at)}
            open={isOpen}
            onToggle={(event) => open(index, event.currentTarget.open)}
          >
            <summary>{list.heading?.(row) || title}</summary>
            {isOpen && (
              <fieldset class="row">
                <legend class="visually-hidden">{title}</legend>
                <ListProblems list={list} path={at} />
                <Fields
                  nodes={list.item}
                  values={row}
                  base={at}
                  change={(next) => set(rows.map((each, other) => (other === index ? next : each)))}
                />
                <button type="button" class="link" onClick={() => remove(index)}>
                  {words.t('form.remove')}
                  <span class="visually-hidden"> {title}</span>
                </button>
              </fieldset>
            )}
          </details>
        );
      })}
      {rows.length < list.atMost && (
        <button
          type="button"
          class="plain"
          ref={add}
          onClick={() => {
            set([...rows, list.blank ?? {}]);
            open(rows.length, true);
            focusSoon(`#${fieldId(`${path}.${rows.length}`)} input`);
          }}
        >
          {words.t(`${key}.add`)}
        </button>
      )}
    </div>
  );
}
