import { useState } from 'preact/hooks';
import { outletShapes } from '../../../../../shared/hydraulics/outletShapes.ts';
import { outletShapeSvg } from '../../../../../shared/hydraulics/outletShapeSvg.ts';
import { textOf } from '../nodes.ts';
import { readNumber } from '../number.ts';
import { FieldShell } from './FieldShell.tsx';
import type { PropsOf } from './props.ts';
import { useScope } from './scope.ts';

/** The outlet's coefficient by what a finger feels inside it, with its picture, or as a number from the maker. */
export function CoefficientField({ leaf, path, value, level, change }: PropsOf<'coefficient'>) {
  const { words, submissionId } = useScope();
  const text = textOf(value);
  const said = textOf(level[leaf.shapeTo]);
  // Somebody who types 0.95 passes 0.9 on the way, which is not yet a choice of the rounded shape.
  const [typing, setTyping] = useState(false);
  const number = readNumber(text);
  const shape =
    outletShapes.find(({ id }) => id === said) ??
    (typing ? undefined : outletShapes.find(({ coefficient }) => coefficient === number));
  return (
    <FieldShell leaf={leaf} path={path} group="radiogroup">
      {(described) => (
        <>
          <div class="choices shapes">
            {outletShapes.map((each) => (
              <label class="choice" key={each.id}>
                <input
                  type="radio"
                  name={`${submissionId}-${path}`}
                  value={each.id}
                  checked={shape?.id === each.id}
                  onChange={() => {
                    setTyping(false);
                    change({ [leaf.name]: String(each.coefficient), [leaf.shapeTo]: each.id });
                  }}
                />
                <span>
                  {/* Our own drawing; the words beside it say the same. */}
                  <span
                    dangerouslySetInnerHTML={{
                      __html: outletShapeSvg(each, {
                        locale: words.locale,
                        idPrefix: described.id,
                        decorative: true,
                      }),
                    }}
                  />
                  {words.t(`hydraulics.shape.${each.id}`)}
                  <small> {each.coefficient.toFixed(2)}</small>
                </span>
              </label>
            ))}
          </div>
          <div class="inline">
            <label for={`${described.id}-other`}>{words.t('form.other-coefficient')}</label>
            <input
              id={`${described.id}-other`}
              class="short"
              inputMode="decimal"
              autocomplete="off"
              value={shape ? '' : text}
              onInput={(event) => {
                setTyping(true);
                change({ [leaf.name]: event.currentTarget.value, [leaf.shapeTo]: '' });
              }}
            />
          </div>
        </>
      )}
    </FieldShell>
  );
}
