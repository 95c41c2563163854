import type { Hydrant } from '../../../../shared/inventory/hydrant.ts';
import { formatQuantity } from '../../../../shared/units/format.ts';
import { useWords } from '../core/words.ts';

interface Props {
  readonly id: string;
  readonly hydrant: Hydrant | null;
  /** Null while it is not known: nothing is claimed then. */
  readonly inService: boolean | null;
  readonly distanceFt?: number | undefined;
  /** Compass eighth from where one stands. */
  readonly bearing?: string | undefined;
}

/** A hydrant in one line or two: number, place, type, and whether it can be relied on. */
export function HydrantLine({ id, hydrant, inService, distanceFt, bearing }: Props) {
  const words = useWords();
  const where = [
    distanceFt === undefined ? '' : formatQuantity(Math.round(distanceFt), 'ft', words),
    bearing ? words.t(`bearing.${bearing}`) : '',
  ]
    .filter(Boolean)
    .join(' ');
  return (
    <span class="hydrant-line">
      <span class="hydrant-id">{id}</span>
      {hydrant?.place && <span class="place">{hydrant.place}</span>}
      <span class="facts">
        {hydrant && <span>{words.t(`value.hydrantType.${hydrant.type}`)}</span>}
        {distanceFt !== undefined && <span>{where}</span>}
        {inService !== null && (
          <span class={inService ? 'tag' : 'tag out'}>
            {words.t(inService ? 'title.in-service' : 'title.out-of-service')}
          </span>
        )}
      </span>
    </span>
  );
}
