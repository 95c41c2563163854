import * as z from 'zod';
import { numberIn } from '../hydraulics/flowReadings.ts';
import { ranges } from '../hydraulics/ranges.ts';
import { RATING_RESIDUAL_PSI } from '../hydraulics/ratingResidual.ts';
import { problemIssue } from '../problems/fromZod.ts';

const id = z.string().trim().min(1).max(64);

/** Where a hydrant is in the model: by its node, by a list of hydrants and nodes, by its position, or by the model's map. */
export const place = z
  .strictObject({
    hydrantId: id.optional(),
    nodeId: id.optional(),
    latitudeDeg: z.number().min(-90).max(90).optional(),
    longitudeDeg: z.number().min(-180).max(180).optional(),
    /** In the model's own coordinates. */
    x: z.number().optional(),
    y: z.number().optional(),
  })
  .superRefine(({ hydrantId, nodeId, latitudeDeg, longitudeDeg, x, y }, ctx) => {
    if ((latitudeDeg === undefined) !== (longitudeDeg === undefined))
      ctx.addIssue(
        problemIssue('required', [latitudeDeg === undefined ? 'latitudeDeg' : 'longitudeDeg'], {
          expected: 'number',
        }),
      );
    if ((x === undefined) !== (y === undefined))
      ctx.addIssue(problemIssue('required', [x === undefined ? 'x' : 'y'], { expected: 'number' }));
    if ([hydrantId, nodeId, latitudeDeg, x].every((one) => one === undefined))
      ctx.addIssue(problemIssue('place-needs-one', ['nodeId']));
  });
export type Place = z.output<typeof place>;

/** How the model's map lies, and which hydrant is which node. */
export const map = z.strictObject({
  /** Coordinate reference system of the model: `EPSG:2263`, or a proj4 definition. */
  crs: z.string().trim().min(1).max(500).optional(),
  /** Node of each hydrant, by hydrant id. */
  nodeOf: z.record(id, id).optional(),
  /** A node farther from the hydrant than this is not its node, ft. */
  withinFt: z.number().gt(0).max(5000).default(300),
});
export type ModelMap = z.output<typeof map>;

const shared = {
  map: map.optional(),
  /** Hour of the model's own clock at which to look. */
  hour: z.number().min(0).max(8760).default(0),
};

export const availableFlowQuestion = z.strictObject({
  ask: z.literal('available-flow'),
  at: place,
  ...shared,
  residualPsi: numberIn(ranges.pressurePsi).default(RATING_RESIDUAL_PSI),
  /** Flow of a field test, to see what the model leaves at it. */
  testFlowGpm: numberIn(ranges.testFlowGpm).optional(),
  /** Hydrants to look at while this one flows. */
  watch: z.array(place).max(500).default([]),
});

export const closingQuestion = z.strictObject({
  ask: z.literal('closing'),
  ...shared,
  /** Pipes, pumps or valves of the model. */
  links: z.array(id).min(1).max(200),
  watch: z.array(place).min(1).max(500),
});

export const waterBoundQuestion = z.strictObject({
  ask: z.literal('water-bound'),
  at: place,
  ...shared,
  /** The hydrant's lateral; without it the bound is that of the main. */
  lateral: z
    .strictObject({
      diameterIn: numberIn(ranges.pipeDiameterIn),
      lengthFt: numberIn(ranges.lengthFt),
      roughness: numberIn(ranges.roughness),
      minorLossK: z.number().min(0).max(100),
    })
    .optional(),
});

export const networkQuestion = z.discriminatedUnion('ask', [
  availableFlowQuestion,
  closingQuestion,
  waterBoundQuestion,
]);
export type NetworkQuestion = z.output<typeof networkQuestion>;
export type AvailableFlowQuestion = z.output<typeof availableFlowQuestion>;
export type ClosingQuestion = z.output<typeof closingQuestion>;
export type WaterBoundQuestion = z.output<typeof waterBoundQuestion>;
