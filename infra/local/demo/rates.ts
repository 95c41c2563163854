import type { RateBookEdition } from '../../../shared/costs/rateBook.ts';

const resolution = (number: string, adopted: string) =>
  [
    {
      authorityId: 'fees',
      kind: 'resolution',
      title: `Town resolution ${number}, schedule of fees for damage to town property`,
      edition: `adopted ${adopted}`,
      page: '3',
    },
    {
      authorityId: 'labor',
      kind: 'labor-agreement',
      title: 'Agreement with the town workers, article 12, pay classes',
      edition: adopted.slice(0, 4),
      page: '41',
    },
    {
      authorityId: 'machines',
      kind: 'resolution',
      title: `Town resolution ${number}, schedule B, equipment by the hour (fuel and upkeep held in the rate)`,
      edition: `adopted ${adopted}`,
      page: '5',
    },
    {
      authorityId: 'stores',
      kind: 'price-list',
      title: 'Stores price list, purchase cost delivered',
      edition: adopted,
      page: null,
    },
    { authorityId: 'water', kind: 'tariff', title: 'Water tariff, bulk rate', edition: adopted, page: '2' },
  ] as const satisfies RateBookEdition['authorities'];

const stock = (kit: string, gasket: string): RateBookEdition['stock'] => [
  {
    partNumber: 'BW-D51-BK',
    title: 'Breakaway repair kit, model BW-D51',
    unitPriceUsd: kit,
    authorityId: 'stores',
  },
  {
    partNumber: 'BW-D45-BK',
    title: 'Breakaway repair kit, model BW-D45',
    unitPriceUsd: kit,
    authorityId: 'stores',
  },
  { partNumber: 'BW-GSK', title: 'Nozzle section gasket set', unitPriceUsd: gasket, authorityId: 'stores' },
  { partNumber: 'GRS-FG', title: 'Food-grade grease, 14 oz', unitPriceUsd: '11.40', authorityId: 'stores' },
  {
    partNumber: 'BOLT-58',
    title: 'Stainless bolt and nut, 5/8 in',
    unitPriceUsd: '4.35',
    authorityId: 'stores',
  },
  { partNumber: 'CONC-60', title: 'Concrete, 60 lb bag', unitPriceUsd: '7.25', authorityId: 'stores' },
];

/** Two editions, so that the date decides. Rates are invented. */
export const demoRateBooks: readonly RateBookEdition[] = [
  {
    editionId: '2023',
    title: 'Rate book 2023',
    effectiveFrom: '2023-07-01',
    effectiveTo: '2025-06-30',
    currency: 'USD',
    rounding: 'line-to-cent',
    authorities: [...resolution('23-118', '2023-06-12')],
    labor: [
      {
        laborClass: 'crew-lead',
        title: 'Crew lead',
        hourlyUsd: '36.2200',
        fringeFraction: '0.3812',
        authorityId: 'labor',
      },
      {
        laborClass: 'utility-worker',
        title: 'Utility worker',
        hourlyUsd: '28.9400',
        fringeFraction: '0.3812',
        authorityId: 'labor',
      },
      {
        laborClass: 'equipment-operator',
        title: 'Equipment operator',
        hourlyUsd: '32.7500',
        fringeFraction: '0.3812',
        authorityId: 'labor',
      },
    ],
    machines: [
      {
        machineCode: 'TRK-1',
        title: 'Service truck, 1 ton',
        unit: 'hour',
        rateUsd: '27.50',
        standbyUsd: null,
        authorityId: 'machines',
      },
      {
        machineCode: 'EXC-M',
        title: 'Mini excavator',
        unit: 'hour',
        rateUsd: '44.10',
        standbyUsd: null,
        authorityId: 'machines',
      },
      {
        machineCode: 'ARW-1',
        title: 'Arrow board trailer',
        unit: 'hour',
        rateUsd: '6.80',
        standbyUsd: null,
        unattended: true,
        authorityId: 'machines',
      },
    ],
    stock: stock('386.50', '42.15'),
    materialHandling: { fraction: '0.05', authorityId: 'fees' },
    water: { per1000GalUsd: '6.84', authorityId: 'water' },
    flowTest: { eachUsd: '85.00', authorityId: 'fees' },
  },
  {
    editionId: '2025',
    title: 'Rate book 2025',
    effectiveFrom: '2025-07-01',
    effectiveTo: null,
    currency: 'USD',
    rounding: 'line-to-cent',
    authorities: [...resolution('25-074', '2025-06-09')],
    labor: [
      {
        laborClass: 'crew-lead',
        title: 'Crew lead',
        hourlyUsd: '38.4150',
        fringeFraction: '0.3940',
        authorityId: 'labor',
      },
      {
        laborClass: 'utility-worker',
        title: 'Utility worker',
        hourlyUsd: '30.6850',
        fringeFraction: '0.3940',
        authorityId: 'labor',
      },
      {
        laborClass: 'equipment-operator',
        title: 'Equipment operator',
        hourlyUsd: '34.7200',
        fringeFraction: '0.3940',
        authorityId: 'labor',
      },
    ],
    machines: [
      {
        machineCode: 'TRK-1',
        title: 'Service truck, 1 ton',
        unit: 'hour',
        rateUsd: '29.25',
        standbyUsd: null,
        authorityId: 'machines',
      },
      {
        machineCode: 'EXC-M',
        title: 'Mini excavator',
        unit: 'hour',
        rateUsd: '47.60',
        standbyUsd: null,
        authorityId: 'machines',
      },
      {
        machineCode: 'ARW-1',
        title: 'Arrow board trailer',
        unit: 'hour',
        rateUsd: '7.10',
        standbyUsd: null,
        unattended: true,
        authorityId: 'machines',
      },
    ],
    stock: stock('412.80', '45.90'),
    materialHandling: { fraction: '0.05', authorityId: 'fees' },
    water: { per1000GalUsd: '7.32', authorityId: 'water' },
    flowTest: { eachUsd: '92.00', authorityId: 'fees' },
  },
];
