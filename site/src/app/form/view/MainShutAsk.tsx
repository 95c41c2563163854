import { QUESTION_BELOW_PSI } from '../../../../../shared/shutMain/pressure.ts';
import { formatQuantity } from '../../../../../shared/units/format.ts';
import { NetworkLink } from '../../screens/NetworkLink.tsx';
import { textOf } from '../nodes.ts';
import type { ExtraProps } from './props.ts';
import { useScope } from './scope.ts';

/** While a closing is typed: the question that follows from the pressure, and where the network model helps. */
export function MainShutAsk({ values }: ExtraProps) {
  const { job, words } = useScope();
  const under = textOf(values['mainShut.under20Psi']);
  const limit = formatQuantity(QUESTION_BELOW_PSI, 'psi', words);
  const key = under === 'yes' ? 'ask' : under === 'no' ? 'not-needed' : 'ask-unknown';
  return (
    <div class="answer">
      <p role="status">{words.t(`shut-main.${key}`, { limit })}</p>
      {under !== 'no' && <p class="small soft">{words.t('shut-main.rule')}</p>}
      {job.hydrant && <NetworkLink hydrantId={job.hydrantId} {...strikeOf(job.strike?.strikeId)} />}
    </div>
  );
}

const strikeOf = (strikeId: string | undefined): { readonly strikeId?: string } =>
  strikeId === undefined ? {} : { strikeId };
