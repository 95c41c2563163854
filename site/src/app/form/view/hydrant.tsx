import { useState } from 'preact/hooks';
import { HydrantFinder } from '../../screens/HydrantFinder.tsx';
import { focusSoon } from '../../core/focus.ts';
import { useHydrant } from '../../core/records.ts';
import { HydrantLine } from '../../screens/HydrantLine.tsx';
import { textOf } from '../nodes.ts';
import { FieldShell } from './FieldShell.tsx';
import type { PropsOf } from './props.ts';
import { fieldId, useScope } from './scope.ts';

/** A hydrant by its number, by what is near, or as typed when there is no signal. */
export function HydrantField({ leaf, path, value, set }: PropsOf<'hydrant'>) {
  const { words, job } = useScope();
  const id = textOf(value);
  const [looking, setLooking] = useState(id === '');
  const found = useHydrant(id === '' || looking ? null : id);
  const look = (): void => {
    setLooking(true);
    focusSoon(`#${fieldId(path)}-search`);
  };
  return (
    <FieldShell leaf={leaf} path={path} group="group">
      {(described) =>
        looking || id === '' ? (
          <>
            <HydrantFinder
              inputId={`${described.id}-search`}
              labelledBy={`${described.id}-label`}
              suggested={job.hydrantId}
              onPick={(hydrantId) => {
                set(hydrantId);
                setLooking(false);
                focusSoon(`#${described.id} .chosen button`);
              }}
            />
            {id !== '' && (
              <button type="button" class="link" onClick={() => setLooking(false)}>
                {words.t('form.keep', { what: id })}
              </button>
            )}
          </>
        ) : (
          <div class="chosen">
            <HydrantLine
              id={id}
              hydrant={found.value?.hydrant ?? null}
              inService={found.value && !found.value.partial ? (found.value.status?.inService ?? true) : null}
            />
            <button type="button" class="plain" onClick={look}>
              {words.t('form.change')}
              <span class="visually-hidden"> {id}</span>
            </button>
            {leaf.required !== true && (
              <button
                type="button"
                class="link"
                onClick={() => {
                  set('');
                  look();
                }}
              >
                {words.t('form.clear')}
              </button>
            )}
          </div>
        )
      }
    </FieldShell>
  );
}
