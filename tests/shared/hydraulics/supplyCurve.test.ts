import { describe, expect, it } from 'vitest';
import { supplyCurve } from '../../../shared/hydraulics/supplyCurve.ts';
import { supplyCurveDescription, supplyCurveSvg } from '../../../shared/hydraulics/supplyCurveSvg.ts';
import { SaxesParser } from 'saxes';

// K. Kolb, course slides 15 and 16 (seen): 86, 42 psi, 789 gpm; about 980 gpm at 20 psi.
const test = { staticPsi: 86, residualPsi: 42, flowGpm: 789, targetResidualPsi: 20 };
const us = { system: 'us', locale: 'en' } as const;

/** Well-formed or it throws; gives the text of each element of a name. */
function texts(svg: string, name: string): string[] {
  const found: string[] = [];
  let inside = false;
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', (tag) => {
    inside = tag.name === name;
    if (inside) found.push('');
  });
  parser.on('text', (words) => {
    if (inside) found.push((found.pop() ?? '') + words);
  });
  parser.on('closetag', () => (inside = false));
  parser.write(svg).close();
  return found;
}

describe('supply curve', () => {
  const curve = supplyCurve(test);

  it('has the marks where the readings are', () => {
    expect(curve.staticMark).toMatchObject({ flowGpm: 0, residualPsi: 86, x: 0 });
    expect(curve.testMark).toMatchObject({ flowGpm: 789, residualPsi: 42 });
    expect(curve.testMark.x).toBeCloseTo((789 / curve.flow.greatest) ** 1.85, 12);
    expect(curve.testMark.y).toBeCloseTo(42 / curve.pressure.greatest, 12);
    expect(Math.abs((curve.targetMark?.flowGpm ?? 0) / 980 - 1)).toBeLessThan(5e-3);
  });

  it('is a straight line on N^1.85 paper, to a thousandth of the plot', () => {
    const { staticMark: from, targetMark: to } = curve;
    if (!to) throw new Error('no target');
    for (const { x, y } of [...curve.measured, ...curve.projected])
      expect(Math.abs(y - (from.y + ((to.y - from.y) * x) / to.x))).toBeLessThan(1e-3);
  });

  it('ends where it is measured and where it is projected', () => {
    expect(curve.measured[0]).toMatchObject({ x: 0, y: curve.staticMark.y });
    expect(curve.measured.at(-1)?.x).toBeCloseTo(curve.testMark.x, 12);
    expect(curve.projected.at(-1)?.y).toBeCloseTo(curve.target.y, 10);
  });

  it('keeps everything inside the plot, ticks from 0 to the greatest', () => {
    for (const { x, y } of [...curve.measured, ...curve.projected]) {
      expect(x >= 0 && x <= 1 && y >= 0 && y <= 1).toBe(true);
    }
    for (const axis of [curve.flow, curve.pressure]) {
      expect(axis.ticks[0]).toMatchObject({ value: 0, position: 0, labelled: true });
      expect(axis.ticks.at(-1)).toMatchObject({ value: axis.greatest, position: 1 });
    }
    expect(curve.flow.unit).toBe('gpm');
    expect(supplyCurve(test, 'metric').flow.unit).toBe('L/min');
  });

  it('projects nothing from too small a drop', () => {
    const small = supplyCurve({ staticPsi: 90, residualPsi: 85, flowGpm: 1140, targetResidualPsi: 20 });
    expect(small).toMatchObject({ targetMark: null, projected: [], drop: { sufficient: false } });
    expect(supplyCurveDescription(small, us)).toBe(
      'Static pressure 90 psi. With 1,140 gpm flowing, the residual pressure was 85 psi. The pressure dropped too little to say what flows at a residual of 20 psi.',
    );
  });

  it('has no projected part when the test went below the target', () =>
    expect(supplyCurve({ ...test, residualPsi: 10 }).projected).toEqual([]));

  it('a static below the target has no target mark', () => {
    const weak = supplyCurve({ staticPsi: 18, residualPsi: 6, flowGpm: 200, targetResidualPsi: 20 });
    expect(weak.targetMark).toBeNull();
    expect(supplyCurveDescription(weak, us)).toContain('no flow is available');
  });
});

describe('its drawing', () => {
  const drawing = { ...us, idPrefix: 'h-12', subject: 'H-12 <&"\'>' };
  const svg = supplyCurveSvg(supplyCurve(test), drawing);

  it('is well-formed, whatever the subject is called', () => {
    expect(texts(svg, 'title')).toEqual(['Water supply curve of H-12 <&"\'>']);
    expect(texts(svg, 'desc')).toEqual([
      'Static pressure 86 psi. With 789 gpm flowing, the residual pressure was 42 psi. The supply gives 982 gpm at a residual of 20 psi.',
    ]);
  });

  it('is named for a screen reader', () => {
    expect(svg).toContain('role="img"');
    expect(svg).toContain('aria-labelledby="h-12-title h-12-desc"');
    expect(svg).toContain('<title id="h-12-title">');
  });

  it('uses one ink and no color, so it prints', () => {
    expect(svg).not.toMatch(/#[0-9a-f]{3,6}|rgb|hsl/i);
    for (const [, ink] of svg.matchAll(/(?:stroke|fill)="([^"]*)"/g))
      expect(['none', 'currentColor']).toContain(ink);
  });

  it('labels the marks in the reader’s units and language', () => {
    const metric = { system: 'metric', locale: 'es', idPrefix: 'x' } as const;
    const labels = texts(supplyCurveSvg(supplyCurve(test, 'metric'), metric), 'text');
    expect(labels).toContain('estática 593 kPa');
    expect(labels).toContain('Caudal, L/min (escala N^1.85)');
    expect(texts(svg, 'text')).toContain('982 gpm at 20 psi');
  });

  it('is the same bytes for the same test', () =>
    expect(supplyCurveSvg(supplyCurve(test), drawing)).toBe(svg));
});
