import { useObservable } from '../core/observable.ts';
import { useClaim, useStatement, type ClaimAnswer } from '../core/records.ts';
import { route, to } from '../core/router.ts';
import { useWords } from '../core/words.ts';
import { effectiveFacts, ofKind } from '../../../../shared/submissions/effective.ts';
import { Heading } from '../screens/Heading.tsx';
import { StageTag, StrikeAlarms } from '../screens/StrikeFacts.tsx';
import { partyTitle, strikeTitle } from '../screens/titles.ts';
import { Unread } from '../screens/Unread.tsx';
import { LetterPanel } from './LetterPanel.tsx';
import { PacketPanel } from './PacketPanel.tsx';
import { StatementView } from './StatementView.tsx';

/** One claim: against whom, what the strike cost and why, the packet, and the demands that were sent. */
export function ClaimScreen() {
  const words = useWords();
  const claimId = useObservable(route).parts[1] ?? '';
  const claim = useClaim(claimId);
  const title = claim.value
    ? words.t('claim.title', { claimNumber: claim.value.claim.claimNumber })
    : words.t('claim.one');
  return (
    <>
      <p class="trail">
        <a href="#/">{words.t('shell.desk')}</a>
        {claim.value?.strike && (
          <>
            {' / '}
            <a href={to(['strike', claim.value.strike.strikeId])}>
              {words.t('strike.title', { what: strikeTitle(claim.value.strike, words) })}
            </a>
          </>
        )}
      </p>
      <Heading title={title}>{title}</Heading>
      <Unread resource={claim} />
      {claim.value && <Content answer={claim.value} />}
    </>
  );
}

function Content({ answer }: { readonly answer: ClaimAnswer }) {
  const words = useWords();
  const { claim, strike, parties } = answer;
  const statement = useStatement(claim.claimId);
  const party = ofKind(effectiveFacts(parties).facts, 'party').find(
    ({ fact }) => fact.submissionId === claim.partyId,
  );
  return (
    <div class="case">
      <div class="case-side">
        <p>
          <span class="tag">{words.t(`claim-stage.${claim.stage}`)}</span>{' '}
          {strike && <StageTag strike={strike} />}
        </p>
        {strike && <StrikeAlarms strike={strike} />}
        <dl class="said">
          <div>
            <dt>{words.t('field.claim-opened.payerKind')}</dt>
            <dd>{words.t(`value.payerKind.${claim.payerKind}`)}</dd>
          </div>
          {claim.payerName && (
            <div>
              <dt>{words.t('section.claim.payer')}</dt>
              <dd>{claim.payerName}</dd>
            </div>
          )}
          <div>
            <dt>{words.t('field.claim-opened.partyId')}</dt>
            <dd>{party ? partyTitle(party.fact.body, words) : words.t('title.party-unknown')}</dd>
          </div>
          <div>
            <dt>{words.t('claim.opened')}</dt>
            <dd>{words.when(claim.openedAt)}</dd>
          </div>
        </dl>
        <PacketPanel claim={claim} />
        <LetterPanel claimId={claim.claimId} />
      </div>
      <div class="case-main">
        <section>
          <h2>{words.t('claim.statement')}</h2>
          <p class="small soft">{words.t('desk.not-legal-advice')}</p>
          <Unread resource={statement} />
          {statement.value && <StatementView statement={statement.value} />}
        </section>
      </div>
    </div>
  );
}
