import { useState } from 'preact/hooks';
import { HydrantFinder } from '../../screens/HydrantFinder.tsx';
import { useHydrant } from '../../core/records.ts';
import { HydrantLine } from '../../screens/HydrantLine.tsx';
import { textOf } from '../nodes.ts';
import { FieldShell } from './FieldShell.tsx';
import type { PropsOf } from './props.ts';
import { useScope } from './scope.ts';

/** A hydrant by its number, by what is near, or as typed when there is no signal. */
export function HydrantField({ leaf, path, value, set }: PropsOf<'hydrant'>) {
  const { words, job } = useScope();
  const id = textOf(value);
  const [looking, setLooking] = useState(id === '');
  const found = useHydrant(id === '' || looking ? null : id);
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
              inService={found.value ? (found.value.status?.inService ?? true) : null}
            />
            <button type="button" class="plain" onClick={() => setLooking(true)}>
              {words.t('form.change')}
              <span class="visually-hidden"> {id}</span>
            </button>
            {leaf.required !== true && (
              <button type="button" class="link" onClick={() => set('')}>
                {words.t('form.clear')}
              </button>
            )}
          </div>
        )
      }
    </FieldShell>
  );
}
