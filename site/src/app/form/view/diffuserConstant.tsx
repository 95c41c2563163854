import { convertDiffuserConstant } from '../../../../../shared/hydraulics/diffuser.ts';
import { isTypedConstant, textOf } from '../nodes.ts';
import { readNumber } from '../number.ts';
import { FieldShell } from './FieldShell.tsx';
import type { PropsOf } from './props.ts';
import { useScope } from './scope.ts';
import { WithUnit } from './WithUnit.tsx';

/** A diffuser's K in the unit in which its maker prints it; what was typed stays what is stored. */
export function DiffuserConstantField({ leaf, path, value, set }: PropsOf<'diffuser-constant'>) {
  const { words } = useScope();
  const typed = isTypedConstant(value) ? value : { text: textOf(value), system: words.system };
  const amount = readNumber(typed.text);
  const shown =
    typed.system === words.system || amount === null
      ? typed
      : {
          text: String(Number(convertDiffuserConstant(amount, typed.system, words.system).toFixed(2))),
          system: words.system,
        };
  return (
    <FieldShell leaf={leaf} path={path}>
      {(described) => (
        <WithUnit
          described={described}
          text={shown.text}
          onText={(text) => set({ text, system: shown.system })}
          symbol={words.t(`hydraulics.unit.k.${shown.system}`)}
        />
      )}
    </FieldShell>
  );
}
