import { OutOfRange } from '../hydraulics/card.ts';
import { problem, type Problem } from '../problems/problem.ts';
import { flowingMinutes, type FlowingMinutes } from './duration.ts';
import { byFullBore, flowEstimates, type FlowEstimate } from './flows.ts';
import type { WaterLostInput } from './input.ts';
import { challengeWater, flowLimits, type Limit } from './limits.ts';
import { has } from './has.ts';

export interface Gallons {
  readonly lowGal: number;
  readonly bestGal: number;
  /** Null when nobody can say how long the water may have run at most. */
  readonly highGal: number | null;
}

/** `own-figure`: what was seen makes no estimate, and a named person put a figure of their own. */
export const waterBases = ['valve-held', 'no-flow-seen', 'metered', 'flow-times-time', 'own-figure'] as const;
export type WaterBasis = (typeof waterBases)[number];

export interface WaterLostEstimate extends Gallons {
  /** How it was found: nothing was lost, a meter said so, or flow times time. Words: `water.basis.<code>`. */
  readonly by: WaterBasis;
  /** The flow that was used, after limits; null when there was none or a meter gave the gallons. */
  readonly flow: (FlowEstimate & { readonly limitedBy: Limit | null }) | null;
  /** Every estimate of the flow before limits, the one used first. */
  readonly methods: readonly FlowEstimate[];
  readonly limits: readonly Limit[];
  readonly minutes: FlowingMinutes | null;
  /** Stated accuracy of a metered figure, as a share. */
  readonly accuracyFraction: number | null;
  readonly used: { readonly flushingGal: number; readonly flowTestGal: number };
  readonly claim: {
    readonly waterGal: number;
    readonly figure: 'low' | 'best' | 'high' | 'own';
    readonly reason: string | null;
  };
  /** What somebody should look at before the figure is used; the figure stands all the same. */
  readonly challenges: readonly Problem[];
}

/** A meter or a tank level, where nobody says how good it is (common practice, no source). */
export const METERED_ACCURACY_FRACTION = 0.05;

/** Three digits are all that such an estimate knows. The low one goes down and the high one up. */
function threeDigits(gallons: number, round: (value: number) => number): number {
  if (gallons <= 0) return 0;
  const step = 10 ** Math.max(0, Math.floor(Math.log10(gallons)) - 2);
  // Without it 28,300.000000004 would go up to 28,400.
  return round(Number((gallons / step).toFixed(6))) * step;
}

const rounded = (low: number, best: number, high: number | null): Gallons => ({
  lowGal: threeDigits(low, Math.floor),
  bestGal: threeDigits(best, Math.round),
  highGal: high === null ? null : threeDigits(high, Math.ceil),
});

function usedWater(used: WaterLostInput['used']): WaterLostEstimate['used'] {
  const of = (use: 'flushing' | 'flow-test'): number =>
    (used ?? [])
      .filter((one) => one.use === use)
      .reduce(
        (sum, { waterGal, flowGpm, minutes }) => sum + (waterGal ?? (flowGpm ?? 0) * (minutes ?? 0)),
        0,
      );
  return { flushingGal: Math.round(of('flushing')), flowTestGal: Math.round(of('flow-test')) };
}

function limited(flow: FlowEstimate, limit: Limit | undefined): NonNullable<WaterLostEstimate['flow']> {
  if (!limit || flow.highGpm <= limit.limitGpm) return { ...flow, limitedBy: null };
  const most = (gpm: number): number => Math.min(gpm, limit.limitGpm);
  return {
    ...flow,
    lowGpm: most(flow.lowGpm),
    bestGpm: most(flow.bestGpm),
    highGpm: most(flow.highGpm),
    limitedBy: limit,
  };
}

/** What keeps a flow from being judged, as the fields that would do it. */
function notEstimable({ found, staticPsi, flowTest }: WaterLostInput): Problem {
  if (found.flow === 'unknown' || found.flow === 'none') return problem('say-how-it-flowed', 'found.flow');
  if (!has(staticPsi) && !flowTest) return problem('flow-needs-pressure', 'staticPsi');
  return problem('full-bore-needs-lateral', 'lateral');
}

/**
 * What somebody saw wrong. A stream cannot be more than the pressure drives through its opening, or than the lateral
 * passes at full bore; less it can be, behind a valve that is half shut. Two looks at one stream ought to overlap.
 */
