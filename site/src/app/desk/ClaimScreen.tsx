import type { ClaimState } from '../../../../shared/claims/state.ts';
import { effectiveFacts, ofKind } from '../../../../shared/submissions/effective.ts';
import { sayProblem } from '../../../../shared/words/index.ts';
import { useObservable } from '../core/observable.ts';
import { useClaim, useObjections, useStatement, useStrike, type ClaimAnswer } from '../core/records.ts';
import type { StrikeAnswer } from '../core/strikeAnswer.ts';
import { route, to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { Heading } from '../screens/Heading.tsx';
import { mayWrite } from '../screens/may.ts';
import { missingFrom, MissingList, StrikeAlarms } from '../screens/StrikeFacts.tsx';
import { StageTag } from '../screens/StageTag.tsx';
import { partyTitle, strikeTitle } from '../screens/titles.ts';
import { Unread } from '../screens/Unread.tsx';
import { AddToBill } from './AddToBill.tsx';
import { ClaimSummary } from './ClaimSummary.tsx';
import { CounterCalculations } from './CounterCalculations.tsx';
import { Objections } from './Objections.tsx';
import { Life } from './life/Life.tsx';
import { Letters } from './letters/Letters.tsx';
import { LetterPanel } from './LetterPanel.tsx';
import { PacketPanel } from './PacketPanel.tsx';
import { showPart } from './places.ts';
import { StatementView } from './StatementView.tsx';

/** One claim in the order of the work: what is missing, what the strike cost and why, what an insurer would say, the packet. */
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

/** What this claim still lacks. Its packet is on this screen: the way there is a step down, not a page. */
function Missing({ claim, story }: { readonly claim: ClaimState; readonly story: StrikeAnswer }) {
  const words = useWords();
  const current = useObservable(session);
  const missing = missingFrom({ ...story, claims: [claim] }, true);
  const ofPacket = missing.find(({ code }) => code === 'packet' || code === 'packet-old');
  const others = missing.filter((each) => each !== ofPacket);
  return (
    <>
      {(others.length > 0 || missing.length === 0) && (
        <MissingList
          missing={others}
          strike={story.strike}
          may={(kind) => mayWrite(current, kind)}
          claims={[claim]}
        />
      )}
      {ofPacket && (
        <p class="actions">
          <span>
            {words.t(`missing.${ofPacket.code}`, { revision: claim.packets.at(-1)?.revision ?? 0 })}
          </span>
          <button type="button" class="plain" onClick={() => showPart('packet')}>
            {words.t('claim.to-packet')}
          </button>
        </p>
      )}
    </>
  );
}

function Content({ answer }: { readonly answer: ClaimAnswer }) {
  const words = useWords();
  const { claim, strike } = answer;
  const strikeId = strike?.strikeId ?? claim.strikeId;
  const issued = claim.packets.length > 0;
  const statement = useStatement(claim.claimId);
  const objections = useObjections(claim.claimId);
  const story = useStrike(strikeId);
  const history = story.value?.history ?? [];
  return (
    <>
      <ClaimSummary claim={claim} strike={strike} statement={statement} objections={objections} />
      <div class="case claim">
        <div class="case-main">
          <section id="missing" tabIndex={-1}>
            <h2>{words.t('missing.title')}</h2>
            {strike && <StrikeAlarms strike={strike} />}
            <ClaimProblems claim={claim} />
            <Unread resource={story} />
            {story.value && <Missing claim={claim} story={story.value} />}
          </section>
          {issued && <Life answer={answer} />}
          {issued && <Letters answer={answer} />}
          <section id="statement" tabIndex={-1}>
            <h2>{words.t('claim.statement')}</h2>
            <p class="small soft">{words.t('desk.not-legal-advice')}</p>
            <Unread resource={statement} />
            {statement.value && (
              <StatementView statement={statement.value} strikeId={strikeId} history={history} />
            )}
            <AddToBill claimId={claim.claimId} strikeId={strikeId} hydrantId={strike?.hydrantId ?? null} />
            {story.value && <CounterCalculations answer={story.value} />}
          </section>
          <Objections claim={claim} strike={strike} objections={objections} />
          <LetterPanel claimId={claim.claimId} />
          {/* Before there is a packet the bill is the work; dates, closing and the notice to the own insurer are there all the same. */}
          {!issued && <Life answer={answer} />}
          {!issued && <Letters answer={answer} />}
        </div>
        <div class="case-side">
          <ClaimFacts answer={answer} />
          <div id="packet" tabIndex={-1}>
            <PacketPanel claim={claim} />
          </div>
        </div>
      </div>
    </>
  );
}

function ClaimFacts({ answer: { claim, strike, parties } }: { readonly answer: ClaimAnswer }) {
  const words = useWords();
  const party = ofKind(effectiveFacts(parties).facts, 'party').find(
    ({ fact }) => fact.submissionId === claim.partyId,
  );
  return (
    <section>
      <h2>{words.t('claim.against')}</h2>
      {strike && (
        <p>
          <StageTag strike={strike} />
        </p>
      )}
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
    </section>
  );
}

/** What in the claim's own records cannot be so: a demand for a packet that was never issued, a party of another strike. */
function ClaimProblems({ claim }: { readonly claim: ClaimAnswer['claim'] }) {
  const words = useWords();
  // Claims that were read before problems were kept have none.
  const { problems = [] } = claim as Partial<ClaimAnswer['claim']>;
  if (problems.length === 0) return null;
  return (
    <div class="warning">
      <ul>
        {problems.map((found) => (
          <li key={`${found.code} ${found.path}`}>{sayProblem(words.locale, found)}</li>
        ))}
      </ul>
    </div>
  );
}
