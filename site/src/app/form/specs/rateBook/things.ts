import { heldByRate } from '../../../../../../shared/costs/book/machines.ts';
import { type List } from '../../nodes.ts';
import { code, title, usd, authority, headed, increment } from './parts.ts';

/** Machines and parts from stock. */

export const machines: List = {
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
    { type: 'yes-no', name: 'unattended', optional: true },
    usd('standbyUsd', { required: false }),
    usd('standbyOnlyIfUsedOverHalfOfHours', { required: false, optional: true }),
    usd('minimumHours', { required: false, optional: true }),
    ...increment,
    { type: 'text', name: 'schedule.code', keypad: 'code', optional: true },
    { type: 'text', name: 'schedule.size' },
    authority(),
  ],
};

export const stock: List = {
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
