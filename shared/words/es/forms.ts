import type { forms as english } from '../en/forms.ts';
import { fields } from './forms/fields.ts';
import { flowTest } from './forms/flowTest.ts';
import { kinds } from './forms/kinds.ts';
import { kit } from './forms/kit.ts';
import { screens } from './forms/screens.ts';
import { tightening } from './forms/tightening.ts';
import { values } from './forms/values.ts';
import { waterLost } from './forms/waterLost.ts';

export const forms: Record<keyof typeof english, string> = {
  ...kinds,
  ...values,
  ...fields,
  ...flowTest,
  ...kit,
  ...screens,
  ...tightening,
  ...waterLost,
  'position.null-island':
    'Latitud 0 y longitud 0 es un lugar en el golfo de Guinea: el aparato no sabía dónde estaba. Tome la posición otra vez o describa el lugar con palabras.',
};
