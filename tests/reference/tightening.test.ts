import { describe, expect, it } from 'vitest';
import { tighteningOrder, groups, passes } from '../../shared/tightening/order.ts';
import { bothUnits } from '../../shared/tightening/torqueUnits.ts';
import { backOffRecord, torqueRecord } from '../../shared/tightening/record.ts';
import { sayBackOff } from '../../shared/tightening/say.ts';
import { convert } from '../../shared/units/convert.ts';

/** Figures of others; each names its source and how far it was followed. */

describe('order', () => {
  // ASME PCC-1, legacy cross pattern (second-hand), places numbered clockwise.
  it.each([
    [4, '1-3-2-4'],
    [8, '1-5-3-7, 2-6-4-8'],
    [12, '1-7-4-10, 2-8-5-11, 3-9-6-12'],
    [16, '1-9-5-13, 3-11-7-15, 2-10-6-14, 4-12-8-16'],
  ])('%d bolts: %s', (bolts, printed) =>
    expect(
      groups(bolts)
        .map((group) => group.join('-'))
        .join(', '),
    ).toBe(printed),
  );

  // Six bolts: opposite pairs (from memory).
  it('six bolts go by opposite pairs', () =>
    expect(groups(6).map(([one, other]) => Math.abs(one! - other!))).toEqual([3, 3, 3]));

  // Gasket maker's guidance crediting the Fluid Sealing Association (seen): 30, 60, 100 %, then once round at full torque.
  it('passes are 30, 60, 100 % crosswise, then once round at 100 %', () =>
    expect(passes.map(({ share, pattern }) => [share, pattern])).toEqual([
      [0.3, 'cross'],
      [0.6, 'cross'],
      [1, 'cross'],
      [1, 'round'],
    ]));
});

describe('torque in both units', () => {
  // AWWA C502-18 §4.5.5 (seen): 200 lbf·ft is what a hydrant must stand; 271.16 N·m (computed with NIST's 1.355 818).
  it('200 lbf·ft is 271.16 N·m', () => expect(bothUnits(200, 'lbf.ft').nM).toBeCloseTo(271.16, 2));

  // NIST SP 811 (second-hand): 1 lbf·ft = 1.355 818 N·m, to its seven digits.
  it('1 lbf·ft is 1.355818 N·m', () => expect(bothUnits(1, 'lbf.ft').nM.toPrecision(7)).toBe('1.355818'));

  // Common practice, no source; check values only, nowhere a default: 80 lbf·ft on flange bolts, 65 on bonnet bolts.
  it.each([
    [80, 108.465],
    [65, 88.128],
  ])('%d lbf·ft is %d N·m', (lbfFt, nM) => expect(bothUnits(lbfFt, 'lbf.ft').nM).toBeCloseTo(nM, 3));

  it('a printed value keeps its digits in its own unit', () => {
    expect(bothUnits(110, 'N.m').nM).toBe(110);
    expect(bothUnits(110, 'N.m').lbfFt).toBeCloseTo(81.132, 3);
  });
});

describe('records of common practice, no source', () => {
  const manual = { manual: 'common practice, no source', page: '1' };

  it('bonnet: 65 lbf·ft in a star pattern on six bolts', () => {
    const record = torqueRecord.parse({
      kind: 'torque',
      joint: 'bonnet',
      bolts: 6,
      torque: 65,
      unit: 'lbf.ft',
      ...manual,
    });
    expect(record).toMatchObject({ torque: 65, torqueTo: null });
    expect(tighteningOrder(record.bolts!)).toHaveLength(6);
  });

  it('a nut that carries thrust: run home, backed off ⅛ to ¼ turn until its lock lines up', () => {
    const record = backOffRecord.parse({
      kind: 'back-off',
      joint: 'operating nut',
      bolts: null,
      turns: 1 / 8,
      turnsTo: 1 / 4,
      lock: true,
      ...manual,
    });
    expect(sayBackOff(record, 'en')).toBe(
      'Run the nut home and back it off ⅛ to ¼ of a turn, until its lock lines up (common practice, no source, page 1).',
    );
  });

  // Wrench sizes in whole millimetres.
  it.each([
    ['5/16', 5 / 16, 8],
    ['3/4', 3 / 4, 19],
    ['7/64', 7 / 64, 3],
  ])('%s in is about %d mm', (_, inches, mm) => expect(Math.round(convert(inches, 'in', 'mm'))).toBe(mm));
});
