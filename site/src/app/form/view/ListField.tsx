import { useRef } from 'preact/hooks';
import { focusSoon } from '../../core/focus.ts';
import { rowsOf } from '../nodes.ts';
import { wordsOf } from '../words.ts';
import { lazy } from './Lazy.tsx';
import { ListProblems } from './ListProblems.tsx';
import { PhotosList } from './photos.tsx';
import type { ListProps } from './props.ts';
import { fieldId, useScope } from './scope.ts';

// The lists of the forms that follow the first. With nothing but plain rows one can still type the times.
const Running = lazy<ListProps>(async () => (await import('./RunningList.tsx')).RunningList, {
  meanwhile: RowsList,
});
const StepsList = lazy<ListProps>(async () => (await import('./steps.tsx')).StepsList);
const ProofsList = lazy<ListProps>(async () => (await import('./proofs.tsx')).ProofsList);
const ValvesList = lazy<ListProps>(async () => (await import('./valves.tsx')).ValvesList);
const JointsList = lazy<ListProps>(async () => (await import('./joints.tsx')).JointsList);
const FoldedRows = lazy<ListProps>(async () => (await import('./FoldedRows.tsx')).FoldedRows);
const AllocationList = lazy<ListProps>(async () => (await import('./AllocationList.tsx')).AllocationList, {
  when: 'asked',
});

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
