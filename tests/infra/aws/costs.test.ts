import { describe, expect, it } from 'vitest';
import {
  billOf,
  lines,
  publishingCostOf,
  totalOf,
  unitsOf,
  type Question,
} from '../../../infra/aws/costs/bill.ts';
import { readMeasured, type Measurements, type SpentUnits } from '../../../infra/aws/costs/measured.ts';
import { dollars } from '../../../infra/aws/costs/page.ts';
import { prices, type PriceName } from '../../../infra/aws/costs/prices.ts';
import { publishingAt } from '../../../infra/aws/costs/publishing.ts';
import { reckonedUtilities } from '../../../infra/aws/costs/utilities.ts';
import { permissions } from '../../../infra/aws/permissions.ts';
import { nothing } from '../../bench/support/spent.ts';
import { standingOf } from './standing.ts';
import { example, synthesise } from './synthesised.ts';

/**
 * Bills of others at AWS's list prices of us-east-1, as recorded in the tests of an open-source estimator that reads
 * AWS's price list (its golden files for Lambda, API Gateway, DynamoDB, KMS, S3 and CloudFront).
 */
describe('prices give the bills that others recorded', () => {
  it.each<[PriceName, number, number]>([
    ['functionCall', 100_000, 0.02],
    ['functionArmGbSecond', 17_500, 0.23],
    ['functionX86GbSecond', 17_500, 0.29],
    ['functionArmGbSecond', 7_500_000_000, 100_000.5],
    ['functionX86GbSecond', 6_000_000_000, 100_000.2],
    ['apiRequest', 300_000_000, 300],
    ['tableGb', 230, 57.5],
    ['tableBackupGb', 2_300, 460],
    // The same file has 3.75 for these, of before the prices were halved on 1 November 2024.
    ['tableWriteUnit', 3_000_000, 3.75 / 2],
    ['tableReadUnit', 8_000_000, 2 / 2],
    ['key', 3, 3],
    ['objectPut', 1_000, 0.005],
    ['objectGet', 1_000, 0.0004],
    ['edgeRequest', 10_000, 0.01],
  ])('%s × %d', (name, amount, usd) => {
    expect(Math.abs(prices[name].usd * amount - usd)).toBeLessThanOrEqual(0.005);
  });

  it('every price stands in exactly one line of the bill', () => {
    expect(Object.values(lines).flat().sort()).toEqual(Object.keys(prices).sort());
  });
});

const spent = (more: Partial<SpentUnits>): SpentUnits => ({ ...nothing(), ...more });

/** Round figures, so that a bill can be reckoned by hand. */
const measured: Measurements = {
  measuredOn: '2026-11-26',
  submissionsAStrike: 10,
  photosAStrike: 4,
  life: {
    submissions: spent({ calls: 10, cpuMs: 1000, writeUnits: 100, readUnits: 50, tableRequests: 200 }),
    publish: spent({ calls: 12 }),
  },
  views: { records: spent({ calls: 1, readUnits: 10 }) },
  ticks: {},
  functions: { submissions: { loadedCpuMs: 0, peakMb: 100 }, records: { loadedCpuMs: 0, peakMb: 100 } },
  kept: { tables: { submissions: 50_000 }, publishedRows: 4096, strikeStream: 5000 },
  measuredAt: { publishEveryMinutes: 5, relyForMinutes: 20, digestFromHour: 24 },
  publishing: [
    { hydrants: 1000, events: 100, cpuMs: 200, puts: 120, gets: 4, putBytes: 1_000_000 },
    { hydrants: 1000, events: 300, cpuMs: 300, puts: 320, gets: 4, putBytes: 2_000_000 },
  ],
};
const utility = {
  name: 'By hand',
  hydrants: 1000,
  strikesAYear: 120,
  people: 10,
  pageViews: 1000,
  wallScreens: 0,
};
const question: Question = {
  measured,
  standing: { alarmMetrics: 20, countedMetrics: 9, dashboards: 1, keys: 1 },
  schedule: { publishEveryMinutes: 5, relyForMinutes: 20, digestFromHour: 24 },
  utility,
  years: 1,
};

describe('one publication', () => {
  // Out at once: 2 × 120 × 9 / 365 = 5.9, so 6; with the year's 120 struck 126 have a page. A page costs (320 − 120) / (300 − 100) = 1 file.
  it('grows by a step for each hydrant that has a page', () => {
    const one = publishingAt(measured, question.schedule, utility, 1);
    expect(one.puts).toBe(146);
    expect(one.cpuMs).toBeCloseTo(213, 9);
    expect(one.putBytes).toBeCloseTo(1_130_000, 3);
    // 126 rows of one unit, and 120 streams of 5,000 bytes, which are two units each.
    expect(one.readUnits).toBe(126 + 240);
  });

  it('writes pages seldomer when they may be relied on for longer', () => {
    // 5 and 20 minutes: every third time. 5 and 65: every twelfth, so a quarter of the 126; 20 files are written always.
    const one = publishingAt(measured, { ...question.schedule, relyForMinutes: 65 }, utility, 1);
    expect(one.puts).toBeCloseTo(20 + 126 / 4, 9);
  });
});

