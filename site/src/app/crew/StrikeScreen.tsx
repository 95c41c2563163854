import { useObservable } from '../core/observable.ts';
import { useStrike } from '../core/records.ts';
import type { StrikeAnswer } from '../core/strikeAnswer.ts';
import { route, to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { Cautions } from '../screens/Cautions.tsx';
import { Damage } from '../screens/Damage.tsx';
import { DispatchPart } from '../screens/DispatchPart.tsx';
import { Heading } from '../screens/Heading.tsx';
import { HydrantLine } from '../screens/HydrantLine.tsx';
import { Kit } from '../screens/Kit.tsx';
import { MainShut } from '../screens/MainShut.tsx';
import { mayWrite } from '../screens/may.ts';
import { NetworkLink } from '../screens/NetworkLink.tsx';
import { missingFrom, MissingList, StrikeAlarms, StrikeTimes } from '../screens/StrikeFacts.tsx';
import { StageTag } from '../screens/StageTag.tsx';
import { Story } from '../screens/Story.tsx';
import { strikeTitle } from '../screens/titles.ts';
import { WaitingHere } from '../screens/ThisDevice.tsx';
import { WaterLost } from '../screens/WaterLost.tsx';
import { Unread } from '../screens/Unread.tsx';

const reports = [
  'out-of-service-notice',
  'valve-operation',
  'expected-return',
  'party',
  'repair',
  'flow-test',
  'water-lost',
  'return-to-service',
  'planned-work',
  'link',
] as const;

/** One strike for the crew: how it stands, what is missing next, every report about it, and its story in order. */
export function StrikeScreen() {
  const words = useWords();
  const strikeId = useObservable(route).parts[1] ?? '';
  const strike = useStrike(strikeId);
  const title = strike.value
    ? words.t('strike.title', { what: strikeTitle(strike.value.strike, words) })
    : words.t('kind.strike');
  return (
    <>
      <Heading title={title}>{title}</Heading>
      <Unread resource={strike} />
      <WaitingHere strikeId={strikeId} />
      {strike.value && <Content answer={strike.value} />}
    </>
  );
}

function Content({ answer }: { readonly answer: StrikeAnswer }) {
  const words = useWords();
  const current = useObservable(session);
  const { strike, hydrant, status, possibleDuplicates } = answer;
  const may = (kind: string): boolean => mayWrite(current, kind);
  const query = { strike: strike.strikeId, hydrant: strike.hydrantId };
  return (
    <>
      <p>
        <StageTag strike={strike} />
      </p>
      {strike.hydrantId && (
        <p>
          <a class="row-link" href={to(['hydrant', strike.hydrantId])}>
            <HydrantLine id={strike.hydrantId} hydrant={hydrant} inService={status?.inService ?? null} />
          </a>
        </p>
      )}
      {hydrant && <NetworkLink hydrantId={strike.hydrantId} strikeId={strike.strikeId} />}
      <StrikeAlarms strike={strike} />
      <DispatchPart
        of="strikes"
        id={strike.strikeId}
        out={strike.returnedAt === null}
        record={may('out-of-service-notice') ? to(['new', 'out-of-service-notice'], query) : null}
      />
      {strike.stage !== 'back' && <Cautions kind="strike" />}
      {possibleDuplicates.length > 0 && (
        <div class="notice">
          <p>{words.t('strike.duplicates', { count: possibleDuplicates.length })}</p>
          <p class="actions">
            {possibleDuplicates.slice(0, 3).map((id) => (
              <a key={id} href={to(['strike', id])}>
                {words.t('strike.look-at-duplicate')}
              </a>
            ))}
            {may('link') && (
              <a class="button" href={to(['new', 'link'], query)}>
                {words.t('kind.link')}
              </a>
            )}
          </p>
        </div>
      )}
      <section>
        <h2>{words.t('missing.title')}</h2>
        <MissingList
          missing={missingFrom(answer, false)}
          strike={strike}
          may={may}
          history={answer.history}
        />
      </section>
      <MainShut answer={answer} />
      <section>
        <h2>{words.t('strike.report')}</h2>
        <p class="actions">
          {reports.filter(may).map((kind) => (
            <a class="button" key={kind} href={to(['new', kind], query)}>
              {words.t(`kind.${kind}`)}
            </a>
          ))}
        </p>
        <p>
          <a class="button plain" href={to(['sheet'], query)}>
            {words.t('procedure.sheet-link')}
          </a>
        </p>
      </section>
      <Damage answer={answer} />
      {strike.stage !== 'back' && <Kit hydrant={hydrant} />}
      <section>
        <h2>{words.t('strike.times')}</h2>
        <StrikeTimes strike={strike} />
      </section>
      <WaterLost answer={answer} />
      <section>
        <h2>{words.t('story.title')}</h2>
        <Story history={answer.history} from={['strike', strike.strikeId]} />
      </section>
    </>
  );
}
