import { Temporal } from 'temporal-polyfill';

/** Calendar days from one day to another (`YYYY-MM-DD`); negative when the second comes first. */
export const daysBetween = (from: string, to: string): number =>
  Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to)).days;
