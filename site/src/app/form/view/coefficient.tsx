import { outletShapes } from '../../../../../shared/hydraulics/outletShapes.ts';
import { textOf } from '../nodes.ts';
import { readNumber } from '../number.ts';
import { Radios } from './choice.tsx';
import { FieldShell } from './FieldShell.tsx';
import type { PropsOf } from './props.ts';
import { useScope } from './scope.ts';

/** The outlet's coefficient by what a finger feels inside it, or as a number from the maker. */
export function CoefficientField({ leaf, path, value, set }: PropsOf<'coefficient'>) {
  const { words, submissionId } = useScope();
  const text = textOf(value);
  const number = readNumber(text);
  const shape = outletShapes.find(({ coefficient }) => coefficient === number);
  const other = shape ? '' : text;
  return (
    <FieldShell leaf={leaf} path={path} group="radiogroup">
      {(described) => (
        <>
          <Radios
            name={`${submissionId}-${path}`}
            options={outletShapes.map(({ id, coefficient }) => ({
              value: String(coefficient),
              label: words.t(`hydraulics.shape.${id}`),
              more: coefficient.toFixed(2),
            }))}
            chosen={shape ? String(shape.coefficient) : ''}
            choose={set}
            clearable={false}
            wide
          />
          <div class="inline">
            <label for={`${described.id}-other`}>{words.t('form.other-coefficient')}</label>
            <input
              id={`${described.id}-other`}
              class="short"
              inputMode="decimal"
              autocomplete="off"
              value={other}
              onInput={(event) => set(event.currentTarget.value)}
            />
          </div>
        </>
      )}
    </FieldShell>
  );
}
