import type { Source } from './card.ts';

export const outletShapeIds = ['rounded', 'square', 'projecting'] as const;

/** The three outlets a crew can tell by feel, and the coefficient of each. Names and pictures: `hydraulics.shape.*`. */
export interface OutletShape {
  readonly id: (typeof outletShapeIds)[number];
  readonly coefficient: number;
}

export const outletShapes: readonly OutletShape[] = [
  { id: 'rounded', coefficient: 0.9 },
  { id: 'square', coefficient: 0.8 },
  { id: 'projecting', coefficient: 0.7 },
];

export const outletShapeSources: readonly Source[] = [
  { text: 'values: N.C. Office of State Fire Marshal drill sheet, 2010', marker: 'seen' },
  { text: 'which shape has which: NFPA 291', marker: 'memory' },
];
