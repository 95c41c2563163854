import { describe, expect, it } from 'vitest';
import { OutOfRange } from '../../../shared/hydraulics/card.ts';
import { problemsFromZod } from '../../../shared/problems/fromZod.ts';
import { estimateWaterLost } from '../../../shared/water/estimate.ts';
import { waterLostInput, type WaterLostInput } from '../../../shared/water/input.ts';
import { sayQuantityProblem, sayWaterLost } from '../../../shared/water/say.ts';

const us = { system: 'us', locale: 'en' } as const;
const hour: WaterLostInput['times'] = {
  struckAt: '2026-03-04T02:00:00Z',
  struckAtBasis: 'witnessed',
  waterShutAt: '2026-03-04T03:00:00Z',
};
const jet: WaterLostInput = {
  hydrantType: 'dry-barrel',
  found: { mainValve: 'does-not-hold', flow: 'jet', jetHeightIn: 36, openingDiameterIn: 4 },
  times: hour,
};
const lateral = { diameterIn: 6, lengthFt: 20, roughness: 120, minorLossK: 6 };

/** Codes with their paths, of the schema or of the estimate, whichever refuses. */
function refused(input: unknown): string[] {
  const parsed = waterLostInput.safeParse(input, { reportInput: true });
  if (!parsed.success) return problemsFromZod(parsed.error.issues).map(({ path, code }) => `${path} ${code}`);
  try {
    estimateWaterLost(parsed.data);
    return [];
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return error.problems.map(({ path, code }) => `${path} ${code}`);
  }
}

describe('nothing was lost', () => {
  it('when the main valve of a dry barrel held, whatever the times', () => {
    const estimate = estimateWaterLost({ ...jet, found: { mainValve: 'holds', flow: 'unknown' }, times: {} });
    expect(estimate).toMatchObject({
      by: 'valve-held',
      lowGal: 0,
      bestGal: 0,
      highGal: 0,
      flow: null,
      challenges: [],
    });
    expect(sayWaterLost(estimate, us)).toBe('No water was lost: the hydrant’s main valve held.');
  });

  it('when none was seen and nobody says that the valve let go', () =>
    expect(estimateWaterLost({ ...jet, found: { mainValve: 'unknown', flow: 'none' } })).toMatchObject({
      by: 'no-flow-seen',
      highGal: 0,
    }));

  it('and water billed all the same is challenged', () => {
    const estimate = estimateWaterLost({
      ...jet,
      found: { mainValve: 'holds', flow: 'none' },
      metered: { waterGal: 9000 },
      choice: { figure: 'own', waterGal: 8000, reason: 'meter' },
    });
    expect(estimate.challenges.map(({ code }) => code)).toEqual([
      'metered-though-valve-held',
      'claim-though-valve-held',
    ]);
  });
});

