import { coverable, overheadBases } from '../../../../../shared/costs/book/additions.ts';
import { heldByRate } from '../../../../../shared/costs/book/machines.ts';
import { damageClasses } from '../../../../../shared/strikes/damage.ts';
import { rowsOf, textOf, type Leaf, type List, type Node, type Section, type Values } from '../nodes.ts';
import type { FormSpec } from '../spec.ts';
import { answered } from './parts.ts';
import { completeEdition } from './rateBookBody.ts';

/** An edition of the rate book, all of it. Managers write it; what each word means is in the rate book's schema. */

/** Lists of suggestions that the form draws: codes that stand in it already. */
export const authorityCodes = 'rate-book-authorities';
export const payRuleCodes = 'rate-book-pay-rules';
export const laborCodes = 'rate-book-labor';

const code = (name: string): Leaf => ({ type: 'text', name, keypad: 'code', required: true });
const title: Leaf = { type: 'text', name: 'title', words: 'field.rates.title', required: true };
const usd = (name: string, more: Partial<Extract<Leaf, { type: 'text' }>> = {}): Leaf => ({
  type: 'text',
  name,
  keypad: 'code',
  required: true,
  ...more,
});
const authority = (name = 'authorityId'): Leaf => ({
  type: 'text',
  name,
  words: 'field.rates.authorityId',
  keypad: 'code',
  suggestions: authorityCodes,
  required: true,
});
const codes = (name: string, suggestions?: string): Leaf => ({
  type: 'text',
  name,
  keypad: 'code',
  many: true,
  ...(suggestions === undefined ? {} : { suggestions }),
});
const damage = (required: boolean): Leaf => ({
  type: 'choices',
  name: 'damage',
  list: 'damage',
  choices: damageClasses,
  required,
});
export const weekdays = ['1', '2', '3', '4', '5', '6', '7'] as const;

/** A row's own line while it is shut: its code, its name, its rate. */
const headed =
  (...names: readonly string[]) =>
  (row: Values): string =>
    names
      .map((name) => textOf(row[name]).trim())
      .filter((text) => text !== '')
      .join(' · ');

const increment: readonly Node[] = [
  { type: 'yes-no', name: '_increment', words: 'field.rates.increment' },
  {
    type: 'when',
    absent: true,
    test: answered('_increment', 'yes'),
    nodes: [
      {
        type: 'number',
        name: 'increment.minutes',
        words: 'field.rates.increment.minutes',
        whole: true,
        required: true,
      },
      {
        type: 'choice',
        name: 'increment.toward',
        words: 'field.rates.increment.toward',
        list: 'toward',
        choices: ['up', 'nearest'],
        required: true,
      },
      {
        type: 'choice',
        name: 'increment.of',
        words: 'field.rates.increment.of',
        list: 'incrementOf',
        choices: ['call', 'day'],
        required: true,
      },
    ],
  },
];

const premium = (name: 'otherHours' | 'holiday'): readonly Node[] => [
  { ...usd(`${name}.multiplier`), words: 'field.rates.multiplier' },
  { ...usd(`${name}.minimumHours`, { required: false }), words: 'field.rates.minimumHours' },
  {
    type: 'yes-no',
    name: `${name}.minimumWhenAdjoining`,
    words: 'field.rates.minimumWhenAdjoining',
    required: true,
  },
];

const fringe = (which: 'regular' | 'premium'): readonly Node[] => [
  {
    type: 'choice',
    name: `_${which}By`,
    words: `field.rates.fringe.${which}`,
    list: 'fringeBy',
    choices: ['share', 'usd'],
  },
  {
    type: 'when',
    absent: true,
    test: answered(`_${which}By`, 'share'),
    nodes: [{ ...usd(`fringe.${which}.share`), words: 'field.rates.fraction' }],
  },
  {
    type: 'when',
    absent: true,
    test: answered(`_${which}By`, 'usd'),
    nodes: [{ ...usd(`fringe.${which}.usdPerHour`), words: 'field.rates.usdPerHour' }],
  },
];

const holidays: List = {
  type: 'list',
  name: 'holidays',
  atMost: 40,
  blank: { by: 'date', observed: 'no' },
  item: [
    { type: 'text', name: 'name', required: true },
    { type: 'choice', name: 'by', list: 'holidayBy', choices: ['date', 'weekday', 'once'], required: true },
    {
      type: 'when',
      absent: true,
      test: answered('by', 'once'),
      nodes: [{ type: 'date', name: 'on', required: true }],
    },
    {
      type: 'when',
      absent: true,
      test: answered('by', 'date', 'weekday'),
      nodes: [{ type: 'number', name: 'month', whole: true, required: true }],
    },
    {
      type: 'when',
      absent: true,
      test: answered('by', 'date'),
      nodes: [
        { type: 'number', name: 'day', whole: true, required: true },
        { type: 'yes-no', name: 'observed', required: true },
      ],
    },
    {
      type: 'when',
      absent: true,
      test: answered('by', 'weekday'),
      nodes: [
        {
          type: 'choice',
          name: 'nth',
          list: 'nth',
          choices: ['1', '2', '3', '4', '5', '-1'],
          required: true,
        },
        { type: 'choice', name: 'weekday', list: 'weekday', choices: weekdays, required: true },
      ],
    },
  ],
};

