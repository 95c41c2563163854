import { acceptedStillBilled } from '../../../../shared/audit/accepted.ts';
import type { ClaimState } from '../../../../shared/claims/state.ts';
import type { ClaimLetter } from '../../../../shared/letters/answer.ts';
import { effectiveFacts } from '../../../../shared/submissions/effective.ts';
import { claimPath, useObjections, useStrike } from '../core/records.ts';
import { useResource } from '../core/resource.ts';
import { useWords } from '../core/words.ts';
import { CreditLink } from './CreditLink.tsx';
import { showPart } from './places.ts';
import { sayParams } from './sayParams.ts';

interface Props {
  readonly claim: ClaimState;
  /** Sentences on the files that the last preview lists without showing them; null where none was built here. */
  readonly leftOut: readonly string[] | null;
}

/** What an issued packet would go out with: open objections, money accepted and still billed, evidence and files that lack. */
export function BeforeIssuing({ claim, leftOut }: Props) {
  const words = useWords();
  const objections = useObjections(claim.claimId).value?.objections ?? null;
  const evidence = useResource<ClaimLetter>(`${claimPath(claim.claimId)}/letter`).value?.evidence ?? null;
  const story = useStrike(claim.strikeId).value;
  const open = objections?.filter(({ answered, atStakeCents }) => answered === null && atStakeCents > 0);
  const most = open?.reduce((cents, { atStakeCents }) => Math.max(cents, atStakeCents), 0) ?? 0;
  const lacking = evidence?.filter(({ there }) => !there);
  const facts = effectiveFacts(story?.history.map(({ recorded }) => recorded) ?? []).facts;
  const billed = objections && story ? acceptedStillBilled(objections, facts) : [];
  return (
    <div class="before-issuing">
      <p>
        <strong>{words.t('before-issuing.title')}</strong>
      </p>
      <ul>
        <li>
          {open === undefined ? (
            words.t('before-issuing.objections-unread')
          ) : (
            <>
              {words.t('before-issuing.objections', { count: open.length, most: words.money(most) })}{' '}
              {open.length > 0 && (
                <button type="button" class="link" onClick={() => showPart('objections')}>
                  {words.t('before-issuing.see-objections')}
                </button>
              )}
            </>
          )}
        </li>
        {billed.length > 0 && (
          <li>
            {words.t('before-issuing.accepted', { count: billed.length })}
            <ul>
              {billed.map((each) => (
                <li key={each.objection.key}>
                  {words.t(`objection.${each.objection.rule}`, sayParams(each.objection.params, words))}{' '}
                  <CreditLink billed={each} strikeId={claim.strikeId} claimId={claim.claimId} />
                </li>
              ))}
            </ul>
          </li>
        )}
        <li>
          {lacking === undefined
            ? words.t('before-issuing.evidence-unread')
            : words.t('before-issuing.evidence', {
                count: lacking.length,
                list: lacking.map(({ code }) => words.t(`letter.evidence.${code}`)).join('; '),
              })}
        </li>
        <li>
          {leftOut === null
            ? words.t('before-issuing.files-unread')
            : words.t('before-issuing.files', { count: leftOut.length })}
          {leftOut !== null && leftOut.length > 0 && (
            <ul>
              {leftOut.map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
          )}
        </li>
      </ul>
    </div>
  );
}
