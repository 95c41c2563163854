import * as z from 'zod';
import { hydrantClasses } from '../hydraulics/hydrantClass.ts';
import { station } from './stations.ts';

/** A path of an SVG drawing and nothing else: moves, lines, ends. */
const path = z.string().regex(/^[MLZh\d .-]*$/);
const sign = z.strictObject({
  /** Place in `outOfService` of the snapshot, from 0. */
  entry: z.int().min(0),
  x: z.number(),
  y: z.number(),
  signX: z.number(),
  signY: z.number(),
});

/**
 * What the public is told of a station's area. The layer itself does not leave: of the border there is a drawing, of the
 * hydrants in service their number by class and dots in it. What is out is what the list of all has.
 */
export const publicStation = z.strictObject({
  name: station.shape.name,
  slug: station.shape.slug,
  /** Hydrants of the inventory in the area that should serve, and how many of them are out. */
  hydrants: z.int().min(0),
  outOfService: z.int().min(0),
  /** In service at the check, highest class first, those without a class last; no class with none. */
  inService: z.array(
    z.strictObject({ hydrantClass: z.enum(hydrantClasses).nullable(), count: z.int().min(1) }),
  ),
  /** Places in `outOfService` of the snapshot that lie in the area, newest first. */
  out: z.array(z.int().min(0)),
  drawing: z.strictObject({
    width: z.number(),
    height: z.number(),
    outline: path,
    dots: path,
    dotSize: z.number(),
    signs: z.array(sign),
    scale: z.strictObject({ feet: z.number(), length: z.number() }),
  }),
});
export type PublicStation = z.infer<typeof publicStation>;
