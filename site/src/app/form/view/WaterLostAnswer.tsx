import { OutOfRange } from '../../../../../shared/hydraulics/card.ts';
import type { Problem } from '../../../../../shared/problems/problem.ts';
import { estimateWaterLost, type WaterLostEstimate } from '../../../../../shared/water/estimate.ts';
import { waterLostInput } from '../../../../../shared/water/input.ts';
import { sayQuantityProblem } from '../../../../../shared/water/say.ts';
import { WaterFigures } from '../../screens/WaterFigures.tsx';
import { encode } from '../encode.ts';
import type { ExtraProps } from './props.ts';
import { useScope } from './scope.ts';

type Answer =
  | { readonly estimate: WaterLostEstimate }
  /** What is still needed; empty while the fields themselves say what is wrong. */
  | { readonly needed: readonly Problem[] };

/** What of a choice is not finished does not hide the figures that it chooses from. */
function answerTo(question: Record<string, unknown> | undefined): Answer {
  const parsed = [question, { ...question, choice: null }]
    .map((each) => waterLostInput.safeParse(each))
    .find(({ success }) => success)?.data;
  if (!parsed) return { needed: [] };
  try {
    return { estimate: estimateWaterLost(parsed) };
  } catch (error) {
    if (error instanceof OutOfRange) return { needed: error.problems };
    throw error;
  }
}

/** The figures while one types: low, best and high, how they were come by, and what speaks against them. */
export function WaterLostAnswer({ values }: ExtraProps) {
  const { spec, words } = useScope();
  const { body } = encode(spec.nodes, values, { zone: words.zone, nullable: spec.nullable });
  const answer = answerTo(body['question'] as Record<string, unknown> | undefined);
  return (
    <div class="answer">
      <div role="status">
        {'estimate' in answer ? (
          <>
            <WaterFigures estimate={answer.estimate} />
            {answer.estimate.challenges.length > 0 && <p>{words.t('water-answer.answer-below')}</p>}
          </>
        ) : (
          <>
            <p class="soft">{words.t('water-answer.more')}</p>
            <ul>
              {(answer.needed.length > 0 ? answer.needed : [{ code: 'say-how-it-flowed', params: {} }]).map(
                (needed) => (
                  <li key={needed.code}>{sayQuantityProblem(needed, words)}</li>
                ),
              )}
            </ul>
          </>
        )}
      </div>
    </div>
  );
}
