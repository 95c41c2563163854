import { localMinute } from '../localTime.ts';
import type { List } from '../nodes.ts';
import { firstInstant, type FormSpec } from '../spec.ts';
import { note } from './parts.ts';

/** The list of known places that `StockPlaces` draws, for suggestions. */
export const stockPlaces = 'stock-places';

const parts = (amount: 'counted' | 'quantity' | 'minimum'): List => ({
  type: 'list',
  name: 'parts',
  atMost: 200,
  blank: {},
  item: [
    {
      type: 'text',
      name: 'partNumber',
      keypad: 'code',
      codes: { of: 'stock', titleTo: 'description' },
      required: true,
    },
    { type: 'text', name: 'description' },
    { type: 'number', name: amount, required: true },
  ],
});

export const stockCountSpec: FormSpec = {
  kind: 'stock-count',
  nullable: [],
  nodes: [
    {
      type: 'section',
      id: 'stock.where',
      nodes: [
        { type: 'text', name: 'place', suggestions: stockPlaces, required: true },
        { type: 'instant', name: 'countedAt', required: true },
        { type: 'person', name: 'byWorkerId', required: true },
      ],
    },
    { type: 'section', id: 'stock.parts', nodes: [parts('counted')] },
    note,
  ],
  blank: ({ asked, personId, now, zone }) => ({
    place: asked['place'] ?? '',
    countedAt: localMinute(now, zone),
    byWorkerId: personId,
    parts: [],
  }),
  occurredAt: firstInstant('countedAt'),
};

export const stockMoveSpec: FormSpec = {
  kind: 'stock-move',
  nullable: [],
  nodes: [
    {
      type: 'section',
      id: 'stock.where',
      nodes: [
        { type: 'text', name: 'from', suggestions: stockPlaces },
        { type: 'text', name: 'to', suggestions: stockPlaces },
        { type: 'instant', name: 'movedAt', required: true },
        { type: 'person', name: 'byWorkerId', required: true },
        { type: 'text', name: 'reference', keypad: 'code' },
      ],
    },
    { type: 'section', id: 'stock.parts', nodes: [parts('quantity')] },
    note,
  ],
  blank: ({ personId, now, zone }) => ({
    movedAt: localMinute(now, zone),
    byWorkerId: personId,
    parts: [{}],
  }),
  occurredAt: firstInstant('movedAt'),
};

export const stockMinimumSpec: FormSpec = {
  kind: 'stock-minimum',
  nullable: [],
  nodes: [
    {
      type: 'section',
      id: 'stock.where',
      nodes: [{ type: 'text', name: 'place', suggestions: stockPlaces, required: true }],
    },
    { type: 'section', id: 'stock.parts', nodes: [parts('minimum')] },
    note,
  ],
  blank: ({ asked }) => ({ place: asked['place'] ?? '', parts: [] }),
  occurredAt: () => null,
};
