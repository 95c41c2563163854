import { describe, expect, it } from 'vitest';
import { compute } from '../../shared/compute/compute.ts';
import { computations } from '../../shared/compute/registry.ts';
import { say } from '../../shared/words/index.ts';

describe.each([...computations])('%s', (name, { example, summary, output }) => {
  it('works its own example to finite numbers', () => {
    const computed = compute(name, example);
    expect(computed).toMatchObject({ ok: true });
    // JSON turns NaN and infinities into null; the example must hold none.
    if (computed.ok) expect(JSON.parse(JSON.stringify(computed.output))).toEqual(computed.output);
  });

  it('is described in both languages', () => {
    for (const locale of ['en', 'es'] as const)
      for (const key of [summary, output]) expect(say(locale, key)).toMatch(/^[^[].*\.$/);
  });

  it('refuses input that is no object, with a problem and no more', () => {
    for (const input of [null, [], 5, 'x']) {
      const computed = compute(name, input);
      expect(computed.ok).toBe(false);
      if (!computed.ok) expect(computed.problems.map(({ code }) => code)).toEqual(['wrong-type']);
    }
  });
});

describe('compute', () => {
  it('has what was promised from the start', () =>
    expect([...computations.keys()]).toEqual(
      expect.arrayContaining(['flow-test', 'outlet-flow', 'available-flow', 'hydrant-class', 'convert']),
    ));

  it('does not take a name from the language for a computation', () => {
    for (const name of ['constructor', '__proto__', 'toString'])
      expect(compute(name, {})).toMatchObject({ ok: false, problems: [{ code: 'unknown-computation' }] });
  });

  // What the schema alone cannot see is refused by the formula, with the same kind of problem.
  it('passes on what a formula refuses', () =>
    expect(
      compute('available-flow', { staticPsi: 50, residualPsi: 60, flowGpm: 500, targetResidualPsi: 20 }),
    ).toEqual({
      ok: false,
      problems: [{ code: 'residual-not-below-static', path: 'residualPsi', params: {} }],
    }));

  it('available-flow projects nothing from too small a drop', () =>
    expect(
      compute('available-flow', { staticPsi: 90, residualPsi: 85, flowGpm: 1140, targetResidualPsi: 20 }),
    ).toMatchObject({
      output: { flowGpm: null, drop: { sufficient: false } },
    }));
});
