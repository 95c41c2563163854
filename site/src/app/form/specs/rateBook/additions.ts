import { coverable, overheadBases } from '../../../../../../shared/costs/book/additions.ts';
import { type List } from '../../nodes.ts';
import { laborCodes, code, title, usd, authority, codes, damage, headed } from './parts.ts';

/** What is laid on the bill: shares, flat prices, fees for each strike. */

export const overheads: List = {
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

export const flatTariffs: List = {
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

export const jobFees: List = {
  type: 'list',
  name: 'jobFees',
  as: 'folded',
  heading: headed('feeId', 'title', 'usd'),
  optional: true,
  atMost: 40,
  blank: { damage: [] },
  item: [code('feeId'), title, { ...usd('usd'), words: 'field.rates.usd' }, damage(false), authority()],
};
