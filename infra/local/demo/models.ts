import type { BodyOf } from '../../../shared/submissions/submission.ts';

/** Three invented hydrant models with invented torques. A real utility types these from the maker's manual. */
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
    torques: [
      {
        joint: 'Breakaway flange',
        bolts: 8,
        torqueLbfFt: 72,
        manual: 'Brindlewater D-51 field manual, invented',
        page: '18',
      },
      {
        joint: 'Bonnet',
        bolts: 6,
        torqueLbfFt: 58,
        manual: 'Brindlewater D-51 field manual, invented',
        page: '21',
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
