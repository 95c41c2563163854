import { hazards } from '../../../../../shared/submissions/forms/strike.ts';
import { textOf } from '../nodes.ts';
import { firstInstant, type FormSpec } from '../spec.ts';
import { answered, dispatchNodes, note, photos } from './parts.ts';
import { isolationValve, strikeParts } from './seenParts.ts';

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
        isolationValve,
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
      nodes: [...strikeParts],
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
