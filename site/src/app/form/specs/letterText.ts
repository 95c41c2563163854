import type { FormSpec } from '../spec.ts';

/** A letter as a clerk worded it. It is asked for beside its preview, which fills in which letter it is. */
export const letterTextSpec: FormSpec = {
  kind: 'letter-text',
  nullable: [],
  nodes: [
    { type: 'kept', name: 'letter' },
    { type: 'text', name: 'text', words: 'letter.text-label', lines: 16, required: true },
  ],
  blank: () => ({}),
  occurredAt: () => null,
};
