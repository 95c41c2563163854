import { strikeCauses } from '../../../../../shared/submissions/forms/party.ts';
import type { Node } from '../nodes.ts';
import type { FormSpec } from '../spec.ts';
import { note } from './parts.ts';

const person = (who: 'driver' | 'owner'): readonly Node[] => [
  { type: 'text', name: `${who}.name`, words: 'field.party.name' },
  { type: 'text', name: `${who}.address`, words: 'field.party.address', lines: 2 },
  { type: 'text', name: `${who}.phone`, words: 'field.party.phone', keypad: 'tel' },
];

/** Who may be liable: asked at the curb, completed at the desk. Nothing is required but what is seen. */
export const partySpec: FormSpec = {
  kind: 'party',
  nullable: ['driver', 'owner', 'insurer', 'police', 'crashReport'],
  nodes: [
    {
      type: 'section',
      id: 'party.vehicles',
      nodes: [
        {
          type: 'choice',
          name: 'hitAndRun',
          list: 'seen',
          choices: ['yes', 'no', 'unknown'],
          whenBlank: 'unknown',
        },
        { type: 'choice', name: 'cause', list: 'strikeCause', choices: strikeCauses, optional: true },
        {
          type: 'list',
          name: 'vehicles',
          atMost: 10,
          blank: {},
          item: [
            { type: 'text', name: 'plate', keypad: 'code' },
            { type: 'text', name: 'plateRegion' },
            {
              type: 'choice',
              name: 'kind',
              list: 'vehicle',
              choices: [
                'car',
                'light-truck',
                'heavy-truck',
                'bus',
                'motorcycle',
                'machine',
                'other',
                'unknown',
              ],
              whenBlank: 'unknown',
            },
            { type: 'text', name: 'description' },
            { type: 'text', name: 'vin', keypad: 'code' },
          ],
        },
      ],
    },
    {
      type: 'section',
      id: 'party.insurer',
      nodes: [
        { type: 'text', name: 'insurer.company' },
        { type: 'text', name: 'insurer.policyNumber', keypad: 'code' },
        { type: 'text', name: 'insurer.claimNumber', keypad: 'code' },
        { type: 'text', name: 'insurer.adjuster' },
      ],
    },
    {
      type: 'section',
      id: 'party.police',
      nodes: [
        { type: 'text', name: 'police.agency' },
        { type: 'text', name: 'police.reportNumber', keypad: 'code' },
        { type: 'text', name: 'police.officer' },
      ],
    },
    { type: 'section', id: 'party.driver', nodes: person('driver') },
    { type: 'section', id: 'party.owner', folded: true, nodes: person('owner') },
    {
      type: 'section',
      id: 'party.crashReport',
      folded: true,
      nodes: [
        { type: 'text', name: 'crashReport.codeSystem' },
        { type: 'text', name: 'crashReport.code', keypad: 'code' },
        { type: 'text', name: 'crashReport.text', lines: 3 },
      ],
    },
    note,
  ],
  blank: () => ({ vehicles: [{}] }),
  occurredAt: () => null,
};