describe('a bill by hand', () => {
  const units = unitsOf(question);

  it('counts a strike’s life as often as there are strikes in a month', () => {
    expect(units.tableWriteUnit).toBeCloseTo(10 * 100, 9);
    expect(units.apiRequest).toBeCloseTo(10 * 10 + 10 * 10 * 1, 9);
  });

  it('publishes 8,640 times a month at five minutes, and once more for each fact', () => {
    const publications = 8640 + 10 * 12;
    expect(units.objectPut).toBeCloseTo(publications * 146, 3);
    expect(units.tableReadUnit).toBeCloseTo(10 * 50 + 100 * 10 + publications * 366, 3);
  });

  it('says what of it are the public pages', () => {
    // Writes, reads and 8.76 GB of older versions; the functions, their logs and the gets are less than a dollar.
    const publications = 8640 + 10 * 12;
    const writes = (publications * 146 * 0.005) / 1000;
    const reads = (publications * 366 * 0.125) / 1e6;
    const kept = ((publications * 1_130_000) / 1e9) * 0.023;
    const usd = publishingCostOf(question);
    expect(usd).toBeGreaterThan(writes + reads + kept);
    expect(usd).toBeLessThan(writes + reads + kept + 1);
  });

  it('gives a function with part of a processor as much longer', () => {
    // 512 MB: 1,769 / 512 of a second for each second of processor, and 200 requests of 5 ms; half a GB for all of it.
    const life = 10 * 0.5 * ((1769 / 512) * 1 + 1);
    const without = unitsOf({
      ...question,
      measured: { ...measured, life: { publish: measured.life['publish']! } },
    });
    expect(units.functionArmGbSecond - without.functionArmGbSecond).toBeCloseTo(life, 9);
  });

  it('keeps what gathered', () => {
    const seven = unitsOf({ ...question, years: 7 });
    expect(units.tableGb).toBeCloseTo((120 * 50_000) / 1e9, 12);
    expect(seven.tableGb).toBeCloseTo(7 * units.tableGb, 12);
    expect(seven.objectGb).toBeGreaterThan(units.objectGb);
  });

  it('has an amount in every line, and what stands by the month in one of them', () => {
    const bill = billOf(question);
    for (const { usd } of bill) expect(usd).toBeGreaterThan(0);
    // 20 × 0.10 + 9 × 0.30 + 3 = 7.70, and some cents of logs.
    const { usd } = bill.find(({ what }) => what === 'watching')!;
    expect(usd).toBeGreaterThan(7.7);
    expect(usd).toBeLessThan(7.8);
    expect(totalOf(bill)).toBeGreaterThan(usd);
  });
});

describe('what is read from the templates', () => {
  const standing = standingOf(synthesise());

  it('is what stands there', () => {
    expect(standing).toMatchObject({ dashboards: 1, keys: 1 });
    // An alarm on a sum of four metrics is billed as four (CloudWatch pricing, "alarms").
    expect(standing.alarmMetrics).toBeGreaterThan(16);
    expect(standing.countedMetrics).toBeGreaterThan(5);
  });
});

describe('what was measured', () => {
  const real = readMeasured();

  it('knows every function that the life of a strike and the clock wake', () => {
    const names = [real.life, real.views, real.ticks].flatMap((of) => Object.keys(of));
    expect(names.filter((name) => !(name in permissions))).toEqual([]);
    expect(names).toEqual(expect.arrayContaining(['submissions', 'project', 'packetJobs', 'digest']));
    expect(real.submissionsAStrike).toBeGreaterThan(10);
  });

  it('costs a town less than the budget that the example of the settings sets', () => {
    const [town] = reckonedUtilities;
    const asked = { measured: real, standing: standingOf(synthesise()), schedule: question.schedule };
    expect(totalOf(billOf({ ...asked, utility: town!, years: 7 }))).toBeLessThan(
      example().operators.monthlyBudgetUsd,
    );
  });
});

describe('how a sum is written', () => {
  it.each([
    [0, '—'],
    [0.04, '—'],
    [0.25, '0.3'],
    [3.4, '3'],
    [49.4, '49'],
    [1804, '1800'],
  ])('%d as %s', (usd, text) => {
    expect(dollars(usd)).toBe(text);
  });

  it('and never one that cannot be', () => {
    expect(() => dollars(Number.NaN)).toThrow();
    expect(() => dollars(-1)).toThrow();
  });
});
