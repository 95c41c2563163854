import type { Described } from './FieldShell.tsx';
import { inputOf } from './inputOf.ts';

interface Props {
  readonly described: Described;
  readonly text: string;
  readonly onText: (text: string) => void;
  readonly symbol: string;
  /** What is said for the symbol; left out where it can be said as it stands. */
  readonly name?: string;
}

/** A number that is typed with its unit beside it, which belongs to what is said of the field. */
export function WithUnit({ described, text, onText, symbol, name }: Props) {
  const unitId = `${described.id}-unit`;
  return (
    <div class="with-unit">
      <input
        {...described}
        aria-describedby={[described['aria-describedby'], unitId].filter(Boolean).join(' ')}
        inputMode="decimal"
        autocomplete="off"
        value={text}
        onInput={(event) => onText(inputOf(event))}
      />
      <span class="unit" id={unitId}>
        <span aria-hidden={name !== undefined}>{symbol}</span>
        {name !== undefined && <span class="visually-hidden">{name}</span>}
      </span>
    </div>
  );
}
