import { useObservable } from '../core/observable.ts';
import { to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { mayWrite } from '../screens/may.ts';

/** What the desk itself adds to a bill, most used first. What crews record has its forms under Crew. */
const kinds = [
  'documents',
  'credit',
  'week-hours',
  'claim-handling',
  'counter-calculation',
  'water-lost',
] as const;

interface Props {
  /** The claim to come back to. */
  readonly claimId: string;
  readonly strikeId: string;
  readonly hydrantId: string | null;
}

export function AddToBill({ claimId, strikeId, hydrantId }: Props) {
  const words = useWords();
  const current = useObservable(session);
  return (
    <div class="add-to-bill">
      <h3>{words.t('claim.add')}</h3>
      <p class="actions">
        {kinds
          .filter((kind) => mayWrite(current, kind))
          .map((kind) => (
            <a
              class="button"
              key={kind}
              href={to(['new', kind], { strike: strikeId, hydrant: hydrantId, claim: claimId })}
            >
              {words.t(`claim.add.${kind}`)}
            </a>
          ))}
      </p>
    </div>
  );
}
