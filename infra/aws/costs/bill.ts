import { families } from '../../../shared/deployment/routes.ts';
import { asInstalled } from '../bundling.ts';
import { memoryMb } from '../memory.ts';
import type { FunctionName } from '../permissions.ts';
import { CHECKED_EVERY_MINUTES } from '../watch/alarms.ts';
import type { Measurements, SpentUnits } from './measured.ts';
import { prices, type PriceName } from './prices.ts';
import { publishingAt } from './publishing.ts';
import type { Schedule } from './schedule.ts';
import { nothing, plus, times, type Units } from './units.ts';
import { habits, logBytes, publishingAtOnce, waitMs, type ReckonedUtility } from './utilities.ts';

/** What a template deploys of that which costs by the month, whatever happens. */
export interface Standing {
  readonly alarmMetrics: number;
  readonly countedMetrics: number;
  readonly dashboards: number;
  readonly keys: number;
}

export interface BillLine {
  readonly what: LineName;
  readonly usd: number;
}

/** The lines of a bill, and the prices that each is made of. */
export const lines = {
  tables: ['tableWriteUnit', 'tableReadUnit', 'tableGb', 'tableBackupGb'],
  objects: ['objectPut', 'objectGet', 'objectGb'],
  functions: ['functionCall', 'functionArmGbSecond', 'functionX86GbSecond'],
  gateway: ['apiRequest'],
  edge: ['edgeRequest', 'edgeFunction', 'edgeGb'],
  watching: ['alarmMetric', 'customMetric', 'dashboard', 'logGb'],
  signing: ['key', 'signature'],
  people: ['person'],
  messages: ['mail', 'text'],
  events: ['event'],
} as const satisfies Record<string, readonly PriceName[]>;
export type LineName = keyof typeof lines;

const DAYS = 30;
const HOURS = 24 * DAYS;
const MINUTES = 60 * HOURS;
const GB = 1e9;
/** MB at which Lambda gives one whole processor (AWS Lambda developer guide, "Memory"). */
const WHOLE_PROCESSOR_MB = 1769;

export interface Question {
  readonly measured: Measurements;
  readonly standing: Standing;
  readonly schedule: Schedule;
  readonly utility: ReckonedUtility;
  /** How long it has been at work: what is kept grows. */
  readonly years: number;
}

const costOf = (used: Units, names: readonly PriceName[]): number =>
  names.reduce((sum, name) => sum + used[name] * prices[name].usd, 0);

/** What a month costs, line by line, US dollars, at list prices and with no free allowance. */
export function billOf(question: Question): readonly BillLine[] {
  const used = unitsOf(question);
  return (Object.keys(lines) as LineName[]).map((what) => ({
    what,
    usd: costOf(used, lines[what]),
  }));
}

/** What of it are the public pages: reading, making and keeping them, readers apart. */
export const publishingCostOf = (question: Question): number =>
  costOf(ofPublishing(question), Object.values(lines).flat());

export const totalOf = (bill: readonly BillLine[]): number => bill.reduce((sum, { usd }) => sum + usd, 0);

/** How much of everything a month uses. */
export function unitsOf(question: Question): Units {
  const { measured, standing, schedule, utility, years } = question;
  const strikes = utility.strikesAYear / 12;
  const views = strikes * habits.viewsOfEachScreenAStrike;
  // As often as the rules of service/dispatchMessages.ts, service/following.ts and service/letters.ts wake them.
  const ticks: Readonly<Record<string, number>> = {
    dispatchSend: MINUTES,
    outgoing: MINUTES / CHECKED_EVERY_MINUTES,
    digest: DAYS * (24 - schedule.digestFromHour),
  };
  const all = [
    ...ofCalls(measured, measured.life, strikes, 'cold'),
    ...ofCalls(measured, measured.views, views, 'cold'),
    ...Object.entries(measured.ticks).flatMap(([name, spent]) =>
      ofCalls(measured, { [name]: spent }, ticks[name] ?? 0, 'warm'),
    ),
    ofPublishing(question),
    ofKeeping(measured, utility, years),
    ofReaders(utility),
    {
      ...nothing,
      alarmMetric: standing.alarmMetrics,
      customMetric: standing.countedMetrics,
      dashboard: standing.dashboards,
      key: standing.keys,
      person: utility.people,
      signature: strikes,
      mail: strikes * habits.mailsAStrike + DAYS * habits.lettersADay,
      text: strikes * habits.textsAStrike,
      event: strikes * habits.photosAStrike + (ticks['digest'] ?? 0),
    },
  ];
  return all.reduce(plus, nothing);
}

