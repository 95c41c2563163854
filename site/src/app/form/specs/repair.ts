import { damageClasses } from '../../../../../shared/strikes/damage.ts';
import { hiddenDamages, trenchProtections } from '../../../../../shared/procedure/ground.ts';
import { passNames } from '../../../../../shared/tightening/tightened.ts';
import type { List, Section } from '../nodes.ts';
import { firstInstant, type FormSpec } from '../spec.ts';
import { stockPlaces } from './stock.ts';
import { answered, intervals, note, photos } from './parts.ts';

const crew: List = {
  type: 'list',
  name: 'crew',
  as: 'running',
  atMost: 40,
  blank: { work: [{ from: '', to: '' }], breaks: [] },
  item: [
    { type: 'person', name: 'workerId', required: true },
    { type: 'text', name: 'laborClass', keypad: 'code', codes: { of: 'labor' }, required: true },
    intervals('work', 'field.interval.work'),
    intervals('breaks', 'field.interval.breaks'),
  ],
};

const machines: List = {
  type: 'list',
  name: 'machines',
  as: 'running',
  atMost: 40,
  blank: { inUse: [{ from: '', to: '' }], standingBy: [] },
  item: [
    {
      type: 'text',
      name: 'machineCode',
      keypad: 'code',
      codes: { of: 'machines', titleTo: 'description' },
      required: true,
    },
    { type: 'text', name: 'description', required: true },
    { type: 'person', name: 'operatorWorkerId' },
    intervals('inUse', 'field.interval.inUse'),
    intervals('standingBy', 'field.interval.standingBy'),
    { type: 'quantity', name: 'drivenMiles', unit: 'mi' },
  ],
};

const parts: List = {
  type: 'list',
  name: 'parts',
  atMost: 200,
  blank: { quantity: '1', 'source.from': 'stock' },
  item: [
    {
      type: 'text',
      name: 'partNumber',
      keypad: 'code',
      codes: { of: 'stock', titleTo: 'description' },
      required: true,
    },
    { type: 'text', name: 'description', required: true },
    { type: 'number', name: 'quantity', required: true },
    { type: 'yes-no', name: 'upgrade', optional: true },
    {
      type: 'when',
      test: answered('upgrade', 'yes'),
      absent: true,
      nodes: [{ type: 'text', name: 'upgradeReason', optional: true }],
    },
    { type: 'choice', name: 'source.from', list: 'partFrom', choices: ['stock', 'invoice'], required: true },
    {
      type: 'when',
      test: answered('source.from', 'stock'),
      absent: true,
      nodes: [
        { type: 'text', name: 'source.location', suggestions: stockPlaces, optional: true },
        { type: 'text', name: 'source.issueSlip', keypad: 'code' },
      ],
    },
    {
      type: 'when',
      test: answered('source.from', 'invoice'),
      absent: true,
      nodes: [
        { type: 'text', name: 'source.supplier', required: true },
        { type: 'text', name: 'source.invoiceNumber', keypad: 'code', required: true },
        { type: 'money', name: 'source.unitPriceCents', required: true },
        { type: 'money', name: 'source.discountCents', optional: true },
        { type: 'money', name: 'source.taxCents', optional: true },
        { type: 'kept', name: 'source.invoiceSha256' },
      ],
    },
  ],
};

const contractors: List = {
  type: 'list',
  name: 'contractors',
  atMost: 40,
  blank: {},
  item: [
    { type: 'text', name: 'contractor', required: true },
    { type: 'text', name: 'work', required: true },
    { type: 'text', name: 'invoiceNumber', keypad: 'code', required: true },
    { type: 'date', name: 'invoicedOn', required: true },
    { type: 'money', name: 'amountCents', required: true },
    { type: 'kept', name: 'invoiceSha256' },
  ],
};

const steps: List = {
  type: 'list',
  name: 'steps',
  words: 'field.steps',
  as: 'steps',
  atMost: 100,
  item: [
    { type: 'kept', name: 'step' },
    { type: 'instant', name: 'doneAt', words: 'field.steps.doneAt', required: true },
    { type: 'person', name: 'byWorkerId', words: 'field.byWorkerId', required: true },
    { type: 'text', name: 'note', words: 'field.note' },
  ],
};

