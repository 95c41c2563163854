import { diameterBases } from '../../../../../shared/hydraulics/flowReadings.ts';
import { gaugeReads } from '../../../../../shared/hydraulics/testGauge.ts';
import { flowTestSettings } from '../../core/utility.ts';
import type { Leaf, List, Values } from '../nodes.ts';
import { localMinute } from '../localTime.ts';
import { firstInstant, type FormSpec } from '../spec.ts';
import { answered, note, photos } from './parts.ts';

/**
 * The common hose nozzle, 2½ in by its drawing: a start that the crew changes to what is there. No shape is set: a finger
 * has to have been inside.
 */
const hoseNozzle: Values = {
  kind: 'hose',
  diameterIn: { text: '2.5', unit: 'in' },
  diameterBasis: 'nominal',
};

const pitot: Leaf = { type: 'quantity', name: 'pitotPsi', unit: 'psi', required: true };
const gaugeId: Leaf = { type: 'text', name: 'gaugeId', keypad: 'code', optional: true };
const accuracy: Leaf = { type: 'number', name: 'accuracyFraction', percent: true, optional: true };

const outlets: List = {
  type: 'list',
  name: 'outlets',
  atMost: 6,
  blank: hoseNozzle,
  item: [
    {
      type: 'choice',
      name: 'kind',
      list: 'outletReading',
      choices: ['hose', 'pumper', 'diffuser', 'meter'],
      required: true,
    },
    {
      type: 'when',
      test: answered('kind', 'hose', 'pumper'),
      absent: true,
      nodes: [
        { type: 'quantity', name: 'diameterIn', unit: 'in', required: true },
        {
          type: 'choice',
          name: 'diameterBasis',
          list: 'diameterBasis',
          choices: diameterBases,
          optional: true,
        },
        { type: 'kept', name: 'shape', optional: true },
        { type: 'coefficient', name: 'coefficient', shapeTo: 'shape', required: true },
        pitot,
        gaugeId,
      ],
    },
    {
      type: 'when',
      test: answered('kind', 'diffuser'),
      absent: true,
      nodes: [
        { type: 'diffuser-constant', name: 'kGpmPerSqrtPsi', required: true },
        pitot,
        accuracy,
        gaugeId,
      ],
    },
    {
      type: 'when',
      test: answered('kind', 'meter'),
      absent: true,
      nodes: [{ type: 'quantity', name: 'flowGpm', unit: 'gpm', required: true }, accuracy],
    },
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
            { type: 'choices', name: 'reads', list: 'gaugeReads', choices: gaugeReads, optional: true },
            { type: 'quantity', name: 'rangePsi', unit: 'psi', required: true },
            accuracy,
            { type: 'quantity', name: 'resolutionPsi', unit: 'psi', optional: true },
            { type: 'date', name: 'calibratedOn' },
          ],
        },
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
    { type: 'section', id: 'photos', nodes: [photos(20)] },
  ],
  blank: ({ hydrantId, strike, personId, now, zone }) => ({
    residualHydrantId: hydrantId ?? strike?.hydrantId ?? '',
    _method: 'pitot',
    flowHydrants: [{ hydrantId: '', outlets: [hoseNozzle] }],
    targetResidualPsi: { text: String(flowTestSettings().ratingResidualPsi), unit: 'psi' },
    testedAt: localMinute(now, zone),
    testedByWorkerIds: [personId],
    purpose: strike ? 'after-repair' : '',
  }),
  steering: ({ measuredFlowGpm }) => ({ _method: measuredFlowGpm === null ? 'pitot' : 'meter' }),
  occurredAt: firstInstant('testedAt'),
};
