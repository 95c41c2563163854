import { beforeAll, describe, expect, it } from 'vitest';
import { hazenWilliamsLossFt, PSI_PER_FT } from '../../shared/hydraulics/hazenWilliams.ts';
import { velocityPressurePsi } from '../../shared/hydraulics/velocityPressure.ts';
import { estimateWaterLost } from '../../shared/water/estimate.ts';
import { deliveredGpm, frictionlessGpm } from '../../shared/water/fullBore.ts';
import { rimWeirGpm, risingFlow, verticalJetGpm } from '../../shared/water/jet.ts';
import { challengeWater } from '../../shared/water/limits.ts';
import { holeFlowGpm } from '../../shared/water/opening.ts';
import { horizontalThrowGpm } from '../../shared/water/throw.ts';
import { loadEpanet, type Project } from '../support/epanet.ts';

/**
 * Figures that others printed. Each names its source and how far it was followed: "seen" in a retrieved text of the
 * source, "second-hand" in a text that quotes it, "from memory", "computed" from stated inputs with no publisher.
 */

describe('rising water', () => {
  // Engineering ToolBox (seen): d 4 in, h 36 in, k 0.97: 529 gpm, printed to the whole gallon.
  it('a jet of 36 in over 4 in is 529 gpm', () =>
    expect(Math.abs(verticalJetGpm({ diameterIn: 4, heightIn: 36, factor: 0.97 }) - 529)).toBeLessThan(0.5));

  // From first principles (computed): Q = (π/4) d² √(2 g h), g 386.09 in/s², 231 in³/gal: 5.669; the printed 5.68 is
  // 0.2 % above it.
  it('its constant is that of a free jet, to 0.2 %', () => {
    const ideal = ((Math.PI / 4) * Math.sqrt(2 * 386.0886) * 60) / 231;
    expect(verticalJetGpm({ diameterIn: 1, heightIn: 1, factor: 1 }) / ideal - 1).toBeCloseTo(0.002, 3);
  });

  // USBR, Water Measurement Manual, 2001, chapter 14, as quoted in a package manual (second-hand): the jet equation
  // there is 5.01 d^1.99 h^0.53; between 2 and 12 in, 1.4 d and 60 in high, it and 5.68 k d² √h with k = 0.97 differ by
  // less than the 10 % that Bos (1989) gives it.
  it.each([
    [2, 3],
    [2, 60],
    [4, 36],
    [6, 20],
    [8, 15],
    [12, 60],
  ])('agrees with the USBR jet equation within its 10 %%: d %d in, h %d in', (diameterIn, heightIn) => {
    const usbr = 5.01 * diameterIn ** 1.99 * heightIn ** 0.53;
    expect(Math.abs(verticalJetGpm({ diameterIn, heightIn, factor: 0.97 }) / usbr - 1)).toBeLessThan(0.1);
  });

  // USBR (seen): jet above 1.4 d, weir below 0.37 d, the lesser between; ±10 to ±15 %.
  it.each([
    [4, 5.7, 'jet', 0.1],
    [4, 5.5, 'between', 0.15],
    [4, 1.5, 'between', 0.15],
    [4, 1.47, 'weir', 0.15],
  ])('over %d in, %d in high is %s', (diameterIn, heightIn, regime, accuracyFraction) => {
    const rising = risingFlow({ diameterIn, heightIn });
    expect(rising).toMatchObject({ regime, accuracyFraction });
    const [jet, weir] = [
      verticalJetGpm({ diameterIn, heightIn, factor: 0.92 }),
      rimWeirGpm({ diameterIn, heightIn }),
    ];
    if (regime === 'between') expect(rising.flowGpm).toBe(Math.min(jet, weir));
  });

  // The quoted weir equation by hand (computed): 6.17 × 8^1.25 × 0.15^1.35 = 83.01 × 0.0772 = 6.41.
  it('0.15 in over an 8 in rim is 6.41 gpm', () =>
    expect(rimWeirGpm({ diameterIn: 8, heightIn: 0.15 })).toBeCloseTo(6.41, 2));
});

describe('level stream', () => {
  // NABARD handbook p. 41 (seen): r 1.5 in, D 36 in: 254.34 gpm, with π = 3.14, 0.05 % under.
  it('a throw of 36 in from 3 in is 254.34 gpm', () => {
    const gpm = horizontalThrowGpm({ diameterIn: 3, distanceIn: 36 });
    expect(Math.abs(gpm - 254.34)).toBeLessThan(0.14);
    expect((gpm * 3.14) / Math.PI).toBeCloseTo(254.34, 2);
  });

  // Fall of a body (computed): 12 in take √(24/386.09) s; the printed rule is 4.0 % under it.
  it('is 4 % under what the fall of a body gives', () => {
    const seconds = Math.sqrt(24 / 386.0886);
    const ideal = (((Math.PI / 4) * 9 * 36) / seconds) * (60 / 231);
    expect(horizontalThrowGpm({ diameterIn: 3, distanceIn: 36 }) / ideal - 1).toBeCloseTo(-0.04, 3);
  });
});

describe('hole under 60 psi, C about 0.62', () => {
  // Durant OK utility (seen): ⅛ in 3,200 gal/day, ¼ in 13,000 gal/day. Printed to the hundred and to the thousand.
  it.each([
    [1 / 8, 3200, 50],
    [1 / 4, 13_000, 500],
  ])('%d in loses %d gal/day', (diameterIn, gallons, printedTo) => {
    const perDay = 1440 * holeFlowGpm({ diameterIn, coefficient: 0.62, pressurePsi: 60 });
    expect(Math.abs(perDay - gallons)).toBeLessThan(printedTo);
  });
});

