import { creditRings, FARTHEST_FT } from '../../../../shared/fireCover/distanceCredit.ts';
import { groundOf } from '../../../../shared/fireCover/ground.ts';
import type { PublicCover, PublicFireCover, PublicLostArea } from '../../../../shared/public/coverSchema.ts';
import { convert } from '../../../../shared/units/convert.ts';
import { formatNumber, formatQuantity } from '../../../../shared/units/format.ts';
import type { Reader } from '../reader.ts';

/** A distance that a rule or a setting states in whole feet: never paced, so that 300 ft stays 300 ft. */
export const statedFeet = (reader: Reader, feet: number): string =>
  reader.both((system) =>
    system === 'us'
      ? formatQuantity(feet, 'ft', { system, locale: reader.locale })
      : formatQuantity(Math.round(convert(feet, 'ft', 'm')), 'm', { system, locale: reader.locale }),
  );

/** The farthest that a hydrant counts. */
export const reachWords = (reader: Reader): string => statedFeet(reader, FARTHEST_FT);

export function creditWords(reader: Reader, gpm: number, certain: boolean): string {
  const flow = reader.quantity(gpm, 'gpm');
  // Nothing is nothing: "at most 0" would only sound like doubt.
  return certain || gpm === 0 ? flow : reader.say('cover.credit.at-most', { flow });
}

export const creditLine = (
  reader: Reader,
  { leftGpm, beforeGpm, certain }: Pick<PublicCover, 'leftGpm' | 'beforeGpm' | 'certain'>,
): string =>
  reader.say('cover.credit', {
    left: creditWords(reader, leftGpm, certain),
    before: creditWords(reader, beforeGpm, certain),
  });

/**
 * Why a cover is not certain, one sentence each. `worst` leaves out what nearly every inventory lacks and what is said
 * once for the whole list.
 */
export function doubtWords(reader: Reader, cover: PublicCover, which: 'all' | 'worst'): readonly string[] {
  const { noFlow, noOutlets, notRetested, maybeStruck, classOnly } = cover.doubts;
  const reach = reachWords(reader);
  const all = which === 'all';
  return [
    ...(all ? [reader.say(`cover.by.${cover.by}`)] : []),
    ...(noFlow > 0 ? [reader.say('cover.doubt.flow', { count: noFlow, reach })] : []),
    ...(all && noOutlets > 0 ? [reader.say('cover.doubt.outlets', { count: noOutlets, reach })] : []),
    ...(notRetested > 0 ? [reader.say('cover.doubt.not-retested', { count: notRetested, reach })] : []),
    ...(maybeStruck > 0 ? [reader.say('cover.doubt.maybe-struck', { count: maybeStruck, reach })] : []),
    ...(all && classOnly ? [reader.say('cover.doubt.class-only')] : []),
  ];
}

/** `Alder St at Third Ave (H-0131)`, or what of it is known. */
export function areaName(reader: Reader, { place, hydrantId }: PublicLostArea): string {
  if (place === null) return hydrantId ?? reader.say('public.unknown-hydrant');
  return hydrantId === null ? place : reader.say('cover.area.name', { place, hydrant: hydrantId });
}

/** What was lost there, in a sentence. */
export function areaLoss(reader: Reader, area: PublicLostArea, { needGpm }: PublicFireCover): string {
  const { lost, points, pointsWithNone, worst } = area;
  const reach = reachWords(reader);
  const need = reader.quantity(needGpm, 'gpm');
  if (lost === 'short')
    return reader.say('cover.area.short', {
      need,
      left: creditWords(reader, worst.leftGpm, worst.certain),
      before: creditWords(reader, worst.beforeGpm, worst.certain),
    });
  if (pointsWithNone === points) return reader.say('cover.area.none', { reach });
  return reader.say('cover.area.none-part', { none: pointsWithNone, points, reach, need });
}

/** How large it is: in points of the grid and the ground that they stand for, or in places. */
export function areaSize(reader: Reader, { points }: PublicLostArea, { lookedAt }: PublicFireCover): string {
  if (lookedAt.kind === 'places' || lookedAt.stepFt === null)
    return reader.say('cover.area.size.places', { points });
  const { acres, hectares } = groundOf(points, lookedAt.stepFt);
  const ground = reader.both((system) =>
    system === 'us'
      ? reader.say('cover.acres', { value: formatNumber(acres, reader.locale, acres < 10 ? 1 : 0) })
      : reader.say('cover.hectares', {
          value: formatNumber(hectares, reader.locale, hectares < 10 ? 1 : 0),
        }),
  );
  return reader.say('cover.area.size.grid', { points, ground });
}

export function areaCause(reader: Reader, { hydrants, hydrantsOut }: PublicLostArea): string {
  const named = reader.list(hydrants);
  return hydrantsOut > hydrants.length
    ? reader.say('cover.area.because-more', { count: hydrantsOut, hydrants: named })
    : reader.say('cover.area.because', { count: hydrantsOut, hydrants: named });
}

/** What was looked at and what was found, as the checked fact that it is; `brief` where straight lines are spoken of beside it. */
export function foundWords(
  reader: Reader,
  cover: PublicFireCover,
  { brief = false } = {},
): readonly string[] {
  const { lookedAt, pointsLost, pointsWithNone, by, notCounted } = cover;
  const reach = reachWords(reader);
  const looked = reader.say(`cover.looked.${lookedAt.kind}`, {
    points: lookedAt.points,
    shown: reader.number(lookedAt.points),
    step: lookedAt.stepFt === null ? '' : statedFeet(reader, lookedAt.stepFt),
    reach,
  });
  const found =
    pointsLost === 0
      ? reader.say('cover.found.none')
      : reader.say('cover.found', {
          lost: pointsLost,
          lostShown: reader.number(pointsLost),
          none: pointsWithNone,
          noneShown: reader.number(pointsWithNone),
          reach,
        });
  return [
    ...(lookedAt.points === 0 ? [looked] : [looked, found]),
    ...(!brief && by === 'straight' && lookedAt.points > 0 ? [reader.say('cover.straight-note')] : []),
    ...(notCounted > 0 ? [reader.say('cover.not-counted', { count: notCounted })] : []),
  ];
}

/** The rule by which cover is counted, with the figures that it is counted by. */
export function ruleWords(reader: Reader, { hoseFt }: PublicFireCover): readonly string[] {
  const [first, second, third] = creditRings;
  const flow = (gpm: number): string => reader.quantity(gpm, 'gpm');
  return [
    reader.say('cover.rule.credit', {
      first: flow(first.mostGpm),
      firstTo: statedFeet(reader, first.toFt),
      second: flow(second.mostGpm),
      secondTo: statedFeet(reader, second.toFt),
      third: flow(third.mostGpm),
      thirdTo: statedFeet(reader, third.toFt),
    }),
    reader.say('cover.rule.at-most'),
    reader.say('cover.rule.hose', { hose: statedFeet(reader, hoseFt) }),
    reader.say('cover.rule.not'),
  ];
}
