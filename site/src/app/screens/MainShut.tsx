import { mainsStanding } from '../../../../shared/shutMain/ofHydrant.ts';
import { effectiveFacts } from '../../../../shared/submissions/effective.ts';
import { useObservable } from '../core/observable.ts';
import type { HydrantAnswer } from '../core/records.ts';
import type { StrikeAnswer } from '../core/strikeAnswer.ts';
import { useWords } from '../core/words.ts';
import { lazy } from '../form/view/Lazy.tsx';
import { queuedOfHydrant } from '../offline/localStrike.ts';
import { entries } from '../outbox/outbox.ts';
import type { MainShutProps } from './damage/MainShutPart.tsx';

const Part = lazy<MainShutProps>(async () => (await import('./damage/MainShutPart.tsx')).MainShutPart);

/** The main that was shut for a strike: who is without water, and whether a notice is needed. Nothing where none was. */
export function MainShut({ answer: { strike, history, ofHydrant = [] } }: { readonly answer: StrikeAnswer }) {
  const words = useWords();
  if (!strike.shutMain) return null;
  const { facts } = effectiveFacts([...history.map(({ recorded }) => recorded), ...ofHydrant]);
  const query = { strike: strike.strikeId, hydrant: strike.hydrantId };
  return (
    <section>
      <h2>{words.t('shut-main.title')}</h2>
      <Part shutMain={strike.shutMain} facts={facts} query={query} />
    </section>
  );
}

interface OfHydrantProps {
  readonly hydrantId: string;
  /** What the server said; null while it is silent. */
  readonly answer: HydrantAnswer | null;
}

/**
 * The same of a main that was shut from a hydrant's page, whatever the cause. What is over (open again, listed, answered)
 * is folded: years of them stand with a hydrant.
 */
export function HydrantMainShut({ hydrantId, answer }: OfHydrantProps) {
  const words = useWords();
  const waiting = queuedOfHydrant(hydrantId, useObservable(entries));
  const mains = mainsStanding(answer?.mains ?? null, waiting);
  if (!mains) return null;
  const { standing, facts } = mains;
  const query = { hydrant: hydrantId };
  const title = <h2>{words.t('shut-main.title')}</h2>;
  const part = <Part shutMain={standing} facts={facts} query={query} />;
  const over =
    standing.unanswered.length === 0 && standing.closings.every(({ reopenedAt }) => reopenedAt !== null);
  return over ? (
    <details class="form-section">
      <summary>{title}</summary>
      {part}
    </details>
  ) : (
    <section>
      {title}
      {part}
    </section>
  );
}