const payRules: List = {
  type: 'list',
  name: 'payRules',
  as: 'folded',
  heading: headed('payRulesId', 'title'),
  optional: true,
  atMost: 20,
  blank: { workingHours: [], holidays: [], 'otherHours.minimumWhenAdjoining': 'no' },
  item: [
    code('payRulesId'),
    title,
    {
      type: 'list',
      name: 'workingHours',
      atMost: 21,
      blank: { days: [] },
      item: [
        { type: 'choices', name: 'days', list: 'weekday', choices: weekdays, required: true },
        usd('from'),
        usd('to'),
      ],
    },
    { ...usd('workingMinimumHours', { required: false }) },
    ...premium('otherHours'),
    { type: 'yes-no', name: '_holiday' },
    { type: 'when', absent: true, test: answered('_holiday', 'yes'), nodes: premium('holiday') },
    holidays,
    { type: 'yes-no', name: '_week' },
    {
      type: 'when',
      absent: true,
      test: answered('_week', 'yes'),
      nodes: [
        { type: 'choice', name: 'week.startsOn', list: 'weekday', choices: weekdays, required: true },
        usd('week.overHours'),
        { ...usd('week.multiplier'), words: 'field.rates.multiplier' },
      ],
    },
    ...increment,
    authority(),
  ],
};

const labor: List = {
  type: 'list',
  name: 'labor',
  as: 'folded',
  heading: headed('laborClass', 'title', 'hourlyUsd'),
  atMost: 200,
  blank: { fringeFraction: '0' },
  item: [
    code('laborClass'),
    title,
    { ...usd('hourlyUsd'), words: 'field.rates.usdPerHour' },
    usd('fringeFraction'),
    { type: 'yes-no', name: '_fringe' },
    {
      type: 'when',
      absent: true,
      test: answered('_fringe', 'yes'),
      nodes: [...fringe('regular'), ...fringe('premium')],
    },
    { type: 'text', name: 'payRulesId', keypad: 'code', suggestions: payRuleCodes, optional: true },
    authority(),
  ],
};

const machines: List = {
  type: 'list',
  name: 'machines',
  as: 'folded',
  heading: headed('machineCode', 'title', 'rateUsd'),
  atMost: 1000,
  blank: { unit: 'hour', includes: [] },
  item: [
    code('machineCode'),
    title,
    {
      type: 'choice',
      name: 'unit',
      list: 'machineUnit',
      choices: ['hour', 'mile', 'day'],
      required: true,
    },
    { ...usd('rateUsd'), words: 'field.rates.usd' },
    { type: 'choices', name: 'includes', list: 'rateHolds', choices: heldByRate },
    usd('standbyUsd', { required: false }),
    usd('standbyOnlyIfUsedOverHalfOfHours', { required: false, optional: true }),
    usd('minimumHours', { required: false, optional: true }),
    ...increment,
    { type: 'text', name: 'schedule.code', keypad: 'code', optional: true },
    { type: 'text', name: 'schedule.size' },
    authority(),
  ],
};

const stock: List = {
  type: 'list',
  name: 'stock',
  as: 'folded',
  heading: headed('partNumber', 'title', 'unitPriceUsd'),
  atMost: 5000,
  blank: {},
  item: [
    code('partNumber'),
    title,
    { ...usd('unitPriceUsd'), words: 'field.rates.usd' },
    { type: 'yes-no', name: 'fuel', optional: true },
    authority(),
  ],
};

const overheads: List = {
  type: 'list',
  name: 'overheads',
  as: 'folded',
  heading: headed('overheadId', 'title', 'fraction'),
  optional: true,
  atMost: 20,
  blank: { on: [] },
  item: [
    code('overheadId'),
    title,
    { ...usd('fraction'), words: 'field.rates.fraction' },
    { type: 'choices', name: 'on', list: 'overheadBase', choices: overheadBases },
    codes('onOverheads'),
    usd('limitUsd', { required: false }),
    authority(),
  ],
};

const flatTariffs: List = {
  type: 'list',
  name: 'flatTariffs',
  as: 'folded',
  heading: headed('tariffId', 'title', 'usd'),
  optional: true,
  atMost: 40,
  blank: { damage: [], covers: [...coverable] },
  item: [
    code('tariffId'),
    title,
    { ...usd('usd'), words: 'field.rates.usd' },
    damage(true),
    { type: 'choices', name: 'covers', list: 'coverable', choices: coverable, required: true },
    codes('extras.laborClasses', laborCodes),
    codes('extras.machineCodes'),
    codes('extras.partNumbers'),
    authority(),
  ],
};

