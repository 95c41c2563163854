import { atWork } from '../../../../shared/words/en/atWork.ts';
import { common } from '../../../../shared/words/en/common.ts';
import { damage } from '../../../../shared/words/en/damage.ts';
import { dispatch } from '../../../../shared/words/en/dispatch.ts';
import { evidence } from '../../../../shared/words/en/evidence.ts';
import { forms } from '../../../../shared/words/en/forms.ts';
import { hydraulics } from '../../../../shared/words/en/hydraulics.ts';
import { inventory } from '../../../../shared/words/en/inventory.ts';
import { offline } from '../../../../shared/words/en/offline.ts';
import { problems } from '../../../../shared/words/en/problems.ts';
import { procedure } from '../../../../shared/words/en/procedure.ts';
import { stock } from '../../../../shared/words/en/stock.ts';

/** What a crew's first screens say: English. Everything else follows on its own. */
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
