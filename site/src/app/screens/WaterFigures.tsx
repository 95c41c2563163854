import type { WaterLostEstimate } from '../../../../shared/water/estimate.ts';
import { sayQuantityProblem, sayWaterLost } from '../../../../shared/water/say.ts';
import { formatQuantity } from '../../../../shared/units/format.ts';
import { useWords } from '../core/words.ts';

/** Low, best and high, the sentences that the insurer reads (method, range, accuracy, times), and every challenge. */
export function WaterFigures({ estimate }: { readonly estimate: WaterLostEstimate }) {
  const words = useWords();
  const { by, lowGal, bestGal, highGal, claim, challenges } = estimate;
  const gal = (value: number): string => formatQuantity(value, 'gal', words);
  const none = by === 'valve-held' || by === 'no-flow-seen';
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
