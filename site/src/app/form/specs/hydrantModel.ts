import { hydrantTypes } from '../../../../../shared/inventory/hydrant.ts';
import { wrenchMeasures, wrenchShapes, wrenchUnits } from '../../../../../shared/models/wrench.ts';
import { boltConditions } from '../../../../../shared/tightening/record.ts';
import { torqueUnits } from '../../../../../shared/tightening/torqueUnits.ts';
import type { List } from '../nodes.ts';
import type { FormSpec } from '../spec.ts';
import { answered } from './parts.ts';

const joints: List = {
  type: 'list',
  name: 'joints',
  optional: true,
  atMost: 20,
  blank: { kind: 'bolts' },
  item: [
    { type: 'choice', name: 'kind', list: 'jointKind', choices: ['bolts', 'back-off'], required: true },
    { type: 'text', name: 'joint', required: true },
    { type: 'number', name: 'bolts', whole: true },
    {
      type: 'when',
      test: answered('kind', 'bolts'),
      absent: true,
      nodes: [
        { type: 'number', name: 'torque' },
        { type: 'number', name: 'torqueTo' },
        { type: 'choice', name: 'unit', list: 'torqueUnit', choices: torqueUnits },
        { type: 'choice', name: 'condition', list: 'boltCondition', choices: boltConditions },
        { type: 'number', name: 'wrenchTolerancePercent' },
      ],
    },
    {
      type: 'when',
      test: answered('kind', 'back-off'),
      absent: true,
      nodes: [
        { type: 'number', name: 'turns', required: true },
        { type: 'number', name: 'turnsTo' },
        { type: 'yes-no', name: 'lock', required: true },
      ],
    },
    { type: 'text', name: 'manual' },
    { type: 'text', name: 'page' },
  ],
};

const wrenches: List = {
  type: 'list',
  name: 'wrenches',
  optional: true,
  atMost: 20,
  blank: { unit: 'in' },
  item: [
    { type: 'text', name: 'fits', required: true },
    { type: 'choice', name: 'shape', list: 'wrenchShape', choices: wrenchShapes, required: true },
    { type: 'number', name: 'size', required: true },
    { type: 'choice', name: 'unit', list: 'wrenchUnit', choices: wrenchUnits, required: true },
    { type: 'choice', name: 'measured', list: 'wrenchMeasure', choices: wrenchMeasures },
  ],
};

const lubricants: List = {
  type: 'list',
  name: 'lubricants',
  optional: true,
  atMost: 20,
  blank: {},
  item: [
    { type: 'text', name: 'where', required: true },
    { type: 'text', name: 'what', required: true },
    { type: 'text', name: 'manual' },
    { type: 'text', name: 'page' },
  ],
};

/** A model as its maker's manual has it; a manager writes it, everybody reads it. */
export const hydrantModelSpec: FormSpec = {
  kind: 'hydrant-model',
  nullable: ['buryDepth'],
  nodes: [
    {
      type: 'section',
      id: 'hydrant-model.which',
      nodes: [
        { type: 'text', name: 'modelId', keypad: 'code', required: true },
        { type: 'text', name: 'name', required: true },
        { type: 'choice', name: 'type', list: 'hydrantType', choices: hydrantTypes, required: true },
        {
          type: 'choice',
          name: 'opens',
          list: 'opens',
          choices: ['left', 'right', 'unknown'],
          whenBlank: 'unknown',
        },
        { type: 'text', name: 'manual' },
        {
          type: 'list',
          name: 'outlets',
          atMost: 8,
          blank: {},
          item: [
            { type: 'choice', name: 'kind', list: 'outlet', choices: ['hose', 'pumper'], required: true },
            { type: 'quantity', name: 'diameterIn', unit: 'in', required: true },
          ],
        },
      ],
    },
    {
      type: 'section',
      id: 'hydrant-model.bury',
      nodes: [
        { type: 'quantity', name: 'buryDepth.fromFt', unit: 'ft' },
        { type: 'quantity', name: 'buryDepth.toFt', unit: 'ft' },
      ],
    },
    { type: 'section', id: 'hydrant-model.wrenches', nodes: [wrenches] },
    { type: 'section', id: 'hydrant-model.lubricants', nodes: [lubricants] },
    { type: 'section', id: 'hydrant-model.joints', nodes: [joints] },
    {
      type: 'section',
      id: 'hydrant-model.kit',
      nodes: [
        {
          type: 'list',
          name: 'kitContents',
          atMost: 60,
          blank: { quantity: '1' },
          item: [
            {
              type: 'text',
              name: 'partNumber',
              keypad: 'code',
              codes: { of: 'stock', titleTo: 'description' },
              required: true,
            },
            { type: 'text', name: 'description', required: true },
            { type: 'text', name: 'replaces', optional: true },
            { type: 'number', name: 'quantity', whole: true, required: true },
          ],
        },
      ],
    },
  ],
  blank: () => ({
    opens: 'unknown',
    outlets: [],
    wrenches: [],
    lubricants: [],
    joints: [],
    kitContents: [],
  }),
  occurredAt: () => null,
};
