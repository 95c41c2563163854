import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { compute } from '../../../shared/compute/compute.ts';
import { OutOfRange } from '../../../shared/hydraulics/card.ts';
import { problemsFromZod } from '../../../shared/problems/fromZod.ts';
import { groups, tighteningOrder } from '../../../shared/tightening/order.ts';
import { tighteningPlan, type TighteningQuestion } from '../../../shared/tightening/plan.ts';
import { jointRecord, torqueRecord } from '../../../shared/tightening/record.ts';
import { tighteningRing } from '../../../shared/tightening/ring.ts';
import { ringSvg } from '../../../shared/tightening/ringSvg.ts';
import { sayPlan } from '../../../shared/tightening/say.ts';

const even = Array.from({ length: 50 }, (_, index) => 2 * (index + 1));
/** Invented: no torque in these tests is anybody's default. */
const record = torqueRecord.parse({
  kind: 'torque',
  joint: 'bonnet',
  bolts: 8,
  torque: 72,
  unit: 'lbf.ft',
  manual: 'Invented Model 7',
  page: '14',
});

describe('order of any even count, 2 to 100', () => {
  it.each(even)('%d bolts: each once, each pair opposite', (bolts) => {
    const order = tighteningOrder(bolts);
    expect(order.toSorted((a, b) => a - b)).toEqual(Array.from({ length: bolts }, (_, index) => index + 1));
    // The second of each pair stands across from the first.
    for (let at = 0; at < bolts; at += 2) expect(Math.abs(order[at]! - order[at + 1]!)).toBe(bolts / 2);
  });

  it('of a multiple of four, the second pair of each group stands at a right angle to the first', () => {
    for (const bolts of even.filter((count) => count % 4 === 0))
      for (const [one, , across] of groups(bolts)) expect(across! - one!).toBe(bolts / 4);
  });

  it.each([
    [7, 'bolts-not-even'],
    [0, 'below-minimum'],
    [-4, 'below-minimum'],
    [102, 'above-maximum'],
    [4.5, 'not-a-whole-number'],
    [Number.NaN, 'not-a-whole-number'],
  ])('%d is refused: %s', (bolts, code) => {
    try {
      tighteningOrder(bolts);
      expect.unreachable();
    } catch (error) {
      expect((error as OutOfRange).problems).toMatchObject([{ code, path: 'bolts' }]);
    }
  });
});

describe('torque', () => {
  it('is the record’s, with its manual and page, through every pass', () => {
    const { torque, passes, wrench } = tighteningPlan({ record });
    expect(torque).toMatchObject({ lbfFt: 72, manual: 'Invented Model 7', page: '14' });
    expect(passes.map((pass) => Number(pass.torque!.lbfFt.toFixed(9)))).toEqual([21.6, 43.2, 72, 72]);
    expect(passes.at(-1)).toMatchObject({ pattern: 'round', order: [1, 2, 3, 4, 5, 6, 7, 8] });
    expect(wrench).toBeNull();
  });

  it('is never there without a record', () => {
    const plan = tighteningPlan({ record: null, bolts: 8, wrenchToleranceFraction: 0.04 });
    expect(plan).toMatchObject({ torque: null, wrench: null });
    expect(plan.passes.map(({ torque }) => torque)).toEqual([null, null, null, null]);
    for (const locale of ['en', 'es'] as const) {
      const steps = sayPlan(plan, { system: 'us', locale });
      expect(steps.join(' ')).not.toMatch(/lbf|N·m|[[\]{}]|none/);
      expect(steps[0]).toContain(locale === 'en' ? 'see the maker’s manual' : 'consulte el manual');
    }
  });

  it('a wrench’s tolerance widens it, and both ends of a range', () => {
    const { wrench } = tighteningPlan({ record: { ...record, torqueTo: 80 }, wrenchToleranceFraction: 0.04 });
    expect(wrench!.least.lbfFt).toBeCloseTo(69.12, 9);
    expect(wrench!.most.lbfFt).toBeCloseTo(83.2, 9);
  });

  it('reads in both units, the reader’s first', () => {
    const plan = tighteningPlan({ record });
    expect(sayPlan(plan, { system: 'us', locale: 'en' })[0]).toBe(
      'Torque 72 lbf·ft (97.6 N·m), by Invented Model 7, page 14.',
    );
    expect(sayPlan(plan, { system: 'metric', locale: 'es' })[0]).toBe(
      'Par 97.6 N·m (72 lbf·pie), según Invented Model 7, página 14.',
    );
  });

  it.each<[string, TighteningQuestion, string]>([
    ['no count at all', { record: { ...record, bolts: null } }, 'required'],
    ['another count than the record', { record, bolts: 6 }, 'bolts-differ-from-record'],
  ])('%s is refused', (_, question, code) => {
    expect(() => tighteningPlan(question)).toThrow(OutOfRange);
    expect(() => tighteningPlan(question)).toThrow(code);
  });
});

