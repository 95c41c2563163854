import type { ClaimState } from '../../../../../shared/claims/state.ts';
import { lineTitle } from '../lineWords.ts';
import { useStatement } from '../../core/records.ts';
import { useWords } from '../../core/words.ts';

/** Lines that were cut or disputed: by how much, why, in whose words, and what was said to it. */
export function Cuts({ claim }: { readonly claim: ClaimState }) {
  const words = useWords();
  const statement = useStatement(claim.claimId);
  const titleOf = (lineId: string | null): string => {
    const line = statement.value?.lines.find((each) => each.lineId === lineId);
    return line ? lineTitle(line, words) : (lineId ?? words.t('claim.life.no-line'));
  };
  const rows = [
    ...claim.life.disputes.map((each) => ({
      key: `${each.submissionId} ${each.lineId ?? ''} ${each.reason}`,
      what: words.t('claim.life.disputed'),
      ...each,
      cents: each.disputedCents,
      answer:
        each.outcome === null ? words.t('claim.life.waits') : words.t(`value.disputeOutcome.${each.outcome}`),
    })),
    ...claim.money.cuts.map((each) => ({
      key: `${each.submissionId} ${each.lineId ?? ''} ${each.reason}`,
      what: words.t('claim.life.cut'),
      ...each,
      answer: '',
    })),
  ].sort((a, b) => a.on.localeCompare(b.on));
  if (rows.length === 0) return null;
  return (
    <>
      <h3>{words.t('claim.life.cuts')}</h3>
      <div class="wide-table" role="region" aria-label={words.t('claim.life.cuts')} tabIndex={0}>
        <table class="figure-table">
          <caption class="visually-hidden">{words.t('claim.life.cuts')}</caption>
          <thead>
            <tr>
              <th scope="col">{words.t('field.claim-line')}</th>
              <th scope="col" class="amount">
                {words.t('field.line-disputed.lines.disputedCents')}
              </th>
              <th scope="col">{words.t('field.short-reason')}</th>
              <th scope="col">{words.t('field.payer-words')}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ key, what, on, lineId, cents, reason, words: said, answer }) => (
              <tr key={key}>
                <th scope="row">
                  {titleOf(lineId)}
                  <span class="block small soft">
                    {what}, {words.day(on)}
                  </span>
                </th>
                <td class="amount">{words.money(cents)}</td>
                <td>{words.t(`value.shortReason.${reason}`)}</td>
                <td>
                  {said}
                  {answer && <span class="block small soft">{answer}</span>}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}
