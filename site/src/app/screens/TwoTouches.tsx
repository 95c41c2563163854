import { useState } from 'preact/hooks';
import { useFocusOnMount } from '../core/focus.ts';
import { useWords } from '../core/words.ts';

interface Props {
  /** Words of the first button. */
  readonly label: string;
  readonly onSure: () => void;
}

/** Throwing something away takes two touches, and the second button takes the place and the focus of the first. */
export function TwoTouches({ label, onSure }: Props) {
  const [sure, setSure] = useState(false);
  return sure ? (
    <Sure onSure={onSure} onNot={() => setSure(false)} />
  ) : (
    <button type="button" class="link" onClick={() => setSure(true)}>
      {label}
    </button>
  );
}

function Sure({ onSure, onNot }: { readonly onSure: () => void; readonly onNot: () => void }) {
  const words = useWords();
  const not = useFocusOnMount<HTMLButtonElement>();
  return (
    <>
      <button type="button" class="plain" onClick={onSure}>
        {words.t('form.discard-sure')}
      </button>{' '}
      <button type="button" class="link" onClick={onNot} ref={not}>
        {words.t('form.discard-not')}
      </button>
    </>
  );
}
