import type { Hydrant } from '../../../../shared/inventory/hydrant.ts';
import { formatQuantity } from '../../../../shared/units/format.ts';
import { useWords } from '../core/words.ts';

interface Props {
  readonly id: string;
  readonly hydrant: Hydrant | null;
  /** Null while it is not known: nothing is claimed then. */
  readonly inService: boolean | null;
  readonly distanceFt?: number | undefined;
}

/** A hydrant in one line or two: number, place, type, and whether it can be relied on. */
export function HydrantLine({ id, hydrant, inService, distanceFt }: Props) {
  const words = useWords();
  return (
    <span class="hydrant-line">
      <span class="hydrant-id">{id}</span>
      {hydrant?.place && <span class="place">{hydrant.place}</span>}
      <span class="facts">
        {hydrant && <span>{words.t(`value.hydrantType.${hydrant.type}`)}</span>}
        {distanceFt !== undefined && <span>{formatQuantity(Math.round(distanceFt), 'ft', words)}</span>}
        {inService !== null && (
          <span class={inService ? 'tag' : 'tag out'}>
            {words.t(inService ? 'title.in-service' : 'title.out-of-service')}
          </span>
        )}
      </span>
    </span>
  );
}