function disagreements(input: WaterLostInput, methods: readonly FlowEstimate[]): Problem[] {
  const [used, ...others] = methods;
  if (!used) return [];
  const apart = others.filter(
    ({ method, lowGpm, highGpm }) =>
      method !== 'class' && (highGpm < used.lowGpm || (method !== 'opening' && lowGpm > used.highGpm)),
  );
  const bore = byFullBore(input);
  return [
    ...apart.map((other) =>
      problem('methods-disagree', 'found', {
        oneGpm: used.bestGpm,
        otherGpm: other.bestGpm,
        one: used.method,
        other: other.method,
      }),
    ),
    ...(bore && used.method !== 'full-bore' && used.lowGpm > bore.highGpm
      ? [problem('water-above-full-bore', 'found', { flowGpm: used.bestGpm, limitGpm: bore.highGpm })]
      : []),
  ];
}

function claimOf(gallons: Gallons, choice: WaterLostInput['choice']): WaterLostEstimate['claim'] {
  const figure = choice?.figure ?? 'low';
  const reason = choice?.reason ?? null;
  if (figure === 'own') return { waterGal: choice?.waterGal ?? 0, figure, reason };
  if (figure === 'high') {
    if (gallons.highGal === null) throw new OutOfRange([problem('no-high-figure', 'choice.figure')]);
    return { waterGal: gallons.highGal, figure, reason };
  }
  return { waterGal: figure === 'low' ? gallons.lowGal : gallons.bestGal, figure, reason };
}

/**
 * Water lost at a strike: low, best and high, with how each was found, what limits it, and the figure that the claim
 * uses. A dry barrel whose main valve held lost none. Water used for flushing and for flow tests is counted apart.
 *
 * @throws OutOfRange with every problem when what was seen, or the times, do not make an estimate.
 */
export function estimateWaterLost(input: WaterLostInput): WaterLostEstimate {
  const { found, times, metered, choice } = input;
  const limits = flowLimits(input);
  const used = usedWater(input.used);
  const minutes = flowingMinutes(times);
  const known = Array.isArray(minutes) ? null : (minutes as FlowingMinutes);

  const answer = (
    by: WaterLostEstimate['by'],
    gallons: Gallons,
    more: Partial<WaterLostEstimate> = {},
  ): WaterLostEstimate => {
    const claim = claimOf(gallons, choice);
    // Against the longest time that it may have run: a figure is challenged only when nothing could make it true.
    const most = known?.high ?? null;
    const challenges =
      most !== null && most > 0 && claim.waterGal > 0
        ? challengeWater({ ...input, waterGal: claim.waterGal, minutes: most }, 'choice.waterGal')
        : [];
    const valveHeld = by === 'valve-held' && claim.waterGal > 0;
    return {
      by,
      ...gallons,
      flow: null,
      methods: [],
      limits,
      minutes: by === 'valve-held' || by === 'no-flow-seen' ? null : known,
      accuracyFraction: null,
      used,
      claim,
      ...more,
      challenges: [
        ...(more.challenges ?? []),
        ...(valveHeld ? [problem('claim-though-valve-held', 'choice.waterGal')] : []),
        ...challenges,
      ],
    };
  };

  const none: Gallons = { lowGal: 0, bestGal: 0, highGal: 0 };
  if (found.mainValve === 'holds') {
    const metering = metered && metered.waterGal > 0;
    return answer('valve-held', none, {
      challenges: metering ? [problem('metered-though-valve-held', 'metered.waterGal')] : [],
    });
  }
  if (metered) {
    const accuracyFraction = metered.accuracyFraction ?? METERED_ACCURACY_FRACTION;
    const { waterGal } = metered;
    const gallons = rounded(waterGal * (1 - accuracyFraction), waterGal, waterGal * (1 + accuracyFraction));
    const challenges =
      has(known?.high) && known.high > 0
        ? challengeWater({ ...input, waterGal: gallons.lowGal, minutes: known.high }, 'metered.waterGal')
        : [];
    return answer('metered', gallons, { accuracyFraction, challenges });
  }
  if (found.flow === 'none' && found.mainValve === 'unknown') return answer('no-flow-seen', none);

  const methods = flowEstimates(input);
  const [first] = methods;
  const problems = [
    ...(first ? [] : [notEstimable(input)]),
    ...(Array.isArray(minutes) ? (minutes as readonly Problem[]) : []),
  ];
  if (!first || !known) {
    if (choice?.figure !== 'own' || !has(choice.waterGal)) throw new OutOfRange(problems);
    return answer('own-figure', { lowGal: 0, bestGal: choice.waterGal, highGal: null }, { methods });
  }
  const flow = limited(first, limits[0]);
  const gallons = rounded(
    flow.lowGpm * known.low,
    flow.bestGpm * known.best,
    known.high === null ? null : flow.highGpm * known.high,
  );
  return answer('flow-times-time', gallons, { flow, methods, challenges: disagreements(input, methods) });
}