const jobFees: List = {
  type: 'list',
  name: 'jobFees',
  as: 'folded',
  heading: headed('feeId', 'title', 'usd'),
  optional: true,
  atMost: 40,
  blank: { damage: [] },
  item: [code('feeId'), title, { ...usd('usd'), words: 'field.rates.usd' }, damage(false), authority()],
};

const sections: readonly Section[] = [
  {
    type: 'section',
    id: 'rate-book.which',
    nodes: [
      code('editionId'),
      title,
      { type: 'date', name: 'effectiveFrom', required: true },
      { type: 'date', name: 'effectiveTo' },
      {
        type: 'choice',
        name: 'rounding',
        list: 'rounding',
        choices: ['line-to-cent', 'section-to-cent'],
        required: true,
      },
      { type: 'kept', name: 'currency' },
    ],
  },
  {
    type: 'section',
    id: 'rate-book.authorities',
    nodes: [
      {
        type: 'list',
        name: 'authorities',
        as: 'folded',
        heading: headed('authorityId', 'title', 'edition'),
        atMost: 60,
        blank: {},
        item: [
          code('authorityId'),
          {
            type: 'choice',
            name: 'kind',
            list: 'authorityKind',
            choices: [
              'resolution',
              'ordinance',
              'tariff',
              'schedule',
              'labor-agreement',
              'contract',
              'price-list',
              'other',
            ],
            required: true,
          },
          title,
          { type: 'text', name: 'edition' },
          { type: 'text', name: 'page' },
        ],
      },
    ],
  },
  { type: 'section', id: 'rate-book.labor', nodes: [labor, payRules] },
  { type: 'section', id: 'rate-book.machines', nodes: [machines] },
  {
    type: 'section',
    id: 'rate-book.materials',
    nodes: [
      stock,
      usd('materialHandling.fraction', { required: false }),
      { ...authority('materialHandling.authorityId'), words: 'field.rates.handlingAuthority' },
      usd('salesTax.fraction', { required: false }),
      {
        type: 'choices',
        name: 'salesTax.on',
        list: 'taxable',
        choices: ['stock', 'invoiced-parts', 'handling', 'contractors'],
      },
      { ...authority('salesTax.authorityId'), words: 'field.rates.taxAuthority' },
    ],
  },
  {
    type: 'section',
    id: 'rate-book.water',
    nodes: [
      usd('water.usd', { required: false }),
      { type: 'choice', name: 'water.per', list: 'waterPer', choices: ['1000-gal', '100-ft3', 'm3'] },
      {
        type: 'choice',
        name: 'water.basis',
        list: 'waterBasis',
        choices: ['retail', 'wholesale', 'production-cost', 'tariff'],
      },
      { ...authority('water.authorityId'), words: 'field.rates.waterAuthority' },
      usd('flowTest.eachUsd', { required: false }),
      { ...authority('flowTest.authorityId'), words: 'field.rates.flowTestAuthority' },
    ],
  },
  {
    type: 'section',
    id: 'rate-book.whole',
    nodes: [
      overheads,
      flatTariffs,
      jobFees,
      usd('minimumCharge.usd', { required: false }),
      { ...authority('minimumCharge.authorityId'), words: 'field.rates.minimumAuthority' },
      usd('totalRounding.nearestUsd', { required: false }),
      { type: 'choice', name: 'totalRounding.toward', list: 'toward', choices: ['nearest', 'up', 'down'] },
      { ...authority('totalRounding.authorityId'), words: 'field.rates.roundingAuthority' },
      { ...authority('claimHandling.authorityId'), words: 'field.rates.claimHandlingAuthority' },
    ],
  },
  { type: 'section', id: 'rate-book.preview', nodes: [] },
];

export const rateBookSpec: FormSpec = {
  kind: 'rate-book',
  nullable: [
    'materialHandling',
    'salesTax',
    'water',
    'flowTest',
    'minimumCharge',
    'totalRounding',
    'claimHandling',
  ],
  nodes: sections.map(lenientSection),
  blank: () => ({
    currency: 'USD',
    rounding: 'line-to-cent',
    authorities: [],
    labor: [],
    machines: [],
    stock: [],
  }),
  occurredAt: () => null,
  complete: completeEdition,
};

/** What is null unless something was said in it is not marked as needed, whatever its parts are made of. */
function lenientSection(section: Section): Section {
  return {
    ...section,
    nodes: section.nodes.map((node) =>
      'name' in node && node.type !== 'list' && node.name.includes('.') ? { ...node, required: false } : node,
    ),
  };
}

/** Codes of one list of the draft, for suggestions. */
export const codesIn = (values: Values, list: string, name: string): string[] =>
  rowsOf(values[list])
    .map((row) => textOf(row[name]).trim())
    .filter((text) => text !== '');