const tightened: List = {
  type: 'list',
  name: 'tightened',
  as: 'joints',
  optional: true,
  atMost: 40,
  item: [
    {
      type: 'choice',
      name: 'kind',
      list: 'jointKind',
      choices: ['bolts', 'back-off'],
      required: true,
    },
    { type: 'text', name: 'joint', required: true },
    {
      type: 'when',
      test: answered('kind', 'bolts'),
      absent: true,
      nodes: [
        { type: 'number', name: 'bolts', whole: true },
        { type: 'choices', name: 'passes', list: 'tighteningPass', choices: passNames },
        { type: 'quantity', name: 'torqueLbfFt', unit: 'lbf.ft' },
        { type: 'text', name: 'wrenchId', keypad: 'code' },
        { type: 'date', name: 'wrenchCalibratedOn' },
      ],
    },
    {
      type: 'when',
      test: answered('kind', 'back-off'),
      absent: true,
      nodes: [
        { type: 'number', name: 'turns' },
        { type: 'yes-no', name: 'lockLinedUp' },
      ],
    },
    { type: 'text', name: 'manual' },
    { type: 'text', name: 'page' },
    { type: 'instant', name: 'doneAt', required: true },
    { type: 'person', name: 'byWorkerId', words: 'field.byWorkerId', required: true },
  ],
};

/** What belongs to one step and is drawn with it. */
const besideSteps: readonly Section[] = [
  {
    type: 'section',
    id: 'repair.hidden',
    within: true,
    nodes: [
      {
        type: 'choices',
        name: 'hiddenDamage',
        list: 'hiddenDamage',
        choices: hiddenDamages,
        optional: true,
      },
      { type: 'yes-no', name: 'needsDig', optional: true },
    ],
  },
  {
    type: 'section',
    id: 'repair.locate',
    within: true,
    nodes: [
      { type: 'text', name: 'dig.locateTicket', keypad: 'code', optional: true },
      { type: 'instant', name: 'dig.locateClearFrom', optional: true },
    ],
  },
  {
    type: 'section',
    id: 'repair.trench',
    within: true,
    nodes: [
      { type: 'quantity', name: 'dig.trenchDepthFt', unit: 'ft', optional: true },
      {
        type: 'choice',
        name: 'dig.trenchProtection',
        list: 'trenchProtection',
        choices: trenchProtections,
        optional: true,
      },
      { type: 'person', name: 'dig.competentPersonWorkerId', optional: true },
    ],
  },
];

/** What was done, by whom, with what. Several may be sent for one strike: each tells what it adds. */
export const repairSpec: FormSpec = {
  kind: 'repair',
  nullable: [],
  nodes: [
    {
      type: 'section',
      id: 'repair.damage',
      nodes: [
        { type: 'hydrant', name: 'hydrantId' },
        { type: 'choice', name: 'damage', list: 'damage', choices: damageClasses },
      ],
    },
    // First what is touched first, and what is looked for again with one thumb: the clock.
    { type: 'section', id: 'repair.crew', nodes: [crew] },
    { type: 'section', id: 'repair.machines', nodes: [machines] },
    { type: 'section', id: 'repair.steps', nodes: [steps, ...besideSteps] },
    { type: 'section', id: 'repair.tightening', nodes: [tightened] },
    {
      type: 'section',
      id: 'repair.done',
      nodes: [
        { type: 'instant', name: 'reassembledAt' },
        { type: 'instant', name: 'completedAt' },
      ],
    },
    {
      type: 'section',
      id: 'repair.premium',
      folded: true,
      nodes: [{ type: 'text', name: 'premiumTimeReason', optional: true }],
    },
    { type: 'section', id: 'repair.parts', nodes: [parts] },
    { type: 'section', id: 'repair.contractors', folded: true, nodes: [contractors] },
    { type: 'section', id: 'photos', nodes: [photos(60)] },
    note,
  ],
  blank: ({ hydrantId, strike, personId }) => ({
    hydrantId: hydrantId ?? strike?.hydrantId ?? '',
    crew: [{ workerId: personId, work: [{ from: '', to: '' }], breaks: [] }],
    machines: [],
    parts: [],
    contractors: [],
    steps: [],
    tightened: [],
    photos: [],
  }),
  occurredAt: firstInstant('completedAt', 'reassembledAt'),
};
