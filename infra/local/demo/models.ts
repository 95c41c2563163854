import type { BodyOf } from '../../../shared/submissions/submission.ts';

type Joint = NonNullable<BodyOf<'hydrant-model'>['joints']>[number];
const noTorqueOnRecord = (joint: string): Joint => ({
  kind: 'bolts',
  joint,
  bolts: 4,
  torque: null,
  torqueTo: null,
  unit: null,
  condition: null,
  wrenchTolerancePercent: null,
  manual: null,
  page: null,
});

/**
 * Three invented hydrant models with invented torques, kits, wrench sizes and lubricants. A real utility types these from
 * the maker's manual. The second is kept as the first form of a model was, with its torques in lbf·ft alone. A joint of
 * the first and one of the third have no torque on record, as happens: the forms then send to the maker's manual.
 */
export const demoModels: readonly BodyOf<'hydrant-model'>[] = [
  {
    modelId: 'BW-D51',
    name: 'Brindlewater D-51 (5 1/4 in main valve)',
    type: 'dry-barrel',
    opens: 'left',
    outlets: [
      { kind: 'hose', diameterIn: 2.5 },
      { kind: 'hose', diameterIn: 2.5 },
      { kind: 'pumper', diameterIn: 4.5 },
    ],
    joints: [
      {
        kind: 'bolts',
        joint: 'Breakaway flange',
        bolts: 8,
        torque: 72,
        torqueTo: null,
        unit: 'lbf.ft',
        condition: 'lubricated',
        wrenchTolerancePercent: 4,
        manual: 'Brindlewater D-51 field manual, invented',
        page: '18',
      },
      {
        kind: 'back-off',
        joint: 'Thrust nut',
        bolts: null,
        turns: 0.125,
        turnsTo: 0.25,
        lock: true,
        manual: 'Brindlewater D-51 field manual, invented',
        page: '20',
      },
      {
        kind: 'bolts',
        joint: 'Bonnet',
        bolts: 6,
        torque: 8,
        torqueTo: 9,
        unit: 'kgf.m',
        condition: 'dry',
        wrenchTolerancePercent: null,
        manual: 'Brindlewater D-51 field manual, invented',
        page: '21',
      },
      noTorqueOnRecord('Weather cover'),
    ],
    kitContents: [
      {
        partNumber: 'BW-D51-BK',
        description: 'Breakaway repair kit: flange, stem coupling, pins, bolts, gaskets',
        quantity: 1,
        replaces: 'The parted flange, stem coupling and bolts',
      },
      {
        partNumber: 'BW-GSK',
        description: 'Nozzle section gasket set',
        quantity: 1,
        replaces: 'Every gasket above the ground line',
      },
      { partNumber: 'GRS-FG', description: 'Food-grade grease', quantity: 1, replaces: null },
    ],
    manual: 'Brindlewater D-51 field manual, invented',
    buryDepth: { fromFt: 3, toFt: 8 },
    wrenches: [
      { fits: 'Operating nut', shape: 'pentagon', size: 1.5, unit: 'in', measured: 'point-to-flat' },
      { fits: 'Breakaway flange bolts', shape: 'hex', size: 1.0625, unit: 'in', measured: 'flat-to-flat' },
      { fits: 'Bonnet bolts', shape: 'hex', size: 24, unit: 'mm', measured: 'flat-to-flat' },
    ],
    lubricants: [
      {
        where: 'Stem threads',
        what: 'Food-grade grease',
        manual: 'Brindlewater D-51 field manual, invented',
        page: '19',
      },
      {
        where: 'Flange bolts',
        what: 'The same grease, on threads and under the nuts',
        manual: 'Brindlewater D-51 field manual, invented',
        page: '18',
      },
    ],
  },
  {
    modelId: 'BW-D45',
    name: 'Brindlewater D-45 (4 1/2 in main valve)',
    type: 'dry-barrel',
    opens: 'left',
    outlets: [
      { kind: 'hose', diameterIn: 2.5 },
      { kind: 'hose', diameterIn: 2.5 },
      { kind: 'pumper', diameterIn: 4.5 },
    ],
    torques: [
      {
        joint: 'Breakaway flange',
        bolts: 6,
        torqueLbfFt: 66,
        manual: 'Brindlewater D-45 field manual, invented',
        page: '16',
      },
    ],
    kitContents: [
      {
        partNumber: 'BW-D45-BK',
        description: 'Breakaway repair kit: flange, stem coupling, pins, bolts, gaskets',
        quantity: 1,
        replaces: 'The parted flange, stem coupling and bolts',
      },
      { partNumber: 'BW-GSK', description: 'Nozzle section gasket set', quantity: 1 },
    ],
    manual: 'Brindlewater D-45 field manual, invented',
    buryDepth: { fromFt: 2.5, toFt: 6 },
    wrenches: [
      { fits: 'Operating nut', shape: 'pentagon', size: 1.5, unit: 'in', measured: 'point-to-flat' },
      { fits: 'Breakaway flange bolts', shape: 'hex', size: 0.9375, unit: 'in', measured: 'flat-to-flat' },
    ],
    lubricants: [
      {
        where: 'Oil reservoir under the bonnet',
        what: 'Food-grade oil, half a pint',
        manual: 'Brindlewater D-45 field manual, invented',
        page: '17',
      },
    ],
  },
  {
    modelId: 'LM-W3',
    name: 'Lowmarsh W-3 (wet barrel)',
    type: 'wet-barrel',
    opens: 'left',
    outlets: [
      { kind: 'hose', diameterIn: 2.5 },
      { kind: 'hose', diameterIn: 2.5 },
      { kind: 'pumper', diameterIn: 4 },
    ],
    joints: [
      {
        kind: 'bolts',
        joint: 'Base flange (break-off bolts)',
        bolts: 6,
        torque: 78,
        torqueTo: 84,
        unit: 'lbf.ft',
        condition: 'lubricated',
        wrenchTolerancePercent: 4,
        manual: 'Lowmarsh W-3 maintenance sheet, invented',
        page: '5',
      },
      // Left open, so that the demo also shows what a form says where the record has no torque.
      noTorqueOnRecord('Outlet valve bonnets'),
    ],
    kitContents: [
      {
        partNumber: 'LM-W3-BO',
        description: 'Break-off bolts and base gasket',
        quantity: 1,
        replaces: 'The sheared bolts and the gasket under the barrel',
      },
    ],
    manual: 'Lowmarsh W-3 maintenance sheet, invented',
    wrenches: [
      {
        fits: 'Each outlet’s operating nut',
        shape: 'square',
        size: 1.25,
        unit: 'in',
        measured: 'flat-to-flat',
      },
      { fits: 'Base flange bolts', shape: 'hex', size: 1.125, unit: 'in', measured: 'flat-to-flat' },
    ],
    lubricants: [
      {
        where: 'Outlet valve stems',
        what: 'Food-grade grease',
        manual: 'Lowmarsh W-3 maintenance sheet, invented',
        page: '6',
      },
    ],
  },
];
