import { checksFor } from '../../../../../shared/damage/checks.ts';
import type { Findings } from '../../../../../shared/damage/finding.ts';
import type { Ranked } from '../../../../../shared/damage/judge.ts';
import type { Reason } from '../../../../../shared/damage/rule.ts';
import { expectedWork } from '../../../../../shared/damage/work.ts';
import { QUESTION_BELOW_PSI } from '../../../../../shared/shutMain/pressure.ts';
import type { BodyOf } from '../../../../../shared/submissions/submission.ts';
import { formatNumber, formatQuantity } from '../../../../../shared/units/format.ts';
import { useWords } from '../../core/words.ts';
import { sayFindings } from './sayFinding.ts';

export type Model = BodyOf<'hydrant-model'>;

interface Props {
  readonly ranked: Ranked;
  readonly findings: Findings;
  readonly model: Model | null;
}

/** One answer: why, what speaks against it, what makes sure of it, and what it takes. */
export function Answer({ ranked, findings, model }: Props) {
  const words = useWords();
  return (
    <>
      <h4>{words.t('damage.because')}</h4>
      <Reasons reasons={ranked.reasons} />
      {ranked.against.length > 0 && (
        <>
          <h4>{words.t('damage.against')}</h4>
          <Reasons reasons={ranked.against} />
        </>
      )}
      <h4>{words.t('damage.sure')}</h4>
      <ul>
        {checksFor(ranked.damage, findings).map((check) => (
          <li key={check}>{words.t(`damage.check.${check}`)}</li>
        ))}
      </ul>
      <h4>{words.t('damage.work')}</h4>
      <Work ranked={ranked} findings={findings} model={model} />
    </>
  );
}

/** Each with the findings that it rests on, so that whoever knows better sees which record to correct. */
function Reasons({ reasons }: { readonly reasons: readonly Reason[] }) {
  const words = useWords();
  return (
    <ul>
      {reasons.map(({ rule, findings }) => (
        <li key={rule}>
          {words.t(`damage.rule.${rule}`)}
          <span class="rests-on">{sayFindings(findings, words)}</span>
        </li>
      ))}
    </ul>
  );
}

function Work({ ranked, findings, model }: Props) {
  const words = useWords();
  const { crew, needs, machines, kit, kitMissing, parts } = expectedWork(ranked.damage, findings, model);
  const [least, most] = crew;
  const limit = formatQuantity(QUESTION_BELOW_PSI, 'psi', words);
  const listed = (codes: readonly string[], area: string): string =>
    codes.map((code) => words.t(`damage.${area}.${code}`)).join(', ');
  const kitSaid = kit
    .map(({ partNumber, description, quantity }) =>
      words.t('damage.work.kit-item', {
        quantity: formatNumber(quantity, words.locale, 0),
        partNumber,
        description,
      }),
    )
    .join('; ');
  return (
    <>
      <ul>
        {needs.map((need) => (
          <li key={need}>{words.t(`damage.need.${need}`, { limit })}</li>
        ))}
      </ul>
      <dl class="said">
        <div>
          <dt>{words.t('damage.work.people')}</dt>
          <dd>{words.t(least === most ? 'damage.work.crew-same' : 'damage.work.crew', { least, most })}</dd>
        </div>
        <div>
          <dt>{words.t('damage.work.machines')}</dt>
          <dd>{listed(machines, 'machine')}</dd>
        </div>
        <div>
          <dt>{words.t('damage.work.parts')}</dt>
          <dd>
            {kit.length > 0 && (
              <p>{words.t('damage.work.kit', { model: model?.name ?? '', list: kitSaid })}</p>
            )}
            {kitMissing && <p>{words.t(`damage.work.${kitMissing}`)}</p>}
            {parts.length > 0 && <p>{listed(parts, 'part')}</p>}
          </dd>
        </div>
      </dl>
    </>
  );
}
