import { localMinute } from '../localTime.ts';
import { rowsOf, textOf, type Values } from '../nodes.ts';
import { ListProblems } from './ListProblems.tsx';
import type { ListProps } from './props.ts';
import { fieldId, useScope } from './scope.ts';

/** The proofs this hydrant needs, one card each: passed, failed, or put off by name. */
export function ProofsList({ list, path, value, set }: ListProps) {
  const { Fields, job, words } = useScope();
  const rows = rowsOf(value);
  const change = (index: number, row: Values, next: Values): void => {
    const answered = textOf(row['result']) === '' && textOf(next['result']) !== '';
    const filled: Values = answered
      ? {
          ...next,
          at: textOf(next['at']) || localMinute(new Date(), words.zone),
          byWorkerId: textOf(next['byWorkerId']) || job.personId,
        }
      : next;
    set(rows.map((each, at) => (at === index ? filled : each)));
  };
  return (
    <div class="rows" id={fieldId(path)} tabIndex={-1}>
      <ListProblems list={list} path={path} />
      {rows.map((row, index) => (
        <fieldset class="row" key={index} id={fieldId(`${path}.${index}`)}>
          <legend>{words.t(`proof.${textOf(row['proof'])}`)}</legend>
          <Fields
            nodes={list.item}
            values={row}
            base={`${path}.${index}`}
            change={(next) => change(index, row, next)}
          />
        </fieldset>
      ))}
    </div>
  );
}
