import { METRIC_PER_US_CONSTANT } from '../../../../../shared/hydraulics/diffuser.ts';
import { isTypedConstant, textOf } from '../nodes.ts';
import { readNumber } from '../number.ts';
import { FieldShell } from './FieldShell.tsx';
import { inputOf } from './inputOf.ts';
import type { PropsOf } from './props.ts';
import { useScope } from './scope.ts';

/** A diffuser's K in the unit in which its maker prints it; what was typed stays what is stored. */
export function DiffuserConstantField({ leaf, path, value, set }: PropsOf<'diffuser-constant'>) {
  const { words } = useScope();
  const typed = isTypedConstant(value) ? value : { text: textOf(value), system: words.system };
  const amount = readNumber(typed.text);
  const ratio = typed.system === 'us' ? METRIC_PER_US_CONSTANT : 1 / METRIC_PER_US_CONSTANT;
  const shown =
    typed.system === words.system || amount === null
      ? typed
      : { text: String(Number((amount * ratio).toFixed(2))), system: words.system };
  return (
    <FieldShell leaf={leaf} path={path}>
      {(described) => (
        <div class="with-unit">
          <input
            {...described}
            inputMode="decimal"
            autocomplete="off"
            value={shown.text}
            onInput={(event) => set({ text: inputOf(event), system: shown.system })}
          />
          <span class="unit">{words.t(`hydraulics.unit.k.${shown.system}`)}</span>
        </div>
      )}
    </FieldShell>
  );
}
