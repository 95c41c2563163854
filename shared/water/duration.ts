import { problem, type Problem } from '../problems/problem.ts';
import type { WaterLostInput } from './input.ts';
import { has } from './has.ts';

/** How long the water ran, minutes. `high` is null when nobody can say how early it may have begun or how late ended. */
export interface FlowingMinutes {
  readonly low: number;
  readonly best: number;
  readonly high: number | null;
  /** How each end is known. */
  readonly start: 'known' | 'bounded' | 'first-call';
  readonly end: 'known' | 'bounded' | 'last-seen-flowing';
}

export type Times = WaterLostInput['times'];

interface Start {
  /** Null when nobody saw it sound before. */
  readonly earliest: number | null;
  readonly best: number;
  readonly latest: number;
  readonly known: FlowingMinutes['start'];
}

interface End {
  readonly earliest: number;
  readonly best: number;
  /** Infinity when nobody saw it shut. */
  readonly latest: number;
  readonly known: FlowingMinutes['end'];
}

const at = (instant: string | null | undefined): number | null =>
  typeof instant === 'string' ? Date.parse(instant) : null;
const middle = (one: number, other: number): number => (one + other) / 2;

function startOf(times: Times): Start | Problem {
  const struck = at(times.struckAt);
  const exact = times.struckAtBasis !== 'bounded' && times.struckAtBasis !== 'unknown';
  if (struck !== null && exact) return { earliest: struck, best: struck, latest: struck, known: 'known' };
  const earliest = at(times.lastSeenSoundAt);
  const latest = at(times.firstCallAt) ?? struck;
  if (latest === null) return problem('start-of-flow-unknown', 'times.struckAt');
  if (earliest === null) return { earliest, best: struck ?? latest, latest, known: 'first-call' };
  if (earliest > latest) return problem('seen-sound-after-call', 'times.lastSeenSoundAt');
  const inside = struck !== null && struck >= earliest && struck <= latest;
  return { earliest, best: inside ? struck : middle(earliest, latest), latest, known: 'bounded' };
}

function endOf(times: Times): End | Problem {
  const shut = at(times.waterShutAt);
  if (shut !== null) return { earliest: shut, best: shut, latest: shut, known: 'known' };
  const flowing = at(times.lastSeenFlowingAt);
  const dry = at(times.firstSeenShutAt);
  if (flowing === null) return problem('end-of-flow-unknown', 'times.waterShutAt');
  if (dry === null)
    return { earliest: flowing, best: flowing, latest: Number.POSITIVE_INFINITY, known: 'last-seen-flowing' };
  if (dry < flowing) return problem('seen-shut-before-flowing', 'times.firstSeenShutAt');
  return { earliest: flowing, best: middle(flowing, dry), latest: dry, known: 'bounded' };
}

const isProblem = (value: object): value is Problem => 'code' in value;
const minutes = (fromMs: number, toMs: number): number => (toMs - fromMs) / 60_000;

/**
 * How long the water ran, from what is known of both ends. The least time runs from the latest possible start to the
 * earliest possible end; the best from the stated or else the middle times; the most between the outermost.
 *
 * @returns the problems, when an end is not known at all or the times contradict each other
 */
export function flowingMinutes(times: Times): FlowingMinutes | readonly Problem[] {
  const start = startOf(times);
  const end = endOf(times);
  if (isProblem(start) || isProblem(end)) return [start, end].filter(isProblem);
  if (end.latest <= (start.earliest ?? start.best))
    return [
      problem('shut-before-start', !has(times.waterShutAt) ? 'times.firstSeenShutAt' : 'times.waterShutAt'),
    ];
  const most = start.earliest === null ? Number.POSITIVE_INFINITY : minutes(start.earliest, end.latest);
  return {
    // Shut by the time of the first call, at the earliest: it may have run for no time at all.
    low: Math.max(0, minutes(start.latest, end.earliest)),
    best: Math.max(0, minutes(start.best, end.best)),
    high: Number.isFinite(most) ? most : null,
    start: start.known,
    end: end.known,
  };
}
