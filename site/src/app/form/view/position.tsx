import { useState } from 'preact/hooks';
import { formatQuantity } from '../../../../../shared/units/format.ts';
import { locate } from '../../core/locate.ts';
import { isTypedPosition, type TypedPosition } from '../nodes.ts';
import { FieldShell } from './FieldShell.tsx';
import type { PropsOf } from './props.ts';
import { fieldId, problemsAt, useScope } from './scope.ts';

const blank: TypedPosition = { latitude: '', longitude: '', accuracyM: null };

/** What a device answers that knows nothing: latitude 0 and longitude 0, to about a mile. */
const isZero = (typed: string): boolean => typed.trim() !== '' && Math.abs(Number(typed)) < 0.01;

/** The device's position, or coordinates read off something else. */
export function PositionField({ leaf, path, value, set }: PropsOf<'position'>) {
  const { words, problems } = useScope();
  const [state, setState] = useState<'idle' | 'asking' | 'denied' | 'failed'>('idle');
  const typed = isTypedPosition(value) ? value : blank;
  const ask = async (): Promise<void> => {
    setState('asking');
    const found = await locate();
    if (found.ok) {
      set({
        latitude: found.latitudeDeg.toFixed(6),
        longitude: found.longitudeDeg.toFixed(6),
        accuracyM: Math.round(found.accuracyM),
      });
      setState('idle');
    } else setState(found.why);
  };
  const coordinate = (name: 'latitude' | 'longitude') => (
    <div>
      <label for={`${fieldId(path)}-${name}`}>{words.t(`form.${name}`)}</label>
      <input
        id={`${fieldId(path)}-${name}`}
        inputMode="text"
        autocomplete="off"
        value={typed[name]}
        aria-invalid={problemsAt(problems, `${path}.${name}Deg`).length > 0 ? 'true' : undefined}
        onInput={(event) => set({ ...typed, [name]: event.currentTarget.value, accuracyM: null })}
      />
    </div>
  );
  return (
    <FieldShell leaf={leaf} path={path} group="group">
      {() => (
        <>
          <button type="button" class="plain" onClick={() => void ask()} disabled={state === 'asking'}>
            {words.t(state === 'asking' ? 'form.locating' : 'form.locate')}
          </button>
          <p role="status" class="help">
            {state === 'denied' || state === 'failed' ? words.t(`form.locate-${state}`) : ''}
            {typed.accuracyM !== null &&
              words.t('form.accuracy', { radius: formatQuantity(typed.accuracyM, 'm', words) })}
          </p>
          <div class="pair">
            {coordinate('latitude')}
            {coordinate('longitude')}
          </div>
          {isZero(typed.latitude) && isZero(typed.longitude) && (
            <p role="alert" class="caution">
              {words.t('position.null-island')}
            </p>
          )}
        </>
      )}
    </FieldShell>
  );
}
