import type { StrikeAnswer } from '../core/strikeAnswer.ts';
import { useWords } from '../core/words.ts';
import { lazy } from '../form/view/Lazy.tsx';

interface Props {
  readonly answer: StrikeAnswer;
}

const Part = lazy<Props>(async () => (await import('./damage/MainShutPart.tsx')).MainShutPart);

/** The main that was shut: who is without water, and whether a notice is needed. Nothing where none was. */
export function MainShut({ answer }: Props) {
  const words = useWords();
  if (!answer.strike.shutMain) return null;
  return (
    <section>
      <h2>{words.t('shut-main.title')}</h2>
      <Part answer={answer} />
    </section>
  );
}
