import { accountUses } from '../../../../../shared/costs/book/accounts.ts';
import { rowsOf, textOf, type Section, type Values } from '../nodes.ts';
import { overheads, flatTariffs, jobFees } from './rateBook/additions.ts';
import { payRules, labor } from './rateBook/labor.ts';
import { authority, code, title, usd, headed } from './rateBook/parts.ts';
import { machines, stock } from './rateBook/things.ts';
import { completeEdition } from './rateBookBody.ts';
import type { FormSpec } from '../spec.ts';

/** An edition of the rate book, all of it. Managers write it; what each word means is in the rate book's schema. */

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
  {
    type: 'section',
    id: 'rate-book.accounts',
    folded: true,
    nodes: accountUses.map((use) => ({
      type: 'text' as const,
      name: `accounts.${use}`,
      keypad: 'code' as const,
    })),
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
    'accounts',
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
