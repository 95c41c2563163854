import type { Measurements, Publishing } from './measured.ts';
import type { Schedule } from './schedule.ts';
import { habits, type ReckonedUtility } from './utilities.ts';

export interface OnePublication {
  readonly cpuMs: number;
  readonly puts: number;
  readonly gets: number;
  readonly putBytes: number;
  readonly readUnits: number;
  readonly tableRequests: number;
}

/** Bytes of one strongly consistent read unit, and of one page of a query (Amazon DynamoDB developer guide). */
const UNIT_BYTES = 4096;
const PAGE_BYTES = 1024 * 1024;

/** Hydrants out at one time: struck, and as many for other causes. */
const outAtOnce = ({ strikesAYear }: ReckonedUtility): number =>
  Math.max(1, Math.round((2 * strikesAYear * habits.daysOut) / 365));

/**
 * How many publications it takes until every page came anew: one stands while it can be missed once more and is still to
 * be relied on (decision 0221).
 */
const roundsOf = ({ publishEveryMinutes: every, relyForMinutes: rely }: Schedule): number =>
  Math.max(1, Math.floor(rely / every) - 1);

/**
 * One publication with nothing new, of a utility so many years at work, on average of those until every page came anew.
 * Every hydrant that was ever struck has a page, in two languages. That part grows by a fixed step an event, which two
 * measurements of one inventory give; the rest is that of the measured inventory nearest in size. All rows of strikes,
 * hydrants and claims are read, and of each strike its stream, for its flow tests.
 */
export function publishingAt(
  { publishing, measuredAt, kept }: Measurements,
  schedule: Schedule,
  utility: ReckonedUtility,
  years: number,
): OnePublication {
  const past = utility.strikesAYear * years;
  const events = outAtOnce(utility) + past;
  const base = nearestIn(publishing, utility.hydrants);
  const [few, many] = stepOf(publishing);
  const oftener = roundsOf(measuredAt) / roundsOf(schedule);
  const all = (of: (one: Publishing) => number): number => {
    const step = (of(many) - of(few)) / (many.events - few.events);
    return Math.max(0, of(base) - step * base.events) + step * events * oftener;
  };
  const rows = events * kept.publishedRows;
  return {
    cpuMs: all(({ cpuMs }) => cpuMs),
    puts: all(({ puts }) => puts),
    gets: base.gets,
    putBytes: all(({ putBytes }) => putBytes),
    readUnits: rows / UNIT_BYTES + past * Math.ceil(kept.strikeStream / UNIT_BYTES),
    tableRequests: Math.ceil(rows / PAGE_BYTES) + past,
  };
}

/** Of several of one size the one with the fewest events. */
function nearestIn(all: readonly Publishing[], hydrants: number): Publishing {
  const far = (one: Publishing): number => Math.abs(Math.log(one.hydrants / hydrants));
  const [nearest] = all.toSorted((a, b) => far(a) - far(b) || a.events - b.events);
  if (!nearest) throw new Error('no publication was measured');
  return nearest;
}

/** The two measurements of one inventory that differ in their events alone. */
function stepOf(all: readonly Publishing[]): readonly [Publishing, Publishing] {
  for (const few of all)
    for (const many of all)
      if (few.hydrants === many.hydrants && few.events < many.events) return [few, many];
  throw new Error('no inventory was measured with few and with many events');
}
