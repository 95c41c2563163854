import { focusSoon } from '../../core/focus.ts';
import { localMinute } from '../localTime.ts';
import { rowsOf, textOf, type Values } from '../nodes.ts';
import { wordsOf } from '../words.ts';
import type { ListProps } from './props.ts';
import { fieldId, useScope } from './scope.ts';

/** Valves that the record shows closed, each to be said reopened; and any other that was turned. */
export function ValvesList({ list, path, value, set }: ListProps) {
  const { Fields, spec, job, words } = useScope();
  const rows = rowsOf(value);
  const key = wordsOf(spec.kind, list, path);
  const put = (index: number, next: Values): void =>
    set(rows.map((each, at) => (at === index ? next : each)));
  const reopen = (index: number, row: Values): void => {
    put(index, {
      ...row,
      at: localMinute(new Date(), words.zone),
      byWorkerId: textOf(row['byWorkerId']) || job.personId,
    });
    focusSoon(`#${fieldId(`${path}.${index}`)} > button`);
  };
  return (
    <div class="rows" id={fieldId(path)} tabIndex={-1}>
      {rows.length === 0 && <p>{words.t('form.no-valve-closed')}</p>}
      {rows.map((row, index) => {
        const valveId = textOf(row['valveId']);
        const known = row['_known'] === 'yes';
        const nodes = known
          ? list.item.filter((node) => !('name' in node) || node.name !== 'valveId')
          : list.item;
        return (
          <fieldset class="row" key={index} id={fieldId(`${path}.${index}`)}>
            <legend>{known ? valveId : words.t(`${key}.item`, { number: index + 1 })}</legend>
            {known && textOf(row['at']) === '' ? (
              <>
                <p>{words.t('form.valve-still-closed')}</p>
                <button type="button" class="plain" onClick={() => reopen(index, row)}>
                  {words.t('form.valve-reopened')}
                  <span class="visually-hidden"> {valveId}</span>
                </button>
              </>
            ) : (
              <>
                <Fields
                  nodes={nodes}
                  values={row}
                  base={`${path}.${index}`}
                  change={(next) => put(index, next)}
                />
                <button
                  type="button"
                  class="link"
                  onClick={() => {
                    if (known) put(index, { ...row, at: '' });
                    else set(rows.filter((_row, at) => at !== index));
                    focusSoon(
                      known ? `#${fieldId(`${path}.${index}`)} > button` : `#${fieldId(path)} > button`,
                    );
                  }}
                >
                  {words.t('form.remove')}
                  <span class="visually-hidden"> {valveId}</span>
                </button>
              </>
            )}
          </fieldset>
        );
      })}
      <button
        type="button"
        class="plain"
        onClick={() =>
          set([...rows, { valveId: '', at: localMinute(new Date(), words.zone), byWorkerId: job.personId }])
        }
      >
        {words.t(`${key}.add`)}
      </button>
    </div>
  );
}
