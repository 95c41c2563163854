import { describe, expect, it } from 'vitest';
import { demoModels } from '../../../infra/local/demo/models.ts';
import { problemsFromZod } from '../../../shared/problems/fromZod.ts';
import { forms } from '../../../shared/submissions/kinds.ts';
import { jointsOf, torqueOf, torqueRecordFrom } from '../../../shared/tightening/fromModel.ts';
import { tighteningDoubts } from '../../../shared/tightening/judge.ts';
import { modelJoint, type ModelJoint } from '../../../shared/tightening/modelJoint.ts';
import { tighteningPlan } from '../../../shared/tightening/plan.ts';
import {
  tightenedJoint,
  tightenedJoints,
  type TightenedJoint,
} from '../../../shared/tightening/tightened.ts';
import { bothUnits } from '../../../shared/tightening/torqueUnits.ts';
import type * as z from 'zod';
import { sampleBodies } from '../../support/sampleBodies.ts';

/** Invented: no torque in these tests is anybody's default. */
const flange = {
  kind: 'bolts',
  joint: 'flange',
  bolts: 8,
  torque: 71,
  torqueTo: null,
  unit: 'lbf.ft',
  condition: 'lubricated',
  wrenchTolerancePercent: 4,
  manual: 'Invented Model 7',
  page: '14',
} as const;
const nut = {
  kind: 'back-off',
  joint: 'nut',
  bolts: null,
  turns: 0.125,
  turnsTo: 0.25,
  lock: true,
  manual: 'Invented Model 7',
  page: '15',
} as const;

const problems = (schema: z.ZodType, given: unknown): string[] => {
  const parsed = schema.safeParse(given, { reportInput: true });
  return parsed.success
    ? []
    : problemsFromZod(parsed.error.issues).map(({ path, code }) => `${path} ${code}`);
};

describe('a joint of a model', () => {
  it.each<[string, object, string[]]>([
    ['complete', {}, []],
    [
      'with no torque, and then nothing else either',
      { torque: null, unit: null, manual: null, page: null },
      [],
    ],
    ['with a torque and no manual', { manual: null }, ['manual torque-needs-source']],
    ['with a torque and no page', { page: null }, ['page torque-needs-source']],
    ['with a torque in no unit', { unit: null }, ['unit torque-needs-unit']],
    ['in a unit that is printed nowhere', { unit: 'ft-lb' }, ['unit not-one-of']],
    ['with a range upside down', { torqueTo: 70 }, ['torqueTo range-upside-down']],
    ['with the upper end alone', { torque: null, torqueTo: 80 }, ['torque range-without-start']],
    ['with threads of a third kind', { condition: 'wet' }, ['condition not-one-of']],
    ['with half a bolt', { bolts: 7.5 }, ['bolts not-a-whole-number']],
  ])('%s', (_, change, expected) => {
    const found = problems(modelJoint, { ...flange, ...change });
    if (expected[0]?.startsWith('bolts')) expect(found.map((one) => one.split(' ')[0])).toEqual(['bolts']);
    else expect(found).toEqual(expected);
  });

  it('a nut that carries thrust has turns, not a torque', () => {
    expect(problems(modelJoint, nut)).toEqual([]);
    expect(problems(modelJoint, { ...nut, turnsTo: 0.1 })).toEqual(['turnsTo range-upside-down']);
    expect(torqueOf(modelJoint.parse(nut))).toBeNull();
  });

  it('stands once in a model', () =>
    expect(
      problems(forms['hydrant-model'].body, {
        ...sampleBodies['hydrant-model'],
        joints: [flange, nut, flange],
      }),
    ).toEqual(['joints.2.joint joint-twice']));
});

describe('a model stored before joints had a list of their own', () => {
  const { torques } = sampleBodies['hydrant-model'];
  it('is still accepted as it was, and read as what it says', () => {
    const { joints, ...before } = { joints: undefined, ...sampleBodies['hydrant-model'] };
    expect(joints).toBeUndefined();
    const body = forms['hydrant-model'].body.parse(before);
    expect(body).toEqual(before);
    expect(jointsOf(body)).toEqual([
      {
        kind: 'bolts',
        joint: 'flange',
        bolts: 6,
        torque: 77,
        torqueTo: null,
        unit: 'lbf.ft',
        condition: null,
        wrenchTolerancePercent: null,
        manual: 'Invented manual',
        page: '12',
      },
    ]);
  });
  it('gives way to the list, joint by joint', () =>
    expect(jointsOf({ torques, joints: [flange] }).map((joint) => torqueOf(joint)?.torque)).toEqual([71]));
  it('stands in the demo beside the new', () => {
    expect(demoModels.map((model) => jointsOf(model).length)).toEqual([4, 1, 2]);
    expect(torqueRecordFrom(demoModels[1]!, 'Breakaway flange')?.unit).toBe('lbf.ft');
  });
});

