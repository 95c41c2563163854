/**
 * A street network as it is kept: streets cut at every place where three or more meet, or where one ends, each with its
 * shape. Typed arrays, because a city has a million positions. Derived once from the lines of a file (`buildStreets`),
 * written to one file (`file.ts`), laid out for walking when it is read (`network.ts`).
 */
export interface Streets {
  /** Longitudes and latitudes by turns in ten-millionths of a degree (1.1 cm), all streets one behind the other. */
  readonly shapes: Int32Array;
  /** Where each street's shape begins, counted in positions; one more than there are streets, the last the end. */
  readonly shapeFrom: Uint32Array;
  /** The places that each street joins, by number. */
  readonly fromNode: Uint32Array;
  readonly toNode: Uint32Array;
  readonly nodes: number;
  /** How far a hydrant or a place may lie from the nearest street and still stand on it, feet. */
  readonly snapFt: number;
}

/** Ten-millionths of a degree in a degree. */
export const PER_DEGREE = 1e7;
