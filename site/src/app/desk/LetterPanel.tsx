import { mergeLetter } from '../../../../shared/letters/merge.ts';
import { useState } from 'preact/hooks';
import type { ClaimLetter } from '../../../../shared/letters/answer.ts';
import { hasWords, sayProblem } from '../../../../shared/words/index.ts';
import { useObservable } from '../core/observable.ts';
import { claimPath } from '../core/records.ts';
import { useResource } from '../core/resource.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { mayWrite } from '../screens/may.ts';
import { Unread } from '../screens/Unread.tsx';
import { letterDraft, LetterEditor } from './LetterEditor.tsx';
import { LetterText } from './LetterText.tsx';

/** The letter that the claim's packet opens with: which one, what its payer asks for, and its text to read and edit. */
export function LetterPanel({ claimId }: { readonly claimId: string }) {
  const words = useWords();
  const answer = useResource<ClaimLetter>(`${claimPath(claimId)}/letter`);
  return (
    <section id="letter" tabIndex={-1} class="letter">
      <h2>{words.t('letter.title')}</h2>
      <Unread resource={answer} />
      {answer.value && <Content key={answer.value.letter} claimId={claimId} answer={answer.value} />}
    </section>
  );
}

function Content({ claimId, answer }: { readonly claimId: string; readonly answer: ClaimLetter }) {
  const words = useWords();
  const current = useObservable(session);
  const { letter, problems, evidence, submissionId } = answer;
  const caution = `letter.caution.${letter}`;
  // Open from the start where something was begun; from then on it is the reader's to open and close.
  const [begun] = useState(() => current !== null && letterDraft(current.personId, claimId, letter) !== null);
  return (
    <>
      <p>
        <strong>{words.t(`letter.kind.${letter}`)}</strong>
        <br />
        <span class="small soft">
          {words.t(submissionId === null ? 'letter.is-template' : 'letter.is-recorded')}
        </span>
      </p>
      {hasWords(caution) && (
        <div class="notice">
          <p>{words.t(caution)}</p>
        </div>
      )}
      {problems.length > 0 && (
        <div class="warning">
          <p>
            <strong>{words.t('letter.problems')}</strong>
          </p>
          <ul>
            {problems.map((found) => (
              <li key={`${found.code} ${found.path}`}>{sayProblem(words.locale, found)}</li>
            ))}
          </ul>
        </div>
      )}
      <details open={begun}>
        <summary>{words.t('letter.open')}</summary>
        {current && mayWrite(current, 'letter-text') ? (
          <LetterEditor claimId={claimId} answer={answer} author={current} />
        ) : (
          <LetterText
            locale={answer.locale}
            paragraphs={mergeLetter(answer.text, answer.values).paragraphs}
          />
        )}
      </details>
      <h3>{words.t('letter.evidence')}</h3>
      <ul class="plain-list lines letter-evidence">
        {evidence.map(({ code, there }) => (
          <li key={code} class={there ? undefined : 'lacking'}>
            <span>{words.t(`letter.evidence.${code}`)}</span>
            <strong>{words.t(there ? 'letter.there' : 'letter.not-there')}</strong>
          </li>
        ))}
      </ul>
    </>
  );
}
