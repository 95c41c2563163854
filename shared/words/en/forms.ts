import { fields } from './forms/fields.ts';
import { kinds } from './forms/kinds.ts';
import { procedure } from './forms/procedure.ts';
import { values } from './forms/values.ts';

/** English words: forms. What the crew's forms and the desk share: kinds, choices, steps, fields, screens. */
export const forms = { ...kinds, ...procedure, ...values, ...fields } as const;
