import type { forms as english } from '../en/forms.ts';
import { kinds } from './forms/kinds.ts';
import { fields } from './forms/fields.ts';
import { procedure } from './forms/procedure.ts';
import { values } from './forms/values.ts';

export const forms: Record<keyof typeof english, string> = { ...kinds, ...procedure, ...values, ...fields };
