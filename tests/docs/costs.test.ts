import { describe, it } from 'vitest';
import { readMeasured } from '../../infra/aws/costs/measured.ts';
import {
  billTable,
  lifeTable,
  priceTable,
  publishingTable,
  turnedDownTable,
  unitTable,
  utilityTable,
} from '../../infra/aws/costs/page.ts';
import { scheduleOf, standingOf } from '../infra/aws/standing.ts';
import { example, synthesise } from '../infra/aws/synthesised.ts';
import { holdsGenerated } from './holdsGenerated.ts';

describe('the page of costs', () => {
  const settings = example();
  const standing = standingOf(synthesise(settings));
  const upTo = (step: number, amount: number): number => Math.ceil(amount / step) * step;
  const asked = {
    measured: readMeasured(),
    // Some more than there are: one alarm more is no other page.
    standing: {
      ...standing,
      alarmMetrics: upTo(10, standing.alarmMetrics),
      countedMetrics: upTo(5, standing.countedMetrics),
    },
    schedule: scheduleOf(settings),
  };

  it.each([
    ['bill', billTable(asked)],
    ['utilities', utilityTable()],
    ['publishing', publishingTable(asked)],
    ['turned-down', turnedDownTable(asked)],
    ['units', unitTable(asked)],
    ['life', lifeTable(asked.measured)],
    ['prices', priceTable()],
  ])('holds its %s', (name, part) => {
    holdsGenerated('docs/operations/what-it-costs.md', name, part);
  });
});
