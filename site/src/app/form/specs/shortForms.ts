import { inspectionFindings } from '../../../../../shared/submissions/forms/inspection.ts';
import { localMinute } from '../localTime.ts';
import { firstInstant, type FormSpec } from '../spec.ts';
import { answered, note, photos } from './parts.ts';

/** Short forms about a hydrant or its valves, and the joining of two reports. */

export const valveOperationSpec: FormSpec = {
  kind: 'valve-operation',
  nullable: [],
  nodes: [
    {
      type: 'choice',
      name: 'action',
      list: 'valveAction',
      choices: ['closed', 'reopened'],
      required: true,
    },
    { type: 'text', name: 'valveId', words: 'field.valveId', keypad: 'code', required: true },
    {
      type: 'choice',
      name: 'valve',
      list: 'valve',
      choices: ['isolation', 'main-line', 'other'],
      required: true,
    },
    { type: 'instant', name: 'at', words: 'field.when', required: true },
    { type: 'person', name: 'byWorkerId', words: 'field.byWorkerId', required: true },
    {
      type: 'when',
      test: answered('action', 'closed'),
      absent: true,
      nodes: [
        {
          type: 'choice',
          name: 'waterShut',
          list: 'seen',
          choices: ['yes', 'no', 'unknown'],
          whenBlank: 'unknown',
        },
      ],
    },
    {
      type: 'when',
      test: ({ action }) => action !== 'closed',
      absent: true,
      nodes: [{ type: 'kept', name: 'waterShut' }],
    },
    { type: 'number', name: 'turns' },
    note,
  ],
  blank: ({ hydrant, personId, now, zone }) => ({
    valveId: hydrant?.isolationValveId ?? '',
    valve: 'isolation',
    at: localMinute(now, zone),
    byWorkerId: personId,
    waterShut: 'unknown',
  }),
  occurredAt: firstInstant('at'),
};

export const inspectionSpec: FormSpec = {
  kind: 'inspection',
  nullable: [],
  nodes: [
    {
      type: 'choice',
      name: 'result',
      list: 'inspectionResult',
      choices: ['sound', 'sound-with-findings', 'not-usable'],
      required: true,
    },
    {
      type: 'when',
      test: ({ result }) => result !== 'sound',
      nodes: [{ type: 'choices', name: 'findings', list: 'finding', choices: inspectionFindings }],
    },
    { type: 'instant', name: 'inspectedAt', words: 'field.when', required: true },
    { type: 'person', name: 'byWorkerId', words: 'field.byWorkerId', required: true },
    note,
    { type: 'section', id: 'photos', nodes: [photos(20)] },
  ],
  blank: ({ personId, now, zone }) => ({ inspectedAt: localMinute(now, zone), byWorkerId: personId }),
  occurredAt: firstInstant('inspectedAt'),
};

export const plannedWorkSpec: FormSpec = {
  kind: 'planned-work',
  nullable: [],
  nodes: [
    {
      type: 'choice',
      name: 'work',
      list: 'plannedWork',
      choices: [
        'repair',
        'replacement',
        'flow-test',
        'flushing',
        'painting',
        'valve-work',
        'main-work',
        'other',
      ],
      required: true,
    },
    { type: 'instant', name: 'from', required: true },
    { type: 'instant', name: 'to', required: true },
    { type: 'yes-no', name: 'takesOutOfService', required: true },
    note,
  ],
  blank: () => ({}),
  occurredAt: () => null,
};

export const linkSpec: FormSpec = {
  kind: 'link',
  nullable: [],
  nodes: [
    { type: 'pick', name: 'sameAsStrikeId', of: 'strike', required: true },
    {
      type: 'choice',
      name: 'reason',
      list: 'linkReason',
      choices: ['two-reports', 'typed-before-strike', 'other'],
      required: true,
    },
    note,
  ],
  blank: () => ({}),
  occurredAt: () => null,
};