describe('by what was seen', () => {
  it('a jet: 501.7 gpm by its height, ±14 %, for an hour', () => {
    const estimate = estimateWaterLost(jet);
    // 5.68 × 0.92 × 16 × 6 = 501.66 (computed); ±10 % of the equation and ±10 % of a height judged to a fifth.
    expect(estimate.flow?.bestGpm).toBeCloseTo(501.66, 1);
    expect(estimate.flow?.accuracyFraction).toBeCloseTo(Math.SQRT2 / 10, 12);
    expect(estimate).toMatchObject({ lowGal: 25_800, bestGal: 30_100, highGal: 34_400 });
    expect(estimate.claim).toEqual({ waterGal: 25_800, figure: 'low', reason: null });
    expect(sayWaterLost(estimate, us)).toBe(
      'By the height of the jet: 502 gpm, between 431 gpm and 573 gpm (±14%). It ran for 60 minutes. Low 25,800 gal, best 30,100 gal, high 34,400 gal. The claim uses the low figure, 25,800 gal.',
    );
  });

  it('a measured height leaves the accuracy of the equation alone', () =>
    expect(
      estimateWaterLost({ ...jet, found: { ...jet.found, seenAccuracyFraction: 0 } }).flow?.accuracyFraction,
    ).toBe(0.1));

  it('a throw', () => {
    const estimate = estimateWaterLost({
      ...jet,
      found: { mainValve: 'does-not-hold', flow: 'jet', throwDistanceIn: 36, openingDiameterIn: 3 },
    });
    expect(estimate.flow).toMatchObject({ method: 'throw' });
    expect(estimate.flow?.bestGpm).toBeCloseTo(254.47, 1);
  });

  it('an opening of known width with the pressure behind it', () => {
    const estimate = estimateWaterLost({
      ...jet,
      found: { mainValve: 'unknown', flow: 'leak', openingDiameterIn: 0.25 },
      staticPsi: 60,
    });
    // Durant OK utility (seen): ¼ in at 60 psi loses 13,000 gal/day, 542 gal/hour; printed to the thousand.
    expect(estimate.flow).toMatchObject({ method: 'opening' });
    expect(Math.abs((estimate.flow?.bestGpm ?? 0) * 1440 - 13_000)).toBeLessThan(500);
  });

  it('a full bore, held back by lateral, fittings and main', () => {
    const full = {
      ...jet,
      found: { mainValve: 'does-not-hold', flow: 'full-bore' },
      staticPsi: 70,
      lateral,
    } satisfies WaterLostInput;
    const open = estimateWaterLost(full);
    const behindMain = estimateWaterLost({
      ...full,
      main: { diameterIn: 6, lengthFt: 2500, roughness: 100 },
    });
    expect(open.flow).toMatchObject({ method: 'full-bore', limitedBy: null });
    expect(open.flow!.bestGpm).toBeGreaterThan(2500);
    expect(behindMain.flow!.bestGpm).toBeLessThan(open.flow!.bestGpm / 2);
  });

  it('a word alone, as wide as it is', () => {
    const { flow } = estimateWaterLost({
      ...jet,
      found: { mainValve: 'unknown', flow: 'leak' },
      staticPsi: 60,
    });
    expect(flow?.method).toBe('class');
    // ⅛ in and ½ in at 60 psi.
    expect(flow!.lowGpm * 1440).toBeCloseTo(3224, -2);
    expect(flow!.highGpm / flow!.lowGpm).toBeCloseTo(16, 6);
  });

  it('a meter before all of them', () => {
    const estimate = estimateWaterLost({ ...jet, metered: { waterGal: 20_000, accuracyFraction: 0.02 } });
    expect(estimate).toMatchObject({ by: 'metered', lowGal: 19_600, bestGal: 20_000, highGal: 20_400 });
  });
});

