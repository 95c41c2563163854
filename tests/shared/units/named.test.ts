import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compute } from '../../../shared/compute/compute.ts';
import { convert } from '../../../shared/units/convert.ts';
import { problemsAsTyped, quantitiesInMetric, quantitiesInUs } from '../../../shared/units/named.ts';

const about = (value: number): unknown => expect.closeTo(value, 9);

describe('metric names on the way in', () => {
  it('become US names with US values, wherever they stand', () => {
    const { value, problems } = quantitiesInUs({
      staticKpa: 593,
      note: 'H-1',
      outlets: [{ diameterMm: 63.5, pitotBar: 2 }, { flowLPerS: 40 }, { flowM3PerH: 90 }],
      lengthM: 3.048,
      lostM3: 3.785411784,
      torqueNm: 100,
    });
    // NIST SP 811 factors, by the conversion that tests hold to their digits.
    expect(value).toEqual({
      staticPsi: about(convert(593, 'kPa', 'psi')),
      note: 'H-1',
      outlets: [
        { diameterIn: 2.5, pitotPsi: about(convert(2, 'bar', 'psi')) },
        { flowGpm: about(convert(40, 'L/s', 'gpm')) },
        { flowGpm: about(convert(90, 'm3/h', 'gpm')) },
      ],
      lengthFt: about(10),
      lostGal: about(1000),
      torqueLbfFt: about(100 / 1.3558179483314004),
    });
    expect(problems).toEqual([]);
  });

  it('leave US names, and values that are no numbers, as they are', () =>
    expect(quantitiesInUs({ staticPsi: 86, residualKpa: 'x', flowLPerMin: null }).value).toEqual({
      staticPsi: 86,
      residualPsi: 'x',
      flowGpm: null,
    }));

  it('refuse one quantity in two units', () =>
    expect(quantitiesInUs({ a: [{ staticPsi: 86, staticKpa: 593 }] }).problems).toEqual([
      { code: 'given-in-two-units', path: 'a.0.staticKpa', params: { other: 'staticPsi' } },
    ]));

  it('a problem comes back under the name and in the unit that was typed', () => {
    const { typed } = quantitiesInUs({ outlets: [{ diameterMm: 900 }] });
    expect(
      problemsAsTyped(
        [{ code: 'above-maximum', path: 'outlets.0.diameterIn', params: { maximum: 12 } }],
        typed,
      ),
    ).toEqual([{ code: 'above-maximum', path: 'outlets.0.diameterMm', params: { maximum: 304.8 } }]);
  });

  it('stop at a depth that no question has', () => {
    let deep: unknown = { staticKpa: 1 };
    for (let depth = 0; depth < 5000; depth++) deep = [deep];
    expect(() => quantitiesInUs(deep)).not.toThrow();
  });
});

describe('US names on the way out', () => {
  it('become metric, a bare psi too, and nothing else changes', () =>
    expect(
      quantitiesInMetric({
        drop: { psi: 10, fraction: 0.1 },
        capacityGpm: null,
        list: [{ aIn: 1, bFt: 10 }],
        sentence: 'x',
      }),
    ).toEqual({
      drop: { kpa: 68.94757293168361, fraction: 0.1 },
      capacityLPerMin: null,
      list: [{ aMm: 25.4, bM: 3.048 }],
      sentence: 'x',
    }));
});

describe('a flow test typed in either system', () => {
  const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
  it('answers the same to 1e-9, in either system', () =>
    fc.assert(
      fc.property(
        fc.record({
          s: number(30, 290),
          share: number(0, 0.85),
          p: number(5, 60),
          d: number(2, 6),
          k: number(50, 300),
          q: number(10, 2000),
        }),
        ({ s, share, p, d, k, q }) => {
          const us = {
            staticPsi: s,
            residualPsi: s * share,
            outlets: [
              { diameterIn: d, coefficient: 0.9, pitotPsi: p },
              { kind: 'diffuser', kGpmPerSqrtPsi: k, pitotPsi: p },
              { kind: 'meter', flowGpm: q },
            ],
          };
          const metric = quantitiesInMetric(us);
          const close = (one: unknown, other: unknown, path: string): void => {
            if (typeof one === 'number' && typeof other === 'number')
              expect(Math.abs(one - other), path).toBeLessThanOrEqual(
                1e-9 * Math.max(Math.abs(one), Math.abs(other), 1e-6),
              );
            else if (typeof one === 'object' && one !== null)
              for (const [name, value] of Object.entries(one))
                close(value, (other as Record<string, unknown>)[name], `${path}.${name}`);
          };
          const figures = (given: unknown, system: 'us' | 'metric'): unknown => {
            const computed = compute('flow-test', given, { system, locale: 'en' });
            if (!computed.ok) throw new Error(JSON.stringify(computed.problems));
            const { measuredFlowGpm, measuredFlowLPerMin, rating, interval, drop } =
              computed.output as Record<string, any>;
            return {
              measuredFlowGpm,
              measuredFlowLPerMin,
              rating,
              interval: { ...interval, chances: [], causes: [] },
              drop,
            };
          };
          for (const system of ['us', 'metric'] as const)
            close(figures(us, system), figures(metric, system), system);
        },
      ),
    ));
});
