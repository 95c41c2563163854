import type { StrikeAnswer } from '../core/strikeAnswer.ts';
import { useWords } from '../core/words.ts';
import { lazy } from '../form/view/Lazy.tsx';

interface Props {
  readonly answer: StrikeAnswer;
}

const Part = lazy<Props>(async () => (await import('./damage/DamagePart.tsx')).DamagePart);

/** How far the damage goes. Once the hydrant is back it is folded: what was decided is in the story. */
export function Damage({ answer }: Props) {
  const words = useWords();
  const title = <h2>{words.t('damage.title')}</h2>;
  return answer.strike.returnedAt === null ? (
    <section>
      {title}
      <Part answer={answer} />
    </section>
  ) : (
    <details class="form-section">
      <summary>{title}</summary>
      <Part answer={answer} />
    </details>
  );
}
