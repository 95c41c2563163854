import { declaredExhibits } from '../../../../../shared/evidence/declared.ts';
import type { Submission } from '../../../../../shared/submissions/submission.ts';
import { useWords } from '../../core/words.ts';
import { OpenButton } from '../Evidence.tsx';

/** The letters, emails and pictures that came with an event, and the letter that left; each can be opened. */
export function Papers({ submission }: { readonly submission: Submission }) {
  const words = useWords();
  const papers = [
    ...declaredExhibits(submission).map(({ sha256, view, caption }) => ({
      sha256,
      what: caption ?? words.t(`value.view.${view}`),
    })),
    ...(submission.kind === 'letter-sent'
      ? [{ sha256: submission.body.pdfSha256, what: words.t(`letter.kind.${submission.body.letter}`) }]
      : []),
  ];
  if (papers.length === 0) return null;
  return (
    <ul class="plain-list">
      {papers.map(({ sha256, what }) => (
        <li key={sha256}>
          <span aria-hidden="true">{what} </span>
          <OpenButton sha256={sha256} what={what} />
        </li>
      ))}
    </ul>
  );
}
