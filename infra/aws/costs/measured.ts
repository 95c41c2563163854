import { readFileSync } from 'node:fs';
import * as z from 'zod';

const amount = z.number().min(0);

/** What calls cost, in the units in which they are billed. */
export const spent = z.strictObject({
  calls: amount,
  cpuMs: amount,
  readUnits: amount,
  writeUnits: amount,
  tableRequests: amount,
  puts: amount,
  gets: amount,
  lists: amount,
  putBytes: amount,
  gotBytes: amount,
  logBytes: amount,
});
export type SpentUnits = z.output<typeof spent>;

const publishing = z.strictObject({
  hydrants: amount,
  /** Hydrants with a page of their own: struck now or ever. */
  events: amount,
  cpuMs: amount,
  puts: amount,
  gets: amount,
  putBytes: amount,
});
export type Publishing = z.output<typeof publishing>;

/** What `npm run bench -- capacity` measured; it writes this with `UPDATE_DOCS=1`. */
export const measurements = z.strictObject({
  measuredOn: z.iso.date(),
  submissionsAStrike: amount,
  photosAStrike: amount,
  /** A strike's whole life, by function; people's looking at screens apart. */
  life: z.record(z.string(), spent),
  /** Every screen's request once, by function. */
  views: z.record(z.string(), spent),
  /** What the clock wakes, once each, with nothing to do. */
  ticks: z.record(z.string(), spent),
  /** Processor time from the start of Node to a loaded handler, ms, and the most memory that was held, MB. */
  functions: z.record(z.string(), z.strictObject({ loadedCpuMs: amount, peakMb: amount })),
  /** What one strike leaves behind, bytes: in each table, and of it what a publication reads. */
  kept: z.strictObject({
    tables: z.record(z.string(), amount),
    /** The rows of the strike, its hydrant and its claim among the projections. */
    publishedRows: amount,
    /** The strike's stream in the ledger, which a publication reads for its flow tests. */
    strikeStream: amount,
  }),
  /** The settings with which publishing was measured. */
  measuredAt: z.strictObject({
    publishEveryMinutes: z.number().positive(),
    relyForMinutes: z.number().positive(),
    digestFromHour: amount,
  }),
  /** One publication at the interval with nothing new, on average of those until every page came anew. */
  publishing: z.array(publishing),
});
export type Measurements = z.output<typeof measurements>;

export const measuredFile = new URL('./measured.json', import.meta.url);
export const readMeasured = (): Measurements =>
  measurements.parse(JSON.parse(readFileSync(measuredFile, 'utf8')));
