import { describe, expect, it } from 'vitest';
import { demoRateBooks } from '../../../infra/local/demo/rates.ts';
import { rateBookEdition, type RateBookEdition } from '../../../shared/costs/rateBook.ts';
import { checkForm } from '../../../site/src/app/form/check.ts';
import { rateBookSpec as spec } from '../../../site/src/app/form/specs/rateBook.ts';
import { editionValues } from '../../../site/src/app/form/specs/rateBookBody.ts';
import { noRates } from '../../support/rates.ts';

const zone = 'America/New_York';
const again = (edition: RateBookEdition) => checkForm(spec, editionValues(spec.nodes, edition, zone), zone);

/** An invented edition that uses every part of the schema, each choice of it at least once. */
const whole: RateBookEdition = rateBookEdition.parse({
  ...noRates,
  effectiveTo: '2030-01-01',
  authorities: [
    { authorityId: 'a', kind: 'ordinance', title: 'Ordinance 7', edition: '2026', page: '3' },
    { authorityId: 's', kind: 'schedule', title: 'Schedule', edition: null, page: null },
  ],
  labor: [
    { laborClass: 'plain', title: 'Plain', hourlyUsd: '30.5', fringeFraction: '0.2848', authorityId: 'a' },
    {
      laborClass: 'ruled',
      title: 'Ruled',
      hourlyUsd: '40',
      fringeFraction: '0',
      fringe: { regular: { share: '0.3' }, premium: { usdPerHour: '4.25' } },
      payRulesId: 'rules',
      authorityId: 'a',
    },
  ],
  payRules: [
    {
      payRulesId: 'rules',
      title: 'Rules',
      workingHours: [{ days: [1, 2, 5], from: '07:30', to: '24:00' }],
      workingMinimumHours: '1',
      otherHours: { multiplier: '1.5', minimumHours: '2', minimumWhenAdjoining: true },
      holiday: { multiplier: '2', minimumHours: null, minimumWhenAdjoining: false },
      holidays: [
        { by: 'date', name: 'A day', month: 7, day: 4, observed: true },
        { by: 'weekday', name: 'A Monday', month: 5, weekday: 1, nth: -1 },
        { by: 'once', name: 'Once', on: '2027-03-04' },
      ],
      week: { startsOn: 7, overHours: '40', multiplier: '1.5' },
      increment: { minutes: 15, toward: 'nearest', of: 'day' },
      authorityId: 'a',
    },
    {
      payRulesId: 'bare',
      title: 'Bare',
      workingHours: [],
      workingMinimumHours: null,
      otherHours: { multiplier: '1', minimumHours: null, minimumWhenAdjoining: false },
      holiday: null,
      holidays: [],
      week: null,
      increment: null,
      authorityId: 'a',
    },
  ],
  machines: [
    {
      machineCode: 'm',
      title: 'Machine',
      unit: 'day',
      rateUsd: '400',
      standbyUsd: '10',
      standbyOnlyIfUsedOverHalfOfHours: '8',
      schedule: { code: '8701.1', size: null },
      includes: ['operator', 'fuel'],
      unattended: true,
      minimumHours: '4',
      increment: { minutes: 30, toward: 'up', of: 'call' },
      authorityId: 's',
    },
    {
      machineCode: 'n',
      title: 'Other',
      unit: 'hour',
      rateUsd: '5',
      standbyUsd: null,
      includes: [],
      authorityId: 's',
    },
  ],
  stock: [{ partNumber: 'f', title: 'Diesel', unitPriceUsd: '4.1', fuel: true, authorityId: 'a' }],
  materialHandling: { fraction: '0.05', authorityId: 'a' },
  salesTax: { fraction: '0.0825', on: ['stock', 'handling'], authorityId: 'a' },
  water: { usd: '6.25', per: '100-ft3', basis: 'tariff', authorityId: 'a' },
  flowTest: { eachUsd: '92', authorityId: 'a' },
  overheads: [
    {
      overheadId: 'o',
      title: 'Office',
      fraction: '0.1',
      on: ['labor'],
      onOverheads: [],
      limitUsd: '500',
      authorityId: 'a',
    },
    {
      overheadId: 'p',
      title: 'Plant',
      fraction: '0.2',
      on: [],
      onOverheads: ['o'],
      limitUsd: null,
      authorityId: 'a',
    },
  ],
  flatTariffs: [
    {
      tariffId: 't',
      title: 'Flat',
      damage: ['breakaway-kit'],
      usd: '900',
      covers: ['labor', 'materials'],
      extras: { laborClasses: ['plain', 'ruled'], machineCodes: [], partNumbers: ['f'] },
      authorityId: 'a',
    },
  ],
  jobFees: [{ feeId: 'f', title: 'Fee', usd: '25', damage: [], authorityId: 'a' }],
  minimumCharge: { usd: '250', authorityId: 'a' },
  totalRounding: { nearestUsd: '10', toward: 'down', authorityId: 'a' },
  claimHandling: { authorityId: 'a' },
  accounts: { cash: '1010', receivable: '1200', recovery: '4450', writeOff: '5900', shared: null },
});

describe('an edition opened in the editor', () => {
  it('gives the same edition again, every part of it', () => {
    expect(again(whole)).toEqual({ ok: true, body: whole });
  });

  // What is left out and what is null say the same: no such part.
  it('gives an edition with nothing in it again', () => {
    expect(again(noRates)).toMatchObject({ ok: true, body: noRates });
  });

  it('asks what the price of water is, where an older edition did not say, and nothing else', () => {
    for (const edition of demoRateBooks) {
      const checked = again(edition);
      const old = edition.water !== null && 'per1000GalUsd' in edition.water;
      expect(checked.ok ? [] : checked.problems.map(({ path }) => path)).toEqual(old ? ['water.basis'] : []);
    }
  });

  it('says every problem at once, each at its field, also in a list of codes', () => {
    const values = editionValues(spec.nodes, whole, zone);
    const checked = checkForm(
      spec,
      {
        ...values,
        editionId: '',
        effectiveTo: '1999-01-01',
        overheads: [{ ...(values['overheads'] as object[])[1]!, onOverheads: 'nowhere' }],
        stock: [{ ...(values['stock'] as object[])[0]!, unitPriceUsd: '$4', authorityId: 'x' }],
      },
      zone,
    );
    // A schema's own checks wait until every field can be read.
    expect(checked.ok ? [] : checked.problems.map(({ path }) => path)).toEqual([
      'editionId',
      'stock.0.unitPriceUsd',
    ]);
    const readable = checkForm(
      spec,
      {
        ...values,
        effectiveTo: '1999-01-01',
        overheads: [{ ...(values['overheads'] as object[])[1]!, onOverheads: 'nowhere' }],
        stock: [{ ...(values['stock'] as object[])[0]!, authorityId: 'x' }],
      },
      zone,
    );
    expect(readable.ok ? [] : readable.problems.map(({ path, code }) => `${path} ${code}`)).toEqual([
      'effectiveTo edition-ends-before-start',
      'stock.0.authorityId authority-not-listed',
      'overheads.0.onOverheads.0 overhead-not-listed-before',
    ]);
  });
});
