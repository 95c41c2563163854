import type { WaterLostEstimate } from '../../../../shared/water/estimate.ts';
import { sayPercent, sayQuantityProblem, sayWaterLost } from '../../../../shared/water/say.ts';
import { formatQuantity } from '../../../../shared/units/format.ts';
import { useWords, type Wording } from '../core/words.ts';

/** The kind of evidence, in a word or two. */
function methodOf({ by, flow }: WaterLostEstimate, { t }: Wording): string {
  if (by === 'metered') return t('water-answer.metered');
  if (by === 'own-figure') return t('water-answer.own');
  return flow ? t(`water.method.${flow.method}`) : t('water-answer.none');
}

/** Low, best and high with method and accuracy, the sentences that the insurer reads, and every challenge. */
export function WaterFigures({ estimate }: { readonly estimate: WaterLostEstimate }) {
  const words = useWords();
  const { by, lowGal, bestGal, highGal, flow, accuracyFraction, claim, challenges } = estimate;
  const gal = (value: number): string => formatQuantity(value, 'gal', words);
  const none = by === 'valve-held' || by === 'no-flow-seen';
  const accuracy = accuracyFraction ?? flow?.accuracyFraction ?? null;
  return (
    <>
      {by !== 'own-figure' && (
        <dl class="figures">
          {(none
            ? []
            : [['low', lowGal] as const, ['best', bestGal] as const, ['high', highGal] as const]
          ).map(([name, value]) => (
            <div key={name}>
              <dt>{words.t(`water-answer.${name}`)}</dt>
              <dd>{value === null ? words.t('water-answer.high-unknown') : gal(value)}</dd>
            </div>
          ))}
          <div>
            <dt>{words.t('water-answer.claim')}</dt>
            <dd>{gal(claim.waterGal)}</dd>
          </div>
        </dl>
      )}
      {!none && (
        <p class="small soft">
          {words.t('water-answer.method')} {methodOf(estimate, words)}. {words.t('water-answer.accuracy')}:{' '}
          {accuracy === null ? words.t('water-answer.ends') : `±${sayPercent(accuracy, words)}`}.
        </p>
      )}
      <p>{sayWaterLost(estimate, words)}</p>
      {challenges.length > 0 && (
        <>
          <p>
            <strong>{words.t('water-answer.challenged')}</strong>
          </p>
          <ul class="doubts">
            {challenges.map((challenge, index) => (
              <li key={index}>{sayQuantityProblem(challenge, words)}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
