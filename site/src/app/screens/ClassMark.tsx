import { classNameOf, type HydrantClass } from '../../../../shared/hydraulics/hydrantClass.ts';
import { useFlowTestSettings } from '../core/utility.ts';
import { useWords } from '../core/words.ts';

/** A class in the utility's own name and colour; the colour's word stands beside it for whoever does not see it. */
export function ClassMark({ hydrantClass }: { readonly hydrantClass: HydrantClass }) {
  const words = useWords();
  const { classBands } = useFlowTestSettings();
  const color = classBands.find((band) => band.hydrantClass === hydrantClass)?.color;
  return (
    <>
      <span class={`class-mark ${color ? `color-${color}` : ''}`}>
        {classNameOf(hydrantClass, classBands)}
      </span>
      {color && <small> {words.t(`hydraulics.color.${color}`)}</small>}
    </>
  );
}
