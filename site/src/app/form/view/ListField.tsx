import { useRef } from 'preact/hooks';
import { focusSoon } from '../../core/focus.ts';
import { rowsOf } from '../nodes.ts';
import { wordsOf } from '../words.ts';
import { AllocationList } from './AllocationList.tsx';
import { FoldedRows } from './FoldedRows.tsx';
import { JointsList } from './joints.tsx';
import { lazy } from './Lazy.tsx';
import { ListProblems } from './ListProblems.tsx';
import { PhotosList } from './photos.tsx';
import { ProofsList } from './proofs.tsx';
import { StepsList } from './steps.tsx';
import { ValvesList } from './valves.tsx';
import type { ListProps } from './props.ts';
import { fieldId, useScope } from './scope.ts';

/** With nothing but the plain rows one can still type the times. */
const Running = lazy<ListProps>(async () => (await import('./RunningList.tsx')).RunningList, RowsList);

export function ListField(props: ListProps) {
  switch (props.list.as) {
    case 'photos':
      return <PhotosList {...props} />;
    case 'steps':
      return <StepsList {...props} />;
    case 'proofs':
      return <ProofsList {...props} />;
    case 'valves':
      return <ValvesList {...props} />;
    case 'joints':
      return <JointsList {...props} />;
    case 'allocation':
      return <AllocationList {...props} />;
    case 'running':
      return <Running {...props} />;
    case 'folded':
      return <FoldedRows {...props} />;
    case 'rows':
    case undefined:
      return <RowsList {...props} />;
  }
}

/** A repeating group: one card a row, a button that adds one, focus that goes where the eye does. */
function RowsList({ list, path, value, set }: ListProps) {
  const { Fields, spec, words } = useScope();
  const rows = rowsOf(value);
  const key = wordsOf(spec.kind, list, path);
  const add = useRef<HTMLButtonElement>(null);
  const nested = path.includes('.');
  const focusRow = (index: number): void => {
    const row = `#${fieldId(`${path}.${index}`)}`;
    focusSoon(`${row} input, ${row} textarea`);
  };
  return (
    <div class={`rows ${nested ? 'nested' : ''}`} id={fieldId(path)} tabIndex={-1}>
      {nested && <p class="label">{words.t(key)}</p>}
      <ListProblems list={list} path={path} />
      {rows.map((row, index) => {
        const title = words.t(`${key}.item`, { number: index + 1 });
        return (
          <fieldset class="row" key={index} id={fieldId(`${path}.${index}`)}>
            <legend>{title}</legend>
            <ListProblems list={list} path={`${path}.${index}`} />
            <Fields
              nodes={list.item}
              values={row}
              base={`${path}.${index}`}
              change={(next) => set(rows.map((each, at) => (at === index ? next : each)))}
            />
            <button
              type="button"
              class="link"
              onClick={() => {
                set(rows.filter((_row, at) => at !== index));
                add.current?.focus();
              }}
            >
              {words.t('form.remove')}
              <span class="visually-hidden"> {title}</span>
            </button>
          </fieldset>
        );
      })}
      {rows.length < list.atMost && (
        <button
          type="button"
          class="plain"
          ref={add}
          onClick={() => {
            set([...rows, list.blank ?? {}]);
            focusRow(rows.length);
          }}
        >
          {words.t(`${key}.add`)}
        </button>
      )}
    </div>
  );
}
