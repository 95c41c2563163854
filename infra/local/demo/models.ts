import type { BodyOf } from '../../../shared/submissions/submission.ts';

/**
 * Three invented hydrant models with invented torques. A real utility types these from the maker's manual. The second is
 * kept as the first form of a model was, with its torques in lbf·ft alone.
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
      {
        kind: 'bolts',
        joint: 'Weather cover',
        bolts: 4,
        torque: null,
        torqueTo: null,
        unit: null,
        condition: null,
        wrenchTolerancePercent: null,
        manual: null,
        page: null,
      },
    ],
    kitContents: [
      {
        partNumber: 'BW-D51-BK',
        description: 'Breakaway repair kit: flange, stem coupling, pins, bolts, gaskets',
        quantity: 1,
      },
      { partNumber: 'BW-GSK', description: 'Nozzle section gasket set', quantity: 1 },
      { partNumber: 'GRS-FG', description: 'Food-grade grease', quantity: 1 },
    ],
    manual: 'Brindlewater D-51 field manual, invented',
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
      },
      { partNumber: 'BW-GSK', description: 'Nozzle section gasket set', quantity: 1 },
    ],
    manual: 'Brindlewater D-45 field manual, invented',
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
    torques: [],
    kitContents: [],
    manual: null,
  },
];
