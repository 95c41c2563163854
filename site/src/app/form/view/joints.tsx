import { jointsOf } from '../../../../../shared/tightening/fromModel.ts';
import type { ModelJoint } from '../../../../../shared/tightening/modelJoint.ts';
import { focusSoon } from '../../core/focus.ts';
import { rowsOf, textOf, type Values } from '../nodes.ts';
import { wordsOf } from '../words.ts';
import { JointCard } from './JointCard.tsx';
import { startedRow, withPass } from './jointRow.ts';
import { ListProblems } from './ListProblems.tsx';
import type { ListProps } from './props.ts';
import { fieldId, useScope } from './scope.ts';
import { useModel } from './useModel.ts';

/**
 * The joints of the rebuild, one card each: ring, passes with their torque, manual and page, and what was done. The
 * torque is the record's or nobody's; a joint that no record has is added by hand and keeps its order alone.
 */
export function JointsList({ list, path, value, set }: ListProps) {
  const { spec, job, words } = useScope();
  const { model, why } = useModel(job.hydrant?.modelId ?? null);
  const rows = rowsOf(value);
  const recorded = model ? jointsOf(model) : [];
  const key = wordsOf(spec.kind, list, path);
  const others = rows
    .map((row, index) => ({ row, index }))
    .filter(({ row }) => !recorded.some(({ joint }) => joint === row['joint']) || row['_own'] === 'yes');

  const put = (index: number, next: Values): void =>
    set(rows.map((each, at) => (at === index ? next : each)));
  const remove = (index: number): void => set(rows.filter((_row, at) => at !== index));
  const started = (joint: ModelJoint): Values => startedRow(joint, rows, { ...job, now: new Date() });

  return (
    <div class="rows" id={fieldId(path)} tabIndex={-1}>
      <ListProblems list={list} path={path} />
      {model && <p>{words.t('tightening.of-model', { model: model.name })}</p>}
      {why !== '' && (
        <p class="label-note" role="status">
          {words.t(why)}
        </p>
      )}
      {recorded.map((joint, at) => {
        const index = rows.findIndex((row) => row['joint'] === joint.joint && row['_own'] !== 'yes');
        const row = rows[index];
        return (
          <JointCard
            key={joint.joint}
            id={`ring-${at}`}
            list={list}
            recorded={joint}
            title={joint.joint}
            path={row ? `${path}.${index}` : null}
            row={row ?? null}
            change={(next) => put(index, next)}
            tick={(pass) =>
              row
                ? put(index, withPass(row, pass, joint))
                : set([...rows, withPass(started(joint), pass, joint)])
            }
            done={() => set([...rows, started(joint)])}
            remove={() => remove(index)}
          />
        );
      })}
      {others.map(({ row, index }) => (
        <JointCard
          key={`own-${index}`}
          id={`ring-own-${index}`}
          list={list}
          recorded={null}
          title={textOf(row['joint']) || words.t(`${key}.item`, { number: index + 1 })}
          path={`${path}.${index}`}
          row={row}
          change={(next) => put(index, next)}
          tick={(pass) => put(index, withPass(row, pass, null))}
          done={() => undefined}
          remove={() => remove(index)}
        />
      ))}
      {rows.length < list.atMost && (
        <button
          type="button"
          class="plain"
          onClick={() => {
            set([...rows, { ...startedRow(null, rows, { ...job, now: new Date() }), _own: 'yes' }]);
            focusSoon(`#${fieldId(`${path}.${rows.length}`)} input`);
          }}
        >
          {words.t(`${key}.add`)}
        </button>
      )}
    </div>
  );
}