describe('limits and challenges', () => {
  it('a jet taller than the lateral can throw is challenged, and held to the bore', () => {
    const { challenges, flow } = estimateWaterLost({
      ...jet,
      found: { ...jet.found, jetHeightIn: 2000, openingDiameterIn: 6, seenAccuracyFraction: 0 },
      staticPsi: 40,
      lateral,
    });
    expect(challenges.map(({ code }) => code)).toEqual(['methods-disagree', 'water-above-full-bore']);
    expect(flow?.limitedBy?.by).toBe('frictionless');
  });

  it('a low jet over a wide opening is no contradiction: a valve half shut does that', () =>
    expect(estimateWaterLost({ ...jet, staticPsi: 60, lateral }).challenges).toEqual([]));

  it('two looks at one stream that do not overlap are', () =>
    expect(
      estimateWaterLost({ ...jet, found: { ...jet.found, throwDistanceIn: 200 } }).challenges.map(
        ({ code }) => code,
      ),
    ).toEqual(['methods-disagree']));

  it('the model limits as the test does, and the least limit wins', () => {
    const { flow, limits } = estimateWaterLost({
      ...jet,
      flowTest: { staticPsi: 86, residualPsi: 42, flowGpm: 789 },
      modelBoundGpm: 450,
    });
    expect(limits.map(({ by }) => by)).toEqual(['model', 'flow-test', 'frictionless']);
    expect(flow).toMatchObject({ bestGpm: 450, limitedBy: { by: 'model' } });
    expect(flow!.lowGpm).toBeLessThan(450);
  });

  it('a test with too small a drop limits nothing', () =>
    expect(
      estimateWaterLost({ ...jet, flowTest: { staticPsi: 90, residualPsi: 85, flowGpm: 100 } }).limits.map(
        ({ by }) => by,
      ),
    ).toEqual(['frictionless']));

  it('an own figure that the hydrant cannot have given is challenged in words', () => {
    const { challenges, claim } = estimateWaterLost({
      ...jet,
      flowTest: { staticPsi: 86, residualPsi: 42, flowGpm: 789 },
      choice: { figure: 'own', waterGal: 200_000, reason: 'as printed' },
    });
    expect(claim).toEqual({ waterGal: 200_000, figure: 'own', reason: 'as printed' });
    expect(challenges.map((one) => sayQuantityProblem(one, us))).toEqual([
      '200,000 gal in 60 minutes is 3,333 gpm. By its own flow test this hydrant gives no more than 1,133 gpm with no pressure left. Check the figure and the times.',
    ]);
    for (const one of challenges)
      expect(sayQuantityProblem(one, { system: 'metric', locale: 'es' })).not.toMatch(/[[\]{}]|gal|gpm|NaN/);
  });
});

describe('how long it ran', () => {
  const bounded = {
    lastSeenSoundAt: '2026-03-04T01:00:00Z',
    firstCallAt: '2026-03-04T02:00:00Z',
    waterShutAt: '2026-03-04T03:00:00Z',
  };
  const minutes = (times: WaterLostInput['times']) => estimateWaterLost({ ...jet, times }).minutes;

  it.each<[string, WaterLostInput['times'], object]>([
    ['both known', hour, { low: 60, best: 60, high: 60, start: 'known', end: 'known' }],
    ['start bounded by call and last seen', bounded, { low: 60, best: 90, high: 120, start: 'bounded' }],
    [
      'a guess inside the bounds',
      { ...bounded, struckAt: '2026-03-04T01:50:00Z', struckAtBasis: 'bounded' },
      { low: 60, best: 70, high: 120, start: 'bounded' },
    ],
    [
      'only a call',
      { firstCallAt: bounded.firstCallAt, waterShutAt: bounded.waterShutAt },
      { low: 60, best: 60, high: null, start: 'first-call' },
    ],
    [
      'end bounded',
      {
        struckAt: '2026-03-04T02:00:00Z',
        lastSeenFlowingAt: '2026-03-04T02:40:00Z',
        firstSeenShutAt: '2026-03-04T03:20:00Z',
      },
      { low: 40, best: 60, high: 80, end: 'bounded' },
    ],
    [
      'never seen shut',
      { struckAt: '2026-03-04T02:00:00Z', lastSeenFlowingAt: '2026-03-04T02:40:00Z' },
      { low: 40, best: 40, high: null, end: 'last-seen-flowing' },
    ],
    [
      'shut before anybody called',
      { ...bounded, waterShutAt: '2026-03-04T01:40:00Z' },
      { low: 0, best: 10, high: 40 },
    ],
  ])('%s', (_, times, expected) => expect(minutes(times)).toMatchObject(expected));

  it('an open end leaves no high figure, and none can be chosen', () => {
    const open = {
      ...jet,
      times: { firstCallAt: '2026-03-04T02:00:00Z', waterShutAt: '2026-03-04T03:00:00Z' },
    };
    expect(estimateWaterLost(open).highGal).toBeNull();
    expect(refused({ ...open, choice: { figure: 'high', reason: 'x' } })).toEqual([
      'choice.figure no-high-figure',
    ]);
    expect(sayWaterLost(estimateWaterLost(open), us)).toContain('how much at most is not known');
  });
});

