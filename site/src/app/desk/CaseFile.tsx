import { useEffect } from 'preact/hooks';
import { effectiveFacts, ofKind } from '../../../../shared/submissions/effective.ts';
import type { ClaimState } from '../../../../shared/claims/state.ts';
import { useObservable } from '../core/observable.ts';
import { useStrike } from '../core/records.ts';
import type { StrikeAnswer } from '../core/strikeAnswer.ts';
import { route, to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { describe } from '../form/describe.ts';
import { partySpec } from '../form/specs/party.ts';
import { DispatchPart } from '../screens/DispatchPart.tsx';
import { Damage } from '../screens/Damage.tsx';
import { Heading } from '../screens/Heading.tsx';
import { HydrantLine } from '../screens/HydrantLine.tsx';
import { MainShut } from '../screens/MainShut.tsx';
import { mayWrite } from '../screens/may.ts';
import { NetworkLink } from '../screens/NetworkLink.tsx';
import { missingFrom, MissingList, StrikeAlarms, StrikeTimes } from '../screens/StrikeFacts.tsx';
import { StageTag } from '../screens/StageTag.tsx';
import { SaidList, Story } from '../screens/Story.tsx';
import { partyTitle, strikeTitle } from '../screens/titles.ts';
import { WaterLost } from '../screens/WaterLost.tsx';
import { Unread } from '../screens/Unread.tsx';
import { Evidence } from './Evidence.tsx';
import { showEntry } from './places.ts';

/** A strike as a case file: what is missing, who may be liable, what shows it, what was claimed, and the whole story. */
export function CaseFile() {
  const words = useWords();
  const strikeId = useObservable(route).parts[1] ?? '';
  const strike = useStrike(strikeId);
  const title = strike.value
    ? words.t('strike.title', { what: strikeTitle(strike.value.strike, words) })
    : words.t('desk.case-file');
  return (
    <>
      <p class="trail">
        <a href="#/">{words.t('shell.desk')}</a>
      </p>
      <Heading title={title}>{title}</Heading>
      <Unread resource={strike} />
      {strike.value && <Content answer={strike.value} />}
    </>
  );
}

function Content({ answer }: { readonly answer: StrikeAnswer }) {
  const words = useWords();
  const current = useObservable(session);
  const { strike, hydrant, status, claims = [], possibleDuplicates } = answer;
  const may = (kind: string): boolean => mayWrite(current, kind);
  const { query } = useObservable(route);
  const entry = query.get('entry');
  // A line of a bill leads to what it comes from.
  useEffect(() => {
    if (entry !== null) requestAnimationFrame(() => showEntry(entry));
  }, [entry]);
  return (
    <>
      <p>
        <StageTag strike={strike} />
      </p>
      {strike.hydrantId && (
        <p>
          <HydrantLine id={strike.hydrantId} hydrant={hydrant} inService={status?.inService ?? null} />
        </p>
      )}
      {hydrant && <NetworkLink hydrantId={strike.hydrantId} strikeId={strike.strikeId} />}
      <StrikeAlarms strike={strike} />
      <DispatchPart of="strikes" id={strike.strikeId} out={strike.returnedAt === null} record={null} />
      {possibleDuplicates.length > 0 && (
        <div class="notice">
          <p>{words.t('strike.duplicates', { count: possibleDuplicates.length })}</p>
          <p>
            <a class="button" href={to(['new', 'link'], { strike: strike.strikeId })}>
              {words.t('kind.link')}
            </a>
          </p>
        </div>
      )}
      <div class="case">
        <div class="case-side">
          <section>
            <h2>{words.t('missing.title')}</h2>
            <MissingList missing={missingFrom(answer, true)} strike={strike} may={may} claims={claims} />
          </section>
          <section>
            <h2>{words.t('desk.claims')}</h2>
            <Claims claims={claims} strikeId={strike.strikeId} />
          </section>
          <section>
            <h2>{words.t('desk.parties')}</h2>
            <Parties answer={answer} />
          </section>
          <WaterLost answer={answer} />
          <section>
            <h2>{words.t('desk.evidence')}</h2>
            <Evidence exhibits={strike.exhibits} states={answer.evidence} hydrant={answer.hydrant} />
          </section>
        </div>
        <div class="case-main">
          <section>
            <h2>{words.t('story.title')}</h2>
            <Story history={answer.history} from={['strike', strike.strikeId]} />
          </section>
          <section>
            <h2>{words.t('strike.times')}</h2>
            <StrikeTimes strike={strike} />
          </section>
          <MainShut answer={answer} />
          <Damage answer={answer} />
        </div>
      </div>
    </>
  );
}

function Claims({ claims, strikeId }: { readonly claims: readonly ClaimState[]; readonly strikeId: string }) {
  const words = useWords();
  return (
    <>
      {claims.length === 0 ? (
        <p>{words.t('desk.no-claim')}</p>
      ) : (
        <ul class="plain-list lines">
          {claims.map((claim) => (
            <li key={claim.claimId}>
              <a href={to(['claim', claim.claimId])}>
                <strong>{claim.claimNumber}</strong>
              </a>{' '}
              <span class="tag">{words.t(`standing.${claim.life.standing}`)}</span>
              <br />
              {words.t(`value.payerKind.${claim.payerKind}`)}
              {claim.payerName && ` · ${claim.payerName}`}
            </li>
          ))}
        </ul>
      )}
      <p>
        <a class="button" href={to(['new', 'claim-opened'], { strike: strikeId })}>
          {words.t(claims.length === 0 ? 'missing.claim.do' : 'desk.another-claim')}
        </a>
      </p>
      <p class="small soft">{words.t('desk.not-legal-advice')}</p>
    </>
  );
}

function Parties({ answer }: { readonly answer: StrikeAnswer }) {
  const words = useWords();
  const { strike } = answer;
  const parties = ofKind(effectiveFacts(answer.history.map(({ recorded }) => recorded)).facts, 'party');
  return (
    <>
      {parties.length === 0 && <p>{words.t('missing.party')}</p>}
      {parties.map(({ fact, corrections, erased }) => (
        <div class="card" key={fact.submissionId}>
          <h3>{partyTitle(fact.body, words)}</h3>
          {erased && <p>{words.t('story.erased')}</p>}
          <SaidList said={describe('party', partySpec.nodes, fact.body, words)} />
          {!erased && (
            <p>
              <a
                class="button"
                href={to([
                  'correct',
                  'strike',
                  strike.strikeId,
                  corrections.at(-1)?.submission.submissionId ?? fact.submissionId,
                ])}
              >
                {words.t('story.correct')}
                <span class="visually-hidden"> {partyTitle(fact.body, words)}</span>
              </a>
            </p>
          )}
        </div>
      ))}
      <p>
        <a class="button" href={to(['new', 'party'], { strike: strike.strikeId })}>
          {words.t(parties.length === 0 ? 'missing.party.do' : 'desk.another-party')}
        </a>
      </p>
    </>
  );
}
