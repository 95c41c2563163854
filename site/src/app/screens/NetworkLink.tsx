import { to } from '../core/router.ts';
import { useWords } from '../core/words.ts';

interface Props {
  readonly hydrantId: string | null;
  /** The strike whose water lost is bounded there as well. */
  readonly strikeId?: string;
}

/** The way to what the utility's network model says of a hydrant. */
export function NetworkLink({ hydrantId, strikeId }: Props) {
  const words = useWords();
  if (hydrantId === null || hydrantId === '') return null;
  return (
    <p>
      <a class="row-link" href={to(['network', hydrantId], { strike: strikeId ?? null })}>
        {words.t('network.link')}
      </a>
    </p>
  );
}