describe('a record', () => {
  const problems = (given: unknown): string[] => {
    const parsed = jointRecord.safeParse(given, { reportInput: true });
    return parsed.success
      ? []
      : problemsFromZod(parsed.error.issues).map(({ path, code }) => `${path} ${code}`);
  };
  it.each<[string, object, string[]]>([
    ['without its manual', { manual: '' }, ['manual required']],
    ['without its page', { page: undefined }, ['page required']],
    ['in no unit', { unit: 'ft-lb' }, ['unit not-one-of']],
    ['with a range upside down', { torqueTo: 60 }, ['torqueTo range-upside-down']],
    ['of no torque', { torque: 0 }, ['torque not-above']],
    ['complete', {}, []],
  ])('%s', (_, change, expected) => expect(problems({ ...record, ...change })).toEqual(expected));
});

describe('ring', () => {
  it('has every bolt once, place 1 at the top, clockwise', () => {
    const { bolts } = tighteningRing(6);
    expect(bolts[0]).toMatchObject({ place: 1, turn: 1, y: 1 });
    expect(bolts[1]!.x).toBeGreaterThan(0);
    expect(bolts.map(({ turn }) => turn).toSorted()).toEqual([1, 2, 3, 4, 5, 6]);
  });

  it.each([2, 4, 6, 8, 12, 20, 40])(
    'draws %d bolts that do not touch, well-formed, named, in one ink',
    (count) => {
      const svg = ringSvg(tighteningRing(count), { locale: 'en', idPrefix: 'r' });
      const circles: { x: number; y: number; r: number }[] = [];
      const words: string[] = [];
      const parser = new SaxesParser();
      parser.on('error', (error) => {
        throw error;
      });
      parser.on('opentag', ({ name, attributes }) => {
        if (name === 'circle')
          circles.push({
            x: Number(attributes['cx']),
            y: Number(attributes['cy']),
            r: Number(attributes['r']),
          });
      });
      parser.on('text', (text) => words.push(text));
      parser.write(svg).close();
      const [, ...heads] = circles;
      expect(heads).toHaveLength(count);
      heads.forEach((one, index) =>
        heads.slice(index + 1).forEach((other) => {
          expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(one.r + other.r);
        }),
      );
      expect(svg).toContain('role="img" class="tightening-ring" aria-labelledby="r-title r-desc"');
      expect(words[0]).toBe(`Order of tightening, ${count} bolts`);
      expect(svg).not.toMatch(/#[0-9a-f]{3,6}|rgb|hsl/i);
    },
  );
});

describe('compute tightening', () => {
  it('gives order, steps and ring', () => {
    const computed = compute('tightening', { bolts: 12 });
    expect(computed).toMatchObject({ ok: true, output: { order: [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12] } });
  });
  it('refuses an odd count with a sentence', () =>
    expect(compute('tightening', { bolts: 7 })).toMatchObject({
      ok: false,
      problems: [{ code: 'bolts-not-even' }],
    }));
});
