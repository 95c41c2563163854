import type { ClaimAnswer } from '../../core/records.ts';
import { useWords } from '../../core/words.ts';

/** Payments marked as full, with the rule of the state, and what the claims of one strike ask beyond its statement. */
export function LifeWarnings({ answer: { cautions = [], shares } }: { readonly answer: ClaimAnswer }) {
  const words = useWords();
  const beside = shares?.problems ?? [];
  if (cautions.length === 0 && beside.length === 0) return null;
  return (
    <>
      {cautions.map(({ submissionId, sentences }) => (
        <div key={submissionId} class="warning">
          <p>
            <strong>{words.t('claim.life.full-payment')}</strong>
          </p>
          <ul>
            {sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
      ))}
      {beside.length > 0 && (
        <div class="warning">
          <ul>
            {beside.map(({ code, path, message }) => (
              <li key={`${code} ${path}`}>{message}</li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}
