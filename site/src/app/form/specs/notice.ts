import { outageCauses } from '../../../../../shared/submissions/forms/outage.ts';
import { waitingFor } from '../../../../../shared/submissions/forms/expectedReturn.ts';
import { localMinute } from '../localTime.ts';
import { firstInstant, type FormSpec } from '../spec.ts';
import { dispatchNodes, note } from './parts.ts';

/** Short forms about an outage: marked or dispatch told, another cause than a strike, when it should be back. */

export const noticeSpec: FormSpec = {
  kind: 'out-of-service-notice',
  nullable: ['dispatch'],
  nodes: [
    { type: 'instant', name: 'markedOutOfServiceAt', words: 'field.markedOutOfServiceAt' },
    ...dispatchNodes,
    note,
  ],
  blank: ({ personId }) => ({ 'dispatch.toldByWorkerId': personId }),
  occurredAt: firstInstant('dispatch.at', 'markedOutOfServiceAt'),
};

export const outageSpec: FormSpec = {
  kind: 'outage',
  nullable: ['dispatch'],
  nodes: [
    { type: 'choice', name: 'cause', list: 'outageCause', choices: outageCauses, required: true },
    { type: 'instant', name: 'since', required: true },
    {
      type: 'section',
      id: 'strike.out',
      nodes: [
        { type: 'instant', name: 'markedOutOfServiceAt', words: 'field.markedOutOfServiceAt' },
        ...dispatchNodes,
        { type: 'person', name: 'foundByWorkerId' },
        note,
      ],
    },
  ],
  blank: ({ personId, now, zone }) => ({
    since: localMinute(now, zone),
    'dispatch.toldByWorkerId': personId,
    foundByWorkerId: personId,
  }),
  occurredAt: firstInstant('since'),
};

export const expectedReturnSpec: FormSpec = {
  kind: 'expected-return',
  nullable: [],
  nodes: [
    {
      type: 'when',
      test: ({ _subject: subject }) => subject === 'hydrant',
      nodes: [{ type: 'pick', name: 'outageId', of: 'outage' }],
    },
    { type: 'instant', name: 'expectedAt', ahead: true },
    { type: 'choice', name: 'waitingFor', list: 'waitingFor', choices: waitingFor, required: true },
    note,
  ],
  blank: ({ strike, status }) => {
    const others = (status?.open ?? []).filter(({ cause }) => cause !== 'strike');
    return {
      _subject: strike ? 'strike' : 'hydrant',
      outageId: !strike && others.length === 1 ? (others[0]?.outageId ?? '') : '',
    };
  },
  steering: ({ outageId }) => ({ _subject: outageId === null ? 'strike' : 'hydrant' }),
  occurredAt: () => null,
};
