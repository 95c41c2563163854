import type { Found } from '../../../../../shared/damage/findings.ts';
import type { Judgement } from '../../../../../shared/damage/judge.ts';
import { findingWords } from '../../../../../shared/damage/words.ts';
import { useWords } from '../../core/words.ts';
import { Answer, type Model } from './Answer.tsx';
import { sayFrom } from './sayFinding.ts';

interface Props {
  readonly found: Found;
  readonly judgement: Judgement;
  readonly model: Model | null;
  /** Everything folded but the answer itself: beside a field that is being filled in. */
  readonly short?: boolean;
}

/** What the rules make of what was found: the answer or that there is none yet, where to look, and why. */
export function JudgementView({ found, judgement, model, short = false }: Props) {
  const words = useWords();
  const { ranked, cannotTell, look } = judgement;
  const note = typeNote(found.findings.type?.value);
  return (
    <div class="judgement">
      <Headline judgement={judgement} />
      {short && ranked[0] && (
        <ul>
          {ranked[0].reasons.map(({ rule }) => (
            <li key={rule}>{words.t(`damage.rule.${rule}`)}</li>
          ))}
        </ul>
      )}
      {look.length > 0 && (
        <details open={!short && cannotTell}>
          <summary>{words.t('damage.look')}</summary>
          <ul>
            {look.map((key) => (
              <li key={key}>{words.t(`damage.look.${key}`)}</li>
            ))}
          </ul>
        </details>
      )}
      {ranked.map((each, index) => (
        <details key={each.damage} open={!short && !cannotTell && index === 0}>
          <summary>
            {words.t(`value.damage.${each.damage}`)}{' '}
            <span class="tag">{words.t(`damage.level.${each.level}`)}</span>
          </summary>
          <Answer ranked={each} findings={found.findings} model={model} />
        </details>
      ))}
      {note && <p>{words.t(note)}</p>}
      <Disagree judgement={judgement} />
      <p class="small soft">{words.t('damage.decides')}</p>
    </div>
  );
}

function Headline({ judgement: { ranked, cannotTell, atLeast, look } }: { readonly judgement: Judgement }) {
  const words = useWords();
  const [first] = ranked;
  const name = (damage: string): string => words.t(`value.damage.${damage}`);
  if (cannotTell || !first)
    return (
      <>
        <p class="answer-line">{words.t('damage.cannot-tell')}</p>
        <p>
          {ranked.length > 0
            ? words.t('damage.signs', { what: ranked.map(({ damage }) => name(damage)).join('; ') })
            : words.t(look.length > 0 ? 'damage.nothing-found' : 'damage.all-sound')}
        </p>
      </>
    );
  const key = first.level === 'likely' ? 'likely' : atLeast ? 'at-least' : 'seen';
  return (
    <>
      <p class="answer-line">{words.t(`damage.answer.${key}`, { what: name(first.damage) })}</p>
      {atLeast && <p>{words.t('damage.answer.at-least-more')}</p>}
    </>
  );
}

function typeNote(type: string | undefined): string | null {
  switch (type) {
    case undefined:
      return 'damage.type-unknown';
    case 'wet-barrel':
      return 'damage.wet';
    case 'dry-barrel':
      return null;
    default:
      return 'damage.no-breakaway';
  }
}

function Disagree({ judgement: { disagree } }: { readonly judgement: Judgement }) {
  const words = useWords();
  if (disagree.length === 0) return null;
  return (
    <div class="warning">
      <p>
        <strong>{words.t('damage.disagree')}</strong>
      </p>
      <ul>
        {disagree.map(({ stands, otherwise }, index) => (
          <li key={index}>
            {words.t('damage.disagree.pair', {
              thing: words.t(findingWords(stands).label),
              stands: words.t(findingWords(stands).value),
              from: sayFrom(stands, words),
              otherwise: words.t(findingWords(otherwise).value),
              otherFrom: sayFrom(otherwise, words),
            })}
          </li>
        ))}
      </ul>
    </div>
  );
}