/** Families that the gateway calls; the others wake of themselves. */
const routed: ReadonlySet<string> = new Set(families);

/**
 * Calls of functions. What happens seldom starts a process each time (`cold`), and starting is billed since August 2025.
 * Photos are counted as many as are measured and scaled by the habits; pages that follow a fact are `ofPublishing`.
 */
function ofCalls(
  { functions, photosAStrike }: Measurements,
  spentBy: Readonly<Record<string, SpentUnits>>,
  count: number,
  start: 'cold' | 'warm',
): Units[] {
  return Object.entries(spentBy)
    .filter(([name]) => name !== 'publish')
    .map(([name, spent]) => {
      const scale = name === 'evidence' || name === 'display' ? habits.photosAStrike / photosAStrike : 1;
      const loading = start === 'cold' ? (functions[name]?.loadedCpuMs ?? 0) * spent.calls : 0;
      const requests = { table: spent.tableRequests, object: spent.puts + spent.gets + spent.lists };
      const waited = requests.table * waitMs.table + requests.object * waitMs.object;
      return times(
        {
          ...nothing,
          tableReadUnit: spent.readUnits,
          tableWriteUnit: spent.writeUnits,
          objectPut: spent.puts + spent.lists,
          objectGet: spent.gets,
          functionCall: spent.calls,
          ...gbSeconds(name as FunctionName, spent.cpuMs + loading, waited),
          apiRequest: routed.has(name) ? spent.calls : 0,
          edgeRequest: routed.has(name) ? spent.calls : 0,
          logGb:
            (spent.logBytes +
              spent.calls * logBytes.call +
              (routed.has(name) ? spent.calls * logBytes.request : 0)) /
            GB,
        },
        count * scale,
      );
    });
}

/** A function with a part of a processor takes as much longer; it is billed by all its memory meanwhile. */
function gbSeconds(name: FunctionName, cpuMs: number, waitedMs: number): Partial<Units> {
  const memory = memoryMb[name];
  const seconds = (cpuMs * Math.max(1, WHOLE_PROCESSOR_MB / memory) + waitedMs) / 1000;
  const used = (memory / 1024) * seconds;
  return asInstalled[name] ? { functionX86GbSecond: used } : { functionArmGbSecond: used };
}

/** Publications at the interval, day and night, and one more for each fact. */
function ofPublishing({ measured, schedule, utility, years }: Question): Units {
  const facts = (utility.strikesAYear / 12) * (measured.life['publish']?.calls ?? 0);
  const one = publishingAt(measured, schedule, utility, years);
  const requests =
    Math.ceil(one.tableRequests / publishingAtOnce.table) * waitMs.table +
    Math.ceil(one.puts / publishingAtOnce.object) * waitMs.object;
  return times(
    {
      ...nothing,
      tableReadUnit: one.readUnits,
      objectPut: one.puts,
      objectGet: one.gets,
      functionCall: 1,
      ...gbSeconds('publish', one.cpuMs, requests),
      logGb: (logBytes.call + logBytes.publication) / GB,
      // An older version of a page is kept for 30 days: at any time, about what a month writes.
      objectGb: one.putBytes / GB,
    },
    MINUTES / schedule.publishEveryMinutes + facts,
  );
}

/** What has gathered since the start. */
function ofKeeping({ kept, life }: Measurements, utility: ReckonedUtility, years: number): Units {
  const strikes = utility.strikesAYear * years;
  const tables = Object.values(kept.tables).reduce((sum, bytes) => sum + bytes, 0);
  const papers = (life['packetJobs']?.putBytes ?? 0) + (life['packets']?.putBytes ?? 0);
  const photos = habits.photosAStrike * habits.photoMb * 1e6;
  return {
    ...nothing,
    tableGb: (strikes * tables) / GB,
    tableBackupGb: (strikes * tables) / GB,
    // The archive of a packet holds its photos once more.
    objectGb: (strikes * (papers + 2 * photos)) / GB,
  };
}

function ofReaders({ pageViews, wallScreens }: ReckonedUtility): Units {
  const views = pageViews + wallScreens * MINUTES;
  const requests = pageViews * habits.requestsAPageView + wallScreens * MINUTES;
  return {
    ...nothing,
    edgeRequest: requests,
    edgeFunction: requests,
    edgeGb: (views * habits.kbAPageView * 1000) / GB,
    // At the edge for a minute: of many readers' requests some come through; here all do.
    objectGet: requests,
  };
}
