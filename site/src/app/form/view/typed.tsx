import { unitName, unitSymbol } from '../../../../../shared/units/format.ts';
import { isTypedQuantity, textOf } from '../nodes.ts';
import { shownQuantity, typingUnit } from '../quantity.ts';
import { wordsOf } from '../words.ts';
import { FieldShell } from './FieldShell.tsx';
import { inputOf } from './inputOf.ts';
import type { PropsOf } from './props.ts';
import { recalled } from '../../core/recall.ts';
import { useScope } from './scope.ts';
import { WithUnit } from './WithUnit.tsx';

/** Fields that are typed into. All are plain text to the browser: what was typed is kept even when it is no number. */

export function TextField({ leaf, path, value, set }: PropsOf<'text'>) {
  const { spec } = useScope();
  const text = textOf(value);
  const onInput = (event: Event): void => set(inputOf(event));
  const suggestions = leaf.keypad === 'code' ? recalled(wordsOf(spec.kind, leaf, path)) : [];
  return (
    <FieldShell leaf={leaf} path={path}>
      {(described) =>
        leaf.lines ? (
          <textarea {...described} rows={leaf.lines} value={text} onInput={onInput} />
        ) : (
          <>
            <input
              {...described}
              type={leaf.keypad === 'tel' ? 'tel' : 'text'}
              value={text}
              onInput={onInput}
              autocomplete="off"
              {...(leaf.keypad === 'code'
                ? { autocapitalize: 'characters', spellcheck: false, class: 'code' }
                : {})}
              {...(leaf.suggestions !== undefined
                ? { list: leaf.suggestions }
                : suggestions.length > 0
                  ? { list: `${described.id}-list` }
                  : {})}
            />
            {leaf.suggestions === undefined && suggestions.length > 0 && (
              <datalist id={`${described.id}-list`}>
                {suggestions.map((each) => (
                  <option key={each} value={each} />
                ))}
              </datalist>
            )}
          </>
        )
      }
    </FieldShell>
  );
}

export function NumberField({ leaf, path, value, set }: PropsOf<'number'>) {
  return (
    <FieldShell leaf={leaf} path={path}>
      {(described) => (
        <div class={leaf.percent ? 'with-unit' : undefined}>
          <input
            {...described}
            class="short"
            inputMode={leaf.whole ? 'numeric' : 'decimal'}
            autocomplete="off"
            value={textOf(value)}
            onInput={(event) => set(inputOf(event))}
          />
          {leaf.percent && <span class="unit">%</span>}
        </div>
      )}
    </FieldShell>
  );
}

export function QuantityField({ leaf, path, value, set }: PropsOf<'quantity'>) {
  const { words } = useScope();
  const unit = typingUnit(leaf.typedIn ?? leaf.unit, words.system);
  const shown = isTypedQuantity(value)
    ? shownQuantity(value, words.system, leaf.typedIn)
    : { text: '', unit };
  return (
    <FieldShell leaf={leaf} path={path}>
      {(described) => (
        <WithUnit
          described={described}
          text={shown.text}
          onText={(text) => set({ text, unit: shown.unit })}
          symbol={unitSymbol(shown.unit, words.locale)}
          name={unitName(shown.unit, words.locale)}
        />
      )}
    </FieldShell>
  );
}

export function MoneyField({ leaf, path, value, set }: PropsOf<'money'>) {
  return (
    <FieldShell leaf={leaf} path={path}>
      {(described) => (
        <div class="with-unit before">
          <span class="unit" aria-hidden="true">
            $
          </span>
          <input
            {...described}
            inputMode="decimal"
            autocomplete="off"
            value={textOf(value)}
            onInput={(event) => set(inputOf(event))}
          />
        </div>
      )}
    </FieldShell>
  );
}

export function DateField({ leaf, path, value, set }: PropsOf<'date'>) {
  return (
    <FieldShell leaf={leaf} path={path}>
      {(described) => (
        <input
          {...described}
          type="date"
          class="short"
          value={textOf(value)}
          onInput={(event) => set(inputOf(event))}
        />
      )}
    </FieldShell>
  );
}
