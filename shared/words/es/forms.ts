import type { forms as english } from '../en/forms.ts';
import { fields } from './forms/fields.ts';
import { flowTest } from './forms/flowTest.ts';
import { kinds } from './forms/kinds.ts';
import { kit } from './forms/kit.ts';
import { procedure } from './forms/procedure.ts';
import { screens } from './forms/screens.ts';
import { tightening } from './forms/tightening.ts';
import { values } from './forms/values.ts';
import { waterLost } from './forms/waterLost.ts';

export const forms: Record<keyof typeof english, string> = {
  ...kinds,
  ...procedure,
  ...values,
  ...fields,
  ...flowTest,
  ...kit,
  ...screens,
  ...tightening,
  ...waterLost,
};
