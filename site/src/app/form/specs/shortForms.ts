import { inspectionFindings } from '../../../../../shared/submissions/forms/inspection.ts';
import { localMinute } from '../localTime.ts';
import type { Values } from '../nodes.ts';
import { firstInstant, type FormSpec } from '../spec.ts';
import { answered, note, photos } from './parts.ts';
import { laterParts } from './seenParts.ts';

/** Short forms about a hydrant or its valves, and the joining of two reports. */

/** A hydrant's own isolation valve shuts nothing but the hydrant; of another one that is closed it is asked. */
const shutsAMain = ({ action, valve }: Values): 'asked' | 'not-asked' =>
  action === 'closed' && valve !== 'isolation' ? 'asked' : 'not-asked';

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
    {
      type: 'when',
      test: (values) => shutsAMain(values) === 'asked',
      nodes: [{ type: 'choice', name: '_mainShut', list: 'seen', choices: ['yes', 'no'] }],
    },
    {
      type: 'when',
      test: (values) => shutsAMain(values) === 'asked' && values['_mainShut'] === 'yes',
      absent: true,
      nodes: [
        {
          type: 'section',
          id: 'valve.main-shut',
          nodes: [
            { type: 'number', name: 'mainShut.customers', whole: true },
            { type: 'text', name: 'mainShut.addresses', lines: 4 },
            {
              type: 'choice',
              name: 'mainShut.under20Psi',
              list: 'seen',
              choices: ['yes', 'no', 'unknown'],
              whenBlank: 'unknown',
            },
            { type: 'quantity', name: 'mainShut.lowestPsi', unit: 'psi' },
          ],
        },
      ],
    },
    { type: 'number', name: 'turns' },
    note,
  ],
  // A valve on the main shuts the main; anybody who knows better says no.
  follow: (values) =>
    shutsAMain(values) === 'asked' && values['valve'] === 'main-line' && !values['_mainShut']
      ? { ...values, _mainShut: 'yes' }
      : values,
  complete: (body) => {
    const shut = body['mainShut'] as { readonly addresses?: unknown } | undefined;
    if (typeof shut?.addresses !== 'string') return body;
    const addressLines = shut.addresses.split('\n').filter((line) => line.trim() !== '').length;
    return { ...body, mainShut: { ...shut, addressLines } };
  },
  steering: ({ mainShut }) => ({ _mainShut: mainShut ? 'yes' : 'no' }),
  blank: ({ hydrant, personId, now, zone }) => ({
    valveId: hydrant?.isolationValveId ?? '',
    valve: 'isolation',
    at: localMinute(now, zone),
    byWorkerId: personId,
    waterShut: 'unknown',
  }),
  occurredAt: firstInstant('at'),
};

const saysSomething = (found: unknown): boolean =>
  typeof found === 'object' && found !== null && Object.values(found).some((said) => said !== undefined);

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
    {
      type: 'when',
      test: ({ _struck }) => _struck === 'yes',
      absent: true,
      nodes: [{ type: 'section', id: 'inspection.found', nodes: laterParts }],
    },
    { type: 'instant', name: 'inspectedAt', words: 'field.when', required: true },
    { type: 'person', name: 'byWorkerId', words: 'field.byWorkerId', required: true },
    note,
    { type: 'section', id: 'photos', nodes: [photos(20)] },
  ],
  // Of a hydrant that was struck a later look may say more of the damage. The strike's page says so with no signal too.
  blank: ({ status, asked, personId, now, zone }) => ({
    _struck: asked['struck'] === 'yes' || status?.open.some(({ cause }) => cause === 'strike') ? 'yes' : 'no',
    inspectedAt: localMinute(now, zone),
    byWorkerId: personId,
  }),
  complete: ({ found, ...body }) => (saysSomething(found) ? { ...body, found } : body),
  steering: ({ found }) => ({ _struck: found ? 'yes' : 'no' }),
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
    { type: 'instant', name: 'from', ahead: true, required: true },
    { type: 'instant', name: 'to', ahead: true, required: true },
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
