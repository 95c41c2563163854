import { compared } from '../../../../../shared/damage/crew.ts';
import { readFindings } from '../../../../../shared/damage/findings.ts';
import { judgeDamage } from '../../../../../shared/damage/judge.ts';
import { isDamageClass } from '../../../../../shared/strikes/damage.ts';
import { effectiveFacts } from '../../../../../shared/submissions/effective.ts';
import { useModels } from '../../core/records.ts';
import { JudgementView } from '../../screens/damage/JudgementView.tsx';
import { textOf } from '../nodes.ts';
import type { ExtraProps } from './props.ts';
import { useScope } from './scope.ts';

/** Beside the choice of the damage: what the rules make of what was found. The crew decides. */
export function DamageHint({ values, change }: ExtraProps) {
  const { job, words } = useScope();
  const models = useModels();
  const { facts } = effectiveFacts([...job.history, ...job.ofHydrant]);
  const found = readFindings(facts, job.hydrant?.type ?? 'unknown');
  const judgement = judgeDamage(found);
  const model = models.value?.models.find(({ modelId }) => modelId === job.hydrant?.modelId) ?? null;
  const chosen = textOf(values['damage']);
  const [first] = judgement.ranked;
  const differs = isDamageClass(chosen) && compared(chosen, judgement) === 'other';
  return (
    <div class="answer">
      <h3>{words.t('damage.form.title')}</h3>
      {differs && (
        <p role="status">{words.t('damage.form.yours', { yours: words.t(`value.damage.${chosen}`) })}</p>
      )}
      <JudgementView found={found} judgement={judgement} model={model} short />
      {first && !judgement.cannotTell && chosen === '' && (
        <p>
          <button type="button" class="plain" onClick={() => change({ ...values, damage: first.damage })}>
            {words.t('damage.form.take', { what: words.t(`value.damage.${first.damage}`) })}
          </button>
        </p>
      )}
    </div>
  );
}
