import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { flowTestHistory, type DatedTest } from '../../../shared/hydraulics/flowTestHistory.ts';
import type { FlowTestInput } from '../../../shared/hydraulics/flowTestInput.ts';
import { historyChartSvg } from '../../../shared/hydraulics/historyChartSvg.ts';
import { sayChange } from '../../../shared/hydraulics/sayChange.ts';

const us = { system: 'us', locale: 'en' } as const;
const dated = (testedOn: string, input: FlowTestInput): DatedTest => ({
  testId: `T-${testedOn}`,
  testedAt: `${testedOn}T15:00:00Z`,
  testedOn,
  input,
});
const metered = (staticPsi: number, residualPsi: number, measuredFlowGpm: number): FlowTestInput => ({
  staticPsi,
  residualPsi,
  measuredFlowGpm,
});
const good = metered(78, 52, 900);

describe('given two tests, what the later says of the earlier', () => {
  it.each<[string, FlowTestInput, FlowTestInput, string]>([
    ['the same readings', good, good, 'steady'],
    ['5 % less', good, metered(78, 52, 855), 'steady'],
    ['a fifth less, good drops', good, metered(78, 52, 720), 'loss'],
    // 10 % of static: the readings alone allow a quarter less.
    ['a fifth less, small drops', metered(80, 72, 900), metered(80, 72, 720), 'possible-loss'],
    ['a third more', good, metered(78, 52, 1200), 'gain'],
    ['static no longer above 20 psi', good, metered(19, 8, 500), 'loss'],
  ])('%s: %s', (_, before, after, verdict) => {
    const { entries, sinceFirst } = flowTestHistory([
      dated('2021-05-04', before),
      dated('2026-03-06', after),
    ]);
    expect(entries[1]!.change?.verdict).toBe(verdict);
    expect(sinceFirst).toEqual(entries[1]!.change);
    for (const locale of ['en', 'es'] as const)
      for (const system of ['us', 'metric'] as const) {
        const sentence = sayChange(sinceFirst!, { locale, system });
        expect(sentence).toMatch(/^[A-Z].*\.$/);
        expect(sentence).not.toMatch(/[[\]{}]|NaN|undefined/);
      }
  });

  it('the share and its interval follow from the two capacities', () => {
    const { sinceFirst } = flowTestHistory([
      dated('2021-05-04', good),
      dated('2026-03-06', metered(78, 52, 720)),
    ]);
    // Same pressures, so the shares of flow are those of capacity: −20 %.
    expect(sinceFirst!.fraction).toBeCloseTo(-0.2, 12);
    expect(sinceFirst!.sameDropFraction).toBeCloseTo(-0.2, 12);
    expect(sinceFirst!.between!.low).toBeLessThan(-0.2);
    expect(sinceFirst!.between!.high).toBeLessThan(0);
    expect((1 + sinceFirst!.between!.low) * (1 + sinceFirst!.between!.high)).toBeCloseTo(0.64, 12);
  });

  it('says whether pressure or pipes explain a loss', () => {
    // The same pipes (flow for a drop as before) under 20 psi less static.
    const lower = metered(58, 32, 900);
    const { sinceFirst } = flowTestHistory([dated('2021-05-04', good), dated('2026-03-06', lower)]);
    expect(sinceFirst!.sameDropFraction).toBeCloseTo(0, 12);
    expect(sayChange(sinceFirst!, us)).toContain('The static is 20 psi lower and explains most of it');
    const narrowed = flowTestHistory([dated('2021-05-04', good), dated('2026-03-06', metered(78, 40, 800))]);
    expect(sayChange(narrowed.sinceFirst!, us)).toContain('look first for a valve left part closed');
  });

  it('compares at the later test’s rating residual', () => {
    const half = { ...metered(30, 20, 500), ratingRule: 'half-static-when-weak' as const };
    const { sinceFirst } = flowTestHistory([dated('2021-05-04', good), dated('2026-03-06', half)]);
    expect(sinceFirst!.atResidualPsi).toBe(15);
    // 900 × (63/26)^0.54 = 1,451 (computed).
    expect(sinceFirst!.fromGpm).toBeCloseTo(900 * (63 / 26) ** 0.54, 6);
  });
});

describe('a hydrant’s history', () => {
  const tests = [
    dated('2026-03-06', metered(60, 40, 700)),
    dated('2016-05-04', good),
    dated('2019-05-04', metered(90, 85, 1140)),
    dated('2021-05-04', metered(50, 60, 500)),
    dated('2023-05-04', metered(77, 52, 860)),
  ];
  const { entries, sinceFirst, repairs } = flowTestHistory(tests, [
    { strikeId: 'S-1', struckAt: '2026-03-04T02:10:00Z', repairedAt: '2026-03-05T18:00:00Z' },
    { strikeId: 'S-2', struckAt: '2026-04-01T00:00:00Z', repairedAt: null },
    { strikeId: 'S-3', struckAt: '2010-01-01T00:00:00Z', repairedAt: '2010-01-02T00:00:00Z' },
  ]);

  it('stands in order of the days, with what cannot be a test in its place', () => {
    expect(entries.map(({ testedOn }) => testedOn)).toEqual([
      '2016-05-04',
      '2019-05-04',
      '2021-05-04',
      '2023-05-04',
      '2026-03-06',
    ]);
    expect(entries[2]).toMatchObject({ result: null, problems: [{ code: 'residual-not-below-static' }] });
  });

  it('compares with the last test that rates, past those that do not', () => {
    expect(entries.map(({ change }) => change?.fromTestId ?? null)).toEqual([
      null,
      null,
      null,
      'T-2016-05-04',
      'T-2023-05-04',
    ]);
    expect(sinceFirst).toMatchObject({ fromTestId: 'T-2016-05-04', toTestId: 'T-2026-03-06' });
  });

  it('raises what only the last test can raise', () =>
    expect(entries[4]!.result!.warnings.map(({ code }) => code)).toEqual(['static-jumped']));

  it('stands before and after a repair side by side', () => {
    expect(repairs[0]).toMatchObject({
      before: { testId: 'T-2023-05-04' },
      after: { testId: 'T-2026-03-06' },
      change: { verdict: 'loss' },
    });
    expect(repairs[1]).toMatchObject({ before: { testId: 'T-2026-03-06' }, after: null, change: null });
    expect(repairs[2]).toMatchObject({ before: null, after: { testId: 'T-2016-05-04' }, change: null });
  });

  it('is empty without tests', () =>
    expect(flowTestHistory([])).toEqual({ entries: [], sinceFirst: null, repairs: [] }));

  it.each(['us', 'metric'] as const)('is drawn well-formed, named and in one ink, %s', (system) => {
    for (const history of [flowTestHistory(tests), flowTestHistory([]), flowTestHistory(tests.slice(1, 2))]) {
      const svg = historyChartSvg(history, { system, locale: 'en', idPrefix: 'h', subject: 'H-1 <&>' });
      let circles = 0;
      const parser = new SaxesParser();
      parser.on('error', (error) => {
        throw error;
      });
      parser.on('opentag', ({ name }) => (circles += Number(name === 'circle')));
      parser.write(svg).close();
      expect(circles).toBe(history.entries.filter(({ result }) => result?.hydrantClass).length);
      expect(svg).toContain('role="img"');
      expect(svg).not.toMatch(/NaN|Infinity|#[0-9a-f]{3,6}|rgb|hsl/i);
    }
  });
});