describe('a torque as printed', () => {
  // NIST SP 811, appendix B (second-hand): 1 lbf·ft 1.355 818 N·m, 1 lbf·in 0.112 984 8 N·m, 1 kgf·m 9.806 65 N·m.
  it.each([
    ['lbf.ft', 1.355818],
    ['lbf.in', 0.1129848],
    ['N.m', 1],
    ['kgf.m', 9.80665],
  ] as const)('1 %s is %d N·m', (unit, nM) => {
    const digits = String(nM).replace(/^0\./, '').replace('.', '').replace(/^0+/, '').length;
    expect(Number(bothUnits(1, unit).nM.toPrecision(digits))).toBe(nM);
    expect(bothUnits(1, unit).lbfFt).toBeCloseTo(nM / 1.355818, 6);
  });
  it('keeps its unit through the plan', () => {
    const record = torqueOf(modelJoint.parse({ ...flange, torque: 8, torqueTo: 9, unit: 'kgf.m' }));
    const { torque, wrench } = tighteningPlan({ record, wrenchToleranceFraction: 0.04 });
    expect(torque?.nM).toBeCloseTo(78.4532, 9);
    expect(torque?.to?.nM).toBeCloseTo(88.25985, 9);
    expect(wrench?.most.nM).toBeCloseTo(88.25985 * 1.04, 9);
  });
});

const done: TightenedJoint = tightenedJoint.parse({
  kind: 'bolts',
  joint: 'flange',
  bolts: 8,
  passes: ['30', '60', '100', 'round'],
  torqueLbfFt: 71,
  wrenchId: 'TW-3',
  wrenchCalibratedOn: '2026-02-19',
  manual: 'Invented Model 7',
  page: '14',
  doneAt: '2026-03-04T05:00:00Z',
  byWorkerId: 'w-7',
});
const set: TightenedJoint = tightenedJoint.parse({
  kind: 'back-off',
  joint: 'nut',
  turns: 0.25,
  lockLinedUp: true,
  manual: 'Invented Model 7',
  page: '15',
  doneAt: '2026-03-04T05:00:00Z',
  byWorkerId: 'w-7',
});

describe('a record of tightening', () => {
  it.each<[string, object, string[]]>([
    ['complete', {}, []],
    [
      'with nothing written down but who and when',
      { torqueLbfFt: null, wrenchId: null, wrenchCalibratedOn: null, manual: null, page: null, passes: [] },
      [],
    ],
    ['with a torque and no manual', { manual: null }, ['manual torque-needs-source']],
    ['with a pass twice', { passes: ['30', '30'] }, ['passes pass-twice']],
    ['by nobody', { byWorkerId: undefined }, ['byWorkerId required']],
    ['at no time', { doneAt: undefined }, ['doneAt required']],
  ])('%s', (_, change, expected) =>
    expect(problems(tightenedJoint, { ...done, ...change })).toEqual(expected),
  );

  it('names each joint once', () =>
    expect(problems(tightenedJoints, [done, set, done])).toEqual(['2.joint joint-twice']));

  it('is not asked of a repair of before', () => {
    expect(forms.repair.body.parse(sampleBodies.repair)).toEqual(sampleBodies.repair);
    const body = forms.repair.body.parse({ ...sampleBodies.repair, tightened: [done, set] });
    expect(body.tightened).toEqual([done, set]);
  });
});

describe('doubts beside the model’s record', () => {
  const joint = (change: object = {}): ModelJoint => modelJoint.parse({ ...flange, ...change });
  const codes = (one: TightenedJoint, recorded: ModelJoint | null, day = '2026-03-04'): string[] =>
    tighteningDoubts(one, recorded, day).map(({ code }) => code);

  it('none, when it was done as printed', () => {
    expect(codes(done, joint())).toEqual([]);
    expect(codes(set, modelJoint.parse(nut))).toEqual([]);
    // 71 lbf·ft is 96.26 N·m (× 1.355 818): printed in the other unit it is the same torque.
    expect(codes(done, joint({ torque: 96.3, unit: 'N.m' }))).toEqual([]);
    expect(codes(done, joint({ torque: 65, torqueTo: 75 }))).toEqual([]);
  });
  it('none from a torque that nobody has', () => {
    expect(codes(done, null)).toEqual([]);
    expect(codes(done, joint({ torque: null, unit: null }))).toEqual([]);
  });
  it.each<[string, object, object, string[]]>([
    ['another torque', { torqueLbfFt: 80 }, {}, ['torque-not-as-printed']],
    ['newton metres taken for pound feet', { torqueLbfFt: 96 }, {}, ['torque-not-as-printed']],
    ['below a range', { torqueLbfFt: 60 }, { torque: 65, torqueTo: 75 }, ['torque-not-as-printed']],
    ['passes left out', { passes: ['100'] }, {}, ['passes-missing']],
    ['a wrench calibrated later', { wrenchCalibratedOn: '2026-03-05' }, {}, ['wrench-calibrated-after']],
  ])('%s', (_, change, recorded, expected) =>
    expect(codes(tightenedJoint.parse({ ...done, ...change }), joint(recorded))).toEqual(expected),
  );
  it('of a nut: another part of a turn, a lock that did not line up', () =>
    expect(
      codes(tightenedJoint.parse({ ...set, turns: 0.5, lockLinedUp: false }), modelJoint.parse(nut)),
    ).toEqual(['turns-not-as-printed', 'lock-not-lined-up']));
});
