import {
  flowTestCautions,
  repairCautions,
  returnCautions,
  strikeCautions,
  valveCautions,
  waterLostCautions,
  type Caution,
} from '../../../../shared/hydraulics/cautions.ts';
import { useWords } from '../core/words.ts';

/** Cautions by kind of work, where they are needed: before the first field. They hold nobody up. */
const cautions: Readonly<Record<string, readonly Caution[]>> = {
  strike: strikeCautions,
  outage: strikeCautions,
  'valve-operation': valveCautions,
  repair: repairCautions,
  'flow-test': flowTestCautions,
  'return-to-service': returnCautions,
  'water-lost': waterLostCautions,
};

/** A short line each; one touch opens what is behind them. */
export function Cautions({ kind }: { readonly kind: string }) {
  const words = useWords();
  const listed = cautions[kind];
  if (!listed) return null;
  return (
    <aside class="cautions" aria-label={words.t('caution.title')}>
      <ul class="short">
        {listed.map((caution) => (
          <li key={caution}>{words.t(`caution.short.${caution}`)}</li>
        ))}
      </ul>
      <details>
        <summary>{words.t('caution.more')}</summary>
        <ul>
          {listed.map((caution) => (
            <li key={caution}>{words.t(`hydraulics.caution.${caution}`)}</li>
          ))}
        </ul>
      </details>
    </aside>
  );
}
