import { type List, type Node } from '../../nodes.ts';
import { answered } from '../parts.ts';
import { payRuleCodes, code, title, usd, authority, headed, increment } from './parts.ts';

/** What people are paid: the working week, holidays, pay rules, classes with their fringe. */

export const weekdays = ['1', '2', '3', '4', '5', '6', '7'] as const;

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

export const payRules: List = {
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

export const labor: List = {
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
