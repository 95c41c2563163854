import { useState } from 'preact/hooks';
import { laterLetterKinds } from '../../../../../shared/submissions/forms/claimLife/letterSent.ts';
import type { LaterDraft } from '../../../../../shared/letters/later/answer.ts';
import { answering, type LaterLetterKind } from '../../../../../shared/letters/later/letter.ts';
import { useResource } from '../../core/resource.ts';
import { claimPath, type ClaimAnswer } from '../../core/records.ts';
import { useObservable } from '../../core/observable.ts';
import { session } from '../../core/session.ts';
import { readStored } from '../../core/storage.ts';
import { useWords } from '../../core/words.ts';
import { Unread } from '../../screens/Unread.tsx';
import { LetterComposer } from './LetterComposer.tsx';
import { keptKey, isKept } from './kept.ts';

const answerable = ['line-disputed', 'payment-received', 'offer-made', 'claim-denied'];

/** A letter after the packet: which kind, what it answers, its text, and what was made of it. */
export function Letters({ answer: { claim, events } }: { readonly answer: ClaimAnswer }) {
  const words = useWords();
  const kept = readStored(keptKey(useObservable(session)?.personId ?? '', claim.claimId));
  const [kind, setKind] = useState<LaterLetterKind | ''>(isKept(kept) ? kept.letter : '');
  const [answers, setAnswers] = useState<string | null>(isKept(kept) ? kept.answers : null);
  const on = new Map(claim.life.events.map(({ submissionId, on: day }) => [submissionId, day]));
  const options = events
    .map(({ submission }) => submission)
    .filter((submission) => answerable.includes(submission.kind))
    .toReversed();
  const choose = (next: LaterLetterKind): void => {
    setKind(next);
    setAnswers(answering.includes(next) ? (options[0]?.submissionId ?? null) : null);
  };
  return (
    <section id="letters" tabIndex={-1}>
      <h2>{words.t('letter.sent.title')}</h2>
      <div class="field">
        <label for="letter-kind">{words.t('letter.sent.kind')}</label>
        <select
          id="letter-kind"
          value={kind}
          onChange={(event) => choose(event.currentTarget.value as LaterLetterKind)}
        >
          <option value="" disabled>
            {words.t('letter.sent.new')}
          </option>
          {laterLetterKinds.map((each) => (
            <option key={each} value={each}>
              {words.t(`letter.kind.${each}`)}
            </option>
          ))}
        </select>
      </div>
      {kind !== '' && answering.includes(kind) && (
        <div class="field">
          <label for="letter-answers">{words.t('letter.sent.answers')}</label>
          <select
            id="letter-answers"
            value={answers ?? ''}
            onChange={(event) => setAnswers(event.currentTarget.value || null)}
          >
            <option value="">{words.t('letter.sent.answers.none')}</option>
            {options.map(({ submissionId, kind: of }) => (
              <option key={submissionId} value={submissionId}>
                {words.t(`kind.${of}`)}, {words.day(on.get(submissionId) ?? '')}
              </option>
            ))}
          </select>
        </div>
      )}
      {kind !== '' && (
        <Draft key={`${kind} ${answers ?? ''}`} claimId={claim.claimId} kind={kind} answers={answers} />
      )}
    </section>
  );
}

interface DraftProps {
  readonly claimId: string;
  readonly kind: LaterLetterKind;
  readonly answers: string | null;
}

function Draft({ claimId, kind, answers }: DraftProps) {
  const query = answers === null ? '' : `?answers=${encodeURIComponent(answers)}`;
  const draft = useResource<LaterDraft>(`${claimPath(claimId)}/letters/${kind}${query}`);
  return (
    <>
      <Unread resource={draft} />
      {draft.value && <LetterComposer claimId={claimId} draft={draft.value} answers={answers} />}
    </>
  );
}
