import * as z from 'zod';

export const publicPosition = z.strictObject({
  latitudeDeg: z.number().min(-90).max(90),
  longitudeDeg: z.number().min(-180).max(180),
});
export type PublicPosition = z.infer<typeof publicPosition>;

/** A position as exactly as the utility publishes places. */
export function roundedPosition(position: PublicPosition, decimals: number): PublicPosition {
  const scale = 10 ** decimals;
  const round = (value: number): number => Math.round(value * scale) / scale;
  return { latitudeDeg: round(position.latitudeDeg), longitudeDeg: round(position.longitudeDeg) };
}
