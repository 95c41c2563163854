import type { FormSpec } from '../spec.ts';

/** What a clerk says to an objection. It is asked for beside the objection, which fills in which one it is. */
export const objectionAnswerSpec: FormSpec = {
  kind: 'objection-answer',
  nullable: [],
  nodes: [
    { type: 'kept', name: 'objection' },
    {
      type: 'choice',
      name: 'answer',
      words: 'field.objection-answer.answer',
      list: 'objectionAnswer',
      choices: ['answered', 'accepted', 'overruled'],
      required: true,
    },
    {
      type: 'text',
      name: 'reason',
      words: 'field.objection-answer.reason',
      lines: 3,
      required: true,
    },
  ],
  blank: () => ({}),
  occurredAt: () => null,
};
