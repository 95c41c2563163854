import { effectiveFacts } from '../../../../shared/submissions/effective.ts';
import { formatQuantity } from '../../../../shared/units/format.ts';
import { sayQuantityProblem } from '../../../../shared/water/say.ts';
import { waterStanding } from '../../../../shared/water/standing.ts';
import { useObservable } from '../core/observable.ts';
import { nameOf, people } from '../core/people.ts';
import type { StrikeAnswer } from '../core/strikeAnswer.ts';
import { to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { mayWrite } from './may.ts';
import { WaterFigures } from './WaterFigures.tsx';

/** The water lost at a strike: figures, what they stand on and who stands for them; or that nobody has said yet. */
export function WaterLost({ answer: { strike, history } }: { readonly answer: StrikeAnswer }) {
  const words = useWords();
  const current = useObservable(session);
  useObservable(people);
  const { facts } = effectiveFacts(history.map(({ recorded }) => recorded));
  const { record, estimate, challenges, heldUnrecorded, recordedThoughHeld, contradicted } =
    waterStanding(facts);
  const body = record?.fact.body;
  const answered = body?.challengeAnswer;
  return (
    <section>
      <h2>{words.t('water-answer.recorded')}</h2>
      {!record && <p>{words.t(heldUnrecorded ? 'water.said.valve-held' : 'water-answer.not-recorded')}</p>}
      {contradicted && (
        <p class="warning">
          {words.t('problem.flow-though-valve-held')} {words.t('packet.water.not-measured')}
        </p>
      )}
      {record && body && (
        <>
          {recordedThoughHeld && (
            <p class="warning">
              {words.t('problem.water-though-valve-held', { gallons: body.waterLostGal })}
            </p>
          )}
          {estimate ? (
            <WaterFigures estimate={estimate} />
          ) : (
            <>
              <p>
                <strong>{formatQuantity(body.waterLostGal, 'gal', words)}</strong>
              </p>
              <p>{body.basis}</p>
              {challenges.map((challenge, index) => (
                <p key={index}>
                  <strong>{words.t('water-answer.challenged')}</strong> {sayQuantityProblem(challenge, words)}
                </p>
              ))}
            </>
          )}
          {answered && (
            <p>
              {words.t('water-answer.answered', { who: nameOf(answered.byWorkerId), text: answered.text })}
            </p>
          )}
          <p class="small soft">
            {words.t('water-answer.by', {
              who: nameOf(body.byWorkerId),
              when: words.when(record.corrections.at(-1)?.recordedAt ?? record.recordedAt),
            })}
          </p>
        </>
      )}
      {mayWrite(current, 'water-lost') && (
        <p>
          <a
            class="button"
            href={to(['new', 'water-lost'], { strike: strike.strikeId, hydrant: strike.hydrantId })}
          >
            {words.t(record ? 'water-answer.again' : 'water-answer.do')}
          </a>
        </p>
      )}
    </section>
  );
}
