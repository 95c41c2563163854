import { hazards } from '../../../../../shared/submissions/forms/strike.ts';
import { textOf } from '../nodes.ts';
import { firstInstant, type FormSpec } from '../spec.ts';
import { answered, dispatchNodes, note, photos, seen } from './parts.ts';

/**
 * The strike report. What puts the hydrant out of service stands first and fits one screen after another; whatever a
 * crew cannot know yet is folded below and asked for nowhere.
 */
export const strikeSpec: FormSpec = {
  kind: 'strike',
  nullable: ['found', 'dispatch'],
  nodes: [
    {
      type: 'section',
      id: 'strike.which',
      nodes: [{ type: 'hydrant', name: 'hydrantId' }],
    },
    {
      type: 'when',
      test: (values) => textOf(values['hydrantId']) === '',
      nodes: [
        {
          type: 'section',
          id: 'strike.where',
          folded: true,
          nodes: [
            { type: 'position', name: 'position' },
            { type: 'text', name: 'placeDescription' },
          ],
        },
      ],
    },
    {
      type: 'section',
      id: 'strike.found',
      nodes: [
        {
          type: 'choice',
          name: 'found.flow',
          list: 'flow',
          choices: ['none', 'leak', 'jet', 'full-bore', 'unknown'],
          whenBlank: 'unknown',
        },
        {
          type: 'when',
          test: answered('found.flow', 'leak', 'jet', 'full-bore'),
          nodes: [
            { type: 'quantity', name: 'found.jetHeightIn', unit: 'in', typedIn: 'ft' },
            { type: 'quantity', name: 'found.throwDistanceIn', unit: 'in', typedIn: 'ft' },
            { type: 'quantity', name: 'found.openingDiameterIn', unit: 'in' },
          ],
        },
        {
          type: 'choice',
          name: 'found.isolationValve',
          list: 'isolationValve',
          choices: ['holds', 'does-not-hold', 'not-tried', 'none-fitted'],
          whenBlank: 'not-tried',
        },
        { type: 'choices', name: 'hazards', list: 'hazard', choices: hazards },
        {
          type: 'when',
          test: ({ hazards: ticked }) => Array.isArray(ticked) && ticked.length > 0,
          nodes: [{ type: 'text', name: 'hazardNote', lines: 2 }],
        },
      ],
    },
    {
      type: 'section',
      id: 'strike.out',
      nodes: [
        { type: 'instant', name: 'waterShutAt' },
        { type: 'instant', name: 'markedOutOfServiceAt', words: 'field.markedOutOfServiceAt' },
        ...dispatchNodes,
      ],
    },
    { type: 'section', id: 'photos', nodes: [photos(60)] },
    {
      type: 'section',
      id: 'strike.damage',
      folded: true,
      nodes: [
        {
          type: 'choice',
          name: 'found.barrelStands',
          list: 'barrelStands',
          choices: ['upright', 'leans', 'out-of-place', 'unknown'],
          optional: true,
        },
        {
          type: 'choice',
          name: 'found.ground',
          list: 'ground',
          choices: ['firm', 'washed-out', 'water-rising', 'unknown'],
          optional: true,
        },
        seen('found.breakawayFlangeParted'),
        seen('found.stemCouplingParted'),
        {
          type: 'choice',
          name: 'found.nozzleSection',
          list: 'soundness',
          choices: ['sound', 'damaged', 'unknown'],
          whenBlank: 'unknown',
        },
        {
          type: 'choice',
          name: 'found.lowerBarrel',
          list: 'soundness',
          choices: ['sound', 'damaged', 'unknown'],
          whenBlank: 'unknown',
        },
        {
          type: 'choice',
          name: 'found.belowGrade',
          list: 'belowGrade',
          choices: ['no-sign', 'suspected', 'found', 'unknown'],
          whenBlank: 'unknown',
        },
        {
          type: 'choice',
          name: 'found.mainValve',
          list: 'mainValve',
          choices: ['holds', 'does-not-hold', 'unknown'],
          whenBlank: 'unknown',
        },
        {
          type: 'choice',
          name: 'found.checkValve',
          list: 'checkValve',
          choices: ['holds', 'does-not-hold', 'none-fitted', 'unknown'],
          optional: true,
        },
        {
          type: 'choice',
          name: 'found.main',
          list: 'belowGrade',
          choices: ['no-sign', 'suspected', 'found', 'unknown'],
          optional: true,
        },
      ],
    },
    {
      type: 'section',
      id: 'strike.times',
      folded: true,
      nodes: [
        { type: 'instant', name: 'struckAt' },
        {
          type: 'choice',
          name: 'struckAtBasis',
          list: 'struckAtBasis',
          choices: ['witnessed', 'reported', 'bounded', 'unknown'],
          whenBlank: 'unknown',
        },
        { type: 'instant', name: 'lastSeenSoundAt' },
        { type: 'instant', name: 'calledOutAt' },
        { type: 'instant', name: 'arrivedAt' },
        {
          type: 'choice',
          name: 'reportedBy.source',
          list: 'reportSource',
          choices: ['police', 'fire', 'public', 'crew', 'driver', 'alarm', 'unknown'],
          whenBlank: 'unknown',
        },
        { type: 'text', name: 'reportedBy.name' },
        { type: 'text', name: 'reportedBy.phone', keypad: 'tel' },
        { type: 'instant', name: 'reportedBy.reportedAt' },
        note,
      ],
    },
  ],
  blank: ({ hydrantId, personId }) => ({ hydrantId: hydrantId ?? '', 'dispatch.toldByWorkerId': personId }),
  occurredAt: firstInstant('struckAt', 'reportedBy.reportedAt', 'arrivedAt'),
};
