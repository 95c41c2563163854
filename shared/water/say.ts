import { formatNumber, formatParams, formatQuantity, type Reader } from '../units/format.ts';
import type { Problem } from '../problems/problem.ts';
import { hasWords, say, sayProblem } from '../words/index.ts';
import type { WaterLostEstimate } from './estimate.ts';

/** A problem or challenge with its quantities written out in the reader's units. */
export function sayQuantityProblem(
  { code, params }: Pick<Problem, 'code' | 'params'>,
  reader: Reader,
): string {
  const key = `problem.${code}`;
  return hasWords(key)
    ? say(reader.locale, key, formatParams(params, reader))
    : sayProblem(reader.locale, { code, params });
}

const percent = (fraction: number): number => Math.round(fraction * 100);

function sayFlow({ flow, accuracyFraction, bestGal, by }: WaterLostEstimate, reader: Reader): string[] {
  const { locale } = reader;
  if (by === 'metered')
    return [
      say(locale, 'water.said.metered', {
        best: formatQuantity(bestGal, 'gal', reader),
        percent: percent(accuracyFraction ?? 0),
      }),
    ];
  if (!flow) return [];
  const gpm = (value: number): string => formatQuantity(value, 'gpm', reader);
  const accuracy =
    flow.accuracyFraction === null
      ? ''
      : say(locale, 'water.said.accuracy', { percent: percent(flow.accuracyFraction) });
  const said = say(locale, 'water.said.flow', {
    method: say(locale, `water.method.${flow.method}`),
    best: gpm(flow.bestGpm),
    low: gpm(flow.lowGpm),
    high: gpm(flow.highGpm),
    accuracy: flow.limitedBy ? '' : accuracy,
  });
  if (!flow.limitedBy) return [said];
  const { by: limitedBy, limitGpm } = flow.limitedBy;
  const limit = { limit: gpm(limitGpm), by: say(locale, `water.limit.${limitedBy}`) };
  return [said, say(locale, 'water.said.limited', limit)];
}

function sayMinutes({ minutes, by }: WaterLostEstimate, { locale }: Reader): string[] {
  if (!minutes || by === 'metered') return [];
  const words = (value: number): string => say(locale, 'water.said.minute', { minutes: Math.round(value) });
  const { low, best, high } = minutes;
  if (high === null) return [say(locale, 'water.said.minutes-open', { best: words(best), low: words(low) })];
  if (low === high) return [say(locale, 'water.said.minutes-exact', { best: words(best) })];
  return [say(locale, 'water.said.minutes', { best: words(best), low: words(low), high: words(high) })];
}

/**
 * What a figure of water lost stands on, in sentences that an insurer may read: the method and its stated accuracy, what
 * limits it, how long it ran, the three figures and which of them is claimed.
 */
export function sayWaterLost(estimate: WaterLostEstimate, reader: Reader): string {
  const { locale } = reader;
  const { by, lowGal, bestGal, highGal, claim, used } = estimate;
  const gal = (value: number): string => formatQuantity(value, 'gal', reader);
  const none = by === 'valve-held' || by === 'no-flow-seen';
  const unseen = by === 'own-figure';
  const gallons =
    highGal === null
      ? say(locale, 'water.said.gallons-open', { low: gal(lowGal), best: gal(bestGal) })
      : say(locale, 'water.said.gallons', { low: gal(lowGal), best: gal(bestGal), high: gal(highGal) });
  const figure = say(locale, 'water.said.claim', {
    figure: say(locale, `water.figure.${claim.figure}`),
    claim: gal(claim.waterGal),
  });
  return [
    ...(none || unseen ? [say(locale, `water.said.${by}`)] : []),
    ...sayFlow(estimate, reader),
    ...sayMinutes(estimate, reader),
    ...(none || unseen ? [] : [gallons]),
    ...(none && claim.waterGal === 0 ? [] : [figure]),
    ...(claim.reason === null ? [] : [say(locale, 'water.said.reason', { reason: claim.reason })]),
    ...(used.flushingGal + used.flowTestGal > 0
      ? [
          say(locale, 'water.said.used', {
            flushing: gal(used.flushingGal),
            flowTest: gal(used.flowTestGal),
          }),
        ]
      : []),
  ].join(' ');
}

/** A share as percent for a label: 0.14 is `14%` in English. */
export const sayPercent = (fraction: number, { locale }: Reader): string =>
  `${formatNumber(fraction * 100, locale, 0)}${locale === 'es' ? ' %' : '%'}`;