describe('used on the repair', () => {
  it('is counted apart from what was lost', () => {
    const { used, lowGal } = estimateWaterLost({
      ...jet,
      used: [
        { use: 'flushing', flowGpm: 400, minutes: 10 },
        { use: 'flushing', waterGal: 500 },
        { use: 'flow-test', flowGpm: 789.38, minutes: 4 },
      ],
    });
    expect(used).toEqual({ flushingGal: 4500, flowTestGal: 3158 });
    expect(lowGal).toBe(25_800);
  });
});

describe('refusals, all at once', () => {
  it.each<[string, unknown, string[]]>([
    [
      'held and flowing',
      { ...jet, found: { ...jet.found, mainValve: 'holds' } },
      ['found.mainValve flow-though-valve-held'],
    ],
    [
      'a wet barrel that held',
      { ...jet, hydrantType: 'wet-barrel', found: { mainValve: 'holds', flow: 'none' } },
      ['found.mainValve wet-barrel-no-main-valve'],
    ],
    [
      'no flow with a jet',
      { ...jet, found: { ...jet.found, flow: 'none' } },
      ['found.jetHeightIn jet-without-flow'],
    ],
    [
      'a height with no opening',
      { ...jet, found: { mainValve: 'unknown', flow: 'jet', jetHeightIn: 30 } },
      ['found.openingDiameterIn jet-needs-opening'],
    ],
    [
      'nothing known at all',
      { found: { mainValve: 'unknown', flow: 'unknown' }, times: {} },
      [
        'found.flow say-how-it-flowed',
        'times.struckAt start-of-flow-unknown',
        'times.waterShutAt end-of-flow-unknown',
      ],
    ],
    [
      'the valve let go and nobody saw water',
      { ...jet, found: { mainValve: 'does-not-hold', flow: 'none' } },
      ['found.flow say-how-it-flowed'],
    ],
    [
      'a leak with no pressure',
      { ...jet, found: { mainValve: 'unknown', flow: 'leak' } },
      ['staticPsi flow-needs-pressure'],
    ],
    [
      'full bore with no lateral',
      { ...jet, found: { mainValve: 'unknown', flow: 'full-bore' }, staticPsi: 60 },
      ['lateral full-bore-needs-lateral'],
    ],
    [
      'shut before it was struck',
      { ...jet, times: { ...hour, waterShutAt: '2026-03-04T01:00:00Z' } },
      ['times.waterShutAt shut-before-start'],
    ],
    [
      'seen sound after the call',
      {
        ...jet,
        times: {
          ...hour,
          struckAt: null,
          lastSeenSoundAt: '2026-03-04T02:30:00Z',
          firstCallAt: '2026-03-04T02:00:00Z',
        },
      },
      ['times.lastSeenSoundAt seen-sound-after-call'],
    ],
    [
      'another figure without a reason',
      { ...jet, choice: { figure: 'best' } },
      ['choice.reason figure-needs-reason'],
    ],
    [
      'an own figure without the figure',
      { ...jet, choice: { figure: 'own', reason: 'x' } },
      ['choice.waterGal own-figure-missing'],
    ],
    [
      'a figure that was not chosen',
      { ...jet, choice: { figure: 'low', waterGal: 5 } },
      ['choice.waterGal own-figure-not-chosen'],
    ],
    [
      'flushing by flow without time',
      { ...jet, used: [{ use: 'flushing', flowGpm: 100 }] },
      ['used.0.waterGal gallons-or-flow-and-minutes'],
    ],
    [
      'a test that is none',
      { ...jet, flowTest: { staticPsi: 50, residualPsi: 60, flowGpm: 100 } },
      ['flowTest.residualPsi residual-not-below-static'],
    ],
  ])('%s', (_, input, expected) => {
    expect(refused(input)).toEqual(expected);
    for (const one of expected) {
      const code = one.split(' ')[1]!;
      for (const locale of ['en', 'es'] as const)
        expect(sayQuantityProblem({ code, params: {} }, { system: 'us', locale })).toMatch(/^[A-ZÉ].*[.?]$/);
    }
  });
});