describe('Hazen-Williams', () => {
  const given = { flowGpm: 200, diameterIn: 3.048, roughness: 140, lengthFt: 30 };
  // Engineering ToolBox (seen): 9.0 ft/100 ft, 2.7 ft over 30 ft; ±0.5 %.
  it('200 gpm through 3.048 in, C 140: 9.0 ft in 100 ft, 2.7 ft in 30', () => {
    expect(Math.abs(hazenWilliamsLossFt({ ...given, lengthFt: 100 }) / 9 - 1)).toBeLessThan(5e-3);
    expect(Math.abs(hazenWilliamsLossFt(given) / 2.7 - 1)).toBeLessThan(5e-3);
  });

  // EPANET 2 manual (from memory): 4.727 C^-1.852 d^-4.871 L q^1.852 (ft, cfs). Published constants differ by up to 3.5 %.
  it.each([
    [200, 3.048, 140],
    [1500, 6, 100],
    [4000, 12, 130],
  ])('%d gpm, %d in, C %d: within 3.5 %% of the other printed form', (flowGpm, diameterIn, roughness) => {
    const other =
      4.727 * roughness ** -1.852 * (diameterIn / 12) ** -4.871 * 100 * (flowGpm / 448.831) ** 1.852;
    expect(
      Math.abs(hazenWilliamsLossFt({ flowGpm, diameterIn, roughness, lengthFt: 100 }) / other - 1),
    ).toBeLessThan(0.035);
  });
});

describe('velocity pressure', () => {
  // Hydraulic Institute Engineering Data Library (seen): 2½ in discharges 834 gpm at 20 psi, to the whole gallon.
  it('of 834 gpm through 2½ in is 20 psi', () =>
    expect(Math.abs(velocityPressurePsi({ flowGpm: 834, diameterIn: 2.5 }) - 20)).toBeLessThan(0.025));
});

describe('full bore against EPANET', () => {
  let project: () => Project;
  beforeAll(async () => {
    project = await loadEpanet();
  });

  /** Reservoir at the static head – lateral with fittings and the open end (K + 1) – reservoir at no head. */
  function epanetGpm(
    staticPsi: number,
    lateral: { lengthFt: number; diameterIn: number; roughness: number; minorLossK: number },
  ): number {
    const network = project();
    network.setOption(1, 1e-7);
    network.setNodeValue(network.addNode('R', 1), 0, staticPsi / PSI_PER_FT);
    network.setNodeValue(network.addNode('S', 1), 0, 0);
    const pipe = network.addLink('P', 1, 'R', 'S');
    network.setPipeData(
      pipe,
      lateral.lengthFt,
      lateral.diameterIn,
      lateral.roughness,
      lateral.minorLossK + 1,
    );
    network.openH();
    network.initH(0);
    network.runH();
    const flow = network.getLinkValue(pipe, 8);
    network.closeH();
    network.close();
    return flow;
  }

  // EPANET has the other printed form of Hazen-Williams and its own digits of g: that is what limits it to 1.5 %.
  it.each([
    [60, { lengthFt: 12, diameterIn: 6, roughness: 100, minorLossK: 6 }],
    [85, { lengthFt: 40, diameterIn: 6, roughness: 130, minorLossK: 2.5 }],
    [100, { lengthFt: 150, diameterIn: 4, roughness: 80, minorLossK: 10 }],
    [45, { lengthFt: 20, diameterIn: 8, roughness: 140, minorLossK: 0 }],
  ])('%d psi, %o', (staticPsi, lateral) => {
    const gpm = deliveredGpm({
      staticPsi,
      lateral,
      opening: { diameterIn: lateral.diameterIn, coefficient: 1 },
    });
    expect(Math.abs(gpm / epanetGpm(staticPsi, lateral) - 1)).toBeLessThan(0.015);
  });
});

describe('plausibility', () => {
  // Press report, Valencia CA 2017 (seen): 100,000 gal in an hour, 1,667 gpm, is what a sheared hydrant can do.
  it('100,000 gal in an hour stands', () =>
    expect(challengeWater({ waterGal: 100_000, minutes: 60 })).toEqual([]));

  // The same report: 200,000 gal in 15 min, 13,333 gpm (computed), is not possible from one hydrant.
  it('200,000 gal in 15 min is challenged', () => {
    const [challenge] = challengeWater({ waterGal: 200_000, minutes: 15 });
    expect(challenge?.code).toBe('water-above-frictionless');
    expect(challenge?.params['flowGpm']).toBeCloseTo(13_333, 0);
    // 6 in at 100 psi without friction (computed): 29.84 × 36 × 10 = 10,742 gpm.
    expect(frictionlessGpm(6, 100)).toBeCloseTo(10_742.4, 6);
  });

  // Kolb's test (seen) carried on to no residual: 789 × (86/44)^0.54 = 1,133.0 gpm (computed).
  it('no estimate passes the hydrant’s own test at zero residual', () => {
    const estimate = estimateWaterLost({
      found: { mainValve: 'does-not-hold', flow: 'jet', jetHeightIn: 400, openingDiameterIn: 4.5 },
      times: { struckAt: '2026-03-04T02:00:00Z', waterShutAt: '2026-03-04T03:00:00Z' },
      flowTest: { staticPsi: 86, residualPsi: 42, flowGpm: 789 },
    });
    expect(estimate.flow?.limitedBy).toMatchObject({ by: 'flow-test' });
    expect(estimate.flow?.bestGpm).toBeCloseTo(1133.03, 1);
    // An hour of it, to three digits: 67,900 to 68,000 gal.
    expect(estimate).toMatchObject({ lowGal: 67_900, bestGal: 68_000, highGal: 68_000 });
  });
});
