import { atWork } from '../../../../shared/words/es/atWork.ts';
import { common } from '../../../../shared/words/es/common.ts';
import { damage } from '../../../../shared/words/es/damage.ts';
import { dispatch } from '../../../../shared/words/es/dispatch.ts';
import { evidence } from '../../../../shared/words/es/evidence.ts';
import { forms } from '../../../../shared/words/es/forms.ts';
import { hydraulics } from '../../../../shared/words/es/hydraulics.ts';
import { inventory } from '../../../../shared/words/es/inventory.ts';
import { offline } from '../../../../shared/words/es/offline.ts';
import { problems } from '../../../../shared/words/es/problems.ts';
import { procedure } from '../../../../shared/words/es/procedure.ts';
import { stock } from '../../../../shared/words/es/stock.ts';

/** What a crew's first screens say: Spanish. Everything else follows on its own. */
export const words: Record<string, string> = {
  ...common,
  ...problems,
  ...forms,
  ...procedure,
  ...offline,
  ...inventory,
  ...hydraulics,
  ...damage,
  ...stock,
  ...evidence,
  ...dispatch,
  ...atWork,
};
