import { creditKinds } from '../../../../../shared/submissions/forms/credit.ts';
import { noBettermentBecause } from '../../../../../shared/submissions/forms/counterCalculation.ts';
import { documentKinds } from '../../../../../shared/submissions/forms/documents.ts';
import type { Leaf } from '../nodes.ts';
import { textOf } from '../nodes.ts';
import { writeCents } from '../number.ts';
import type { FormSpec } from '../spec.ts';
import { fileFields, intervals, note } from './parts.ts';

/** The desk's forms about the bill: papers, credits, hours of the week, time on the claim, the counter-calculation. */

export const documentsSpec: FormSpec = {
  kind: 'documents',
  nullable: [],
  nodes: [
    {
      type: 'list',
      name: 'documents',
      as: 'photos',
      atMost: 40,
      item: fileFields(
        ['document', 'overall', 'mid', 'close', 'scale', 'other'],
        [
          { type: 'choice', name: 'what', list: 'document', choices: documentKinds, required: true },
          { type: 'text', name: 'title', required: true },
          { type: 'text', name: 'number', keypad: 'code' },
        ],
      ),
    },
    note,
  ],
  blank: () => ({}),
  occurredAt: () => null,
};

export const creditSpec: FormSpec = {
  kind: 'credit',
  nullable: [],
  nodes: [
    { type: 'choice', name: 'credit', list: 'credit', choices: creditKinds, required: true },
    { type: 'text', name: 'title', required: true },
    { type: 'money', name: 'amountCents', required: true },
    { type: 'text', name: 'basis', lines: 3, required: true },
    { type: 'kept', name: 'objection', optional: true },
  ],
  // From an objection that was accepted: what comes off, how much at most, and why.
  blank: ({ asked }) => ({
    ...(asked['objection'] === undefined ? {} : { credit: 'other', objection: asked['objection'] }),
    title: asked['title'] ?? '',
    basis: asked['basis'] ?? '',
    amountCents: /^\d{1,12}$/.test(asked['cents'] ?? '') ? writeCents(Number(asked['cents'])) : '',
  }),
  occurredAt: () => null,
};

export const weekHoursSpec: FormSpec = {
  kind: 'week-hours',
  nullable: [],
  nodes: [
    {
      type: 'list',
      name: 'weeks',
      atMost: 60,
      blank: {},
      item: [
        { type: 'person', name: 'workerId', required: true },
        { type: 'date', name: 'weekStartsOn', required: true },
        { type: 'text', name: 'hours', keypad: 'code', required: true },
      ],
    },
    { type: 'text', name: 'source', required: true },
  ],
  blank: () => ({ weeks: [{}] }),
  occurredAt: () => null,
};

const laborClass: Leaf = { type: 'text', name: 'laborClass', keypad: 'code', required: true };

export const claimHandlingSpec: FormSpec = {
  kind: 'claim-handling',
  nullable: [],
  nodes: [
    { type: 'person', name: 'workerId', required: true },
    laborClass,
    intervals('work', 'field.claim-handling.work'),
    { type: 'text', name: 'what', required: true },
  ],
  blank: ({ personId }) => ({ workerId: personId, work: [{ from: '', to: '' }] }),
  occurredAt: () => null,
};

export const counterCalculationSpec: FormSpec = {
  kind: 'counter-calculation',
  nullable: ['applied'],
  nodes: [
    {
      type: 'section',
      id: 'counter.figures',
      nodes: [
        { type: 'text', name: 'component', required: true },
        { type: 'date', name: 'installedOn', required: true },
        { type: 'number', name: 'serviceLifeYears', required: true },
        { type: 'text', name: 'serviceLifeSource', required: true },
        { type: 'money', name: 'originalCostCents', required: true },
        { type: 'money', name: 'salvageCents', required: true },
        { type: 'money', name: 'bettermentCents', required: true },
        {
          type: 'when',
          test: ({ bettermentCents }) => Number(textOf(bettermentCents) || '0') === 0,
          nodes: [
            {
              type: 'choice',
              name: 'noBetterment',
              list: 'noBetterment',
              choices: noBettermentBecause,
            },
          ],
        },
      ],
    },
    {
      type: 'section',
      id: 'counter.applied',
      nodes: [{ type: 'text', name: 'applied.because', lines: 3 }, note],
    },
  ],
  blank: ({ hydrant }) => ({
    installedOn: hydrant?.installedOn ?? '',
    salvageCents: '0',
    bettermentCents: '0',
  }),
  occurredAt: () => null,
};
