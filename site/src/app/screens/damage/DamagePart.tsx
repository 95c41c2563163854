import { compared, crewJudgement } from '../../../../../shared/damage/crew.ts';
import { readFindings } from '../../../../../shared/damage/findings.ts';
import { judgeDamage } from '../../../../../shared/damage/judge.ts';
import { effectiveFacts, ofKind } from '../../../../../shared/submissions/effective.ts';
import { useObservable } from '../../core/observable.ts';
import { nameOf, people } from '../../core/people.ts';
import { useModels } from '../../core/records.ts';
import type { StrikeAnswer } from '../../core/strikeAnswer.ts';
import { to } from '../../core/router.ts';
import { session } from '../../core/session.ts';
import { useWords } from '../../core/words.ts';
import { mayWrite } from '../may.ts';
import { JudgementView } from './JudgementView.tsx';

/** How far the damage of a strike goes: what the crew says, by name, and what the rules say; both, where they differ. */
export function DamagePart({
  answer: { strike, history, ofHydrant = [], hydrant },
}: {
  readonly answer: StrikeAnswer;
}) {
  const words = useWords();
  useObservable(people);
  const current = useObservable(session);
  const models = useModels();
  const { facts } = effectiveFacts([...history.map(({ recorded }) => recorded), ...ofHydrant]);
  const found = readFindings(facts, hydrant?.type ?? 'unknown');
  const judgement = judgeDamage(found);
  const crew = crewJudgement(facts);
  const [reported] = ofKind(facts, 'strike');
  const report =
    reported && (reported.corrections.at(-1)?.submission.submissionId ?? reported.fact.submissionId);
  const model = models.value?.models.find(({ modelId }) => modelId === hydrant?.modelId) ?? null;
  return (
    <>
      {crew ? (
        <p>
          <strong>{words.t('damage.crew.says', { what: words.t(`value.damage.${crew.damage}`) })}</strong>{' '}
          {words.t('damage.crew.by', { who: nameOf(crew.personId), when: words.when(crew.at) })}{' '}
          {words.t(`damage.crew.${compared(crew.damage, judgement)}`)}
        </p>
      ) : (
        <p>{words.t('damage.crew.none')}</p>
      )}
      <h3>{words.t('damage.by-rules')}</h3>
      <JudgementView found={found} judgement={judgement} model={model} />
      {report && judgement.look.length > 0 && mayWrite(current, 'strike') && (
        <p class="actions">
          <a class="button" href={to(['correct', 'strike', strike.strikeId, report])}>
            {words.t('damage.look.do')}
          </a>
          {strike.hydrantId !== null && mayWrite(current, 'inspection') && (
            <a class="button" href={to(['new', 'inspection'], { hydrant: strike.hydrantId, struck: 'yes' })}>
              {words.t('damage.look.inspect')}
            </a>
          )}
        </p>
      )}
    </>
  );
}
