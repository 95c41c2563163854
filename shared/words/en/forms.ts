import { fields } from './forms/fields.ts';
import { flowTest } from './forms/flowTest.ts';
import { kinds } from './forms/kinds.ts';
import { kit } from './forms/kit.ts';
import { screens } from './forms/screens.ts';
import { tightening } from './forms/tightening.ts';
import { values } from './forms/values.ts';
import { waterLost } from './forms/waterLost.ts';

/** English words: forms. What the crew's forms and the desk share: kinds, choices, steps, fields, screens. */
export const forms = {
  ...kinds,
  ...values,
  ...fields,
  ...flowTest,
  ...kit,
  ...screens,
  ...tightening,
  ...waterLost,
  'position.null-island':
    'Latitude 0 and longitude 0 are a place in the Gulf of Guinea: the device did not know where it was. Use the position again, or describe the place in words.',
} as const;
