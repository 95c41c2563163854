import { RATING_RESIDUAL_PSI } from '../../../../../shared/hydraulics/ratingResidual.ts';
import type { List, Values } from '../nodes.ts';
import { localMinute } from '../localTime.ts';
import { firstInstant, type FormSpec } from '../spec.ts';
import { answered, note, photos } from './parts.ts';

/** The common hose nozzle, 2½ in, rounded: a start that the crew changes to what is there. */
const hoseNozzle: Values = { kind: 'hose', diameterIn: { text: '2.5', unit: 'in' }, coefficient: '0.9' };

const outlets: List = {
  type: 'list',
  name: 'outlets',
  atMost: 6,
  blank: hoseNozzle,
  item: [
    { type: 'choice', name: 'kind', list: 'outlet', choices: ['hose', 'pumper'], required: true },
    { type: 'quantity', name: 'diameterIn', unit: 'in', required: true },
    { type: 'coefficient', name: 'coefficient', required: true },
    { type: 'quantity', name: 'pitotPsi', unit: 'psi', required: true },
  ],
};

export const flowTestSpec: FormSpec = {
  kind: 'flow-test',
  nullable: [],
  nodes: [
    {
      type: 'section',
      id: 'flow-test.rated',
      nodes: [
        { type: 'hydrant', name: 'residualHydrantId', required: true },
        { type: 'quantity', name: 'staticPsi', unit: 'psi', required: true },
        { type: 'quantity', name: 'residualPsi', unit: 'psi', required: true },
      ],
    },
    {
      type: 'section',
      id: 'flow-test.flow',
      nodes: [
        { type: 'choice', name: '_method', list: 'flowMethod', choices: ['pitot', 'meter'], required: true },
        {
          type: 'when',
          test: answered('_method', 'pitot'),
          nodes: [
            {
              type: 'list',
              name: 'flowHydrants',
              atMost: 6,
              blank: { hydrantId: '', outlets: [hoseNozzle] },
              item: [{ type: 'hydrant', name: 'hydrantId', required: true }, outlets],
            },
          ],
        },
        {
          type: 'when',
          test: answered('_method', 'meter'),
          nodes: [{ type: 'quantity', name: 'measuredFlowGpm', unit: 'gpm' }],
        },
        { type: 'quantity', name: 'targetResidualPsi', unit: 'psi', required: true },
      ],
    },
    {
      type: 'section',
      id: 'flow-test.who',
      nodes: [
        { type: 'instant', name: 'testedAt', required: true },
        { type: 'people', name: 'testedByWorkerIds', required: true },
        {
          type: 'choice',
          name: 'purpose',
          list: 'purpose',
          choices: ['after-repair', 'routine', 'request', 'other'],
          required: true,
        },
        { type: 'number', name: 'flowedMinutes' },
        note,
      ],
    },
    {
      type: 'section',
      id: 'flow-test.gauges',
      folded: true,
      nodes: [
        {
          type: 'list',
          name: 'gauges',
          atMost: 10,
          blank: {},
          item: [
            { type: 'text', name: 'gaugeId', keypad: 'code', required: true },
            { type: 'quantity', name: 'rangePsi', unit: 'psi', required: true },
            { type: 'date', name: 'calibratedOn' },
          ],
        },
      ],
    },
    { type: 'section', id: 'photos', nodes: [photos(20)] },
  ],
  blank: ({ hydrantId, strike, personId, now, zone }) => ({
    residualHydrantId: hydrantId ?? strike?.hydrantId ?? '',
    _method: 'pitot',
    flowHydrants: [{ hydrantId: '', outlets: [hoseNozzle] }],
    targetResidualPsi: { text: String(RATING_RESIDUAL_PSI), unit: 'psi' },
    testedAt: localMinute(now, zone),
    testedByWorkerIds: [personId],
    purpose: strike ? 'after-repair' : '',
  }),
  steering: ({ measuredFlowGpm }) => ({ _method: measuredFlowGpm === null ? 'pitot' : 'meter' }),
  occurredAt: firstInstant('testedAt'),
};
