import { describe, expect, it } from 'vitest';
import { hydrantTypes } from '../../../shared/inventory/hydrant.ts';
import { tooDeepForNothing } from '../../../shared/procedure/ground.ts';
import { barrelOf, procedureFor, scopeFor, scopes } from '../../../shared/procedure/procedureFor.ts';
import { neededBefore } from '../../../shared/procedure/holdPoints.ts';
import { modelAtStep } from '../../../shared/procedure/modelAtStep.ts';
import { procedureSteps, recordedElsewhere, stepHazards } from '../../../shared/procedure/steps.ts';
import { damageClasses } from '../../../shared/strikes/damage.ts';
import { forms } from '../../../shared/submissions/kinds.ts';
import { demoModels } from '../../../infra/local/demo/models.ts';
import { hasWords, say } from '../../../shared/words/index.ts';
import { sampleBodies } from '../../support/sampleBodies.ts';

const stepsFor = (...of: Parameters<typeof procedureFor>) => procedureFor(...of).map(({ step }) => step);

describe('the procedure of a dry-barrel breakaway repair', () => {
  it('is in the trade’s usual order', () => {
    // Issue 6, its list word for word; common practice, no source.
    expect(stepsFor('dry-barrel', 'breakaway')).toEqual([
      'traffic-and-protection', // traffic control and protective gear
      'vehicle-and-lines-safe', // the vehicle stays until energised lines and water are under control
      'isolated', // isolate,
      'pressure-gone', // prove pressure is gone,
      'drained', // drain
      'pumped-out', // (plugged drains: pumped instead)
      'taken-down', // take down the parted hardware
      'stem-freed', // free the stem
      'top-opened', // open the top
      'hidden-damage-checked', // look for hidden damage
      'faces-cleaned-gaskets-new', // clean faces, new gaskets
      'breakaway-parts-fitted', // new breakaway parts the right way up
      'nozzle-section-set', // set and face the nozzle section
      'tightened-to-torque', // tighten crosswise to torque
      'thrust-nut-set', // set the nut that carries thrust so that it turns freely
      'top-closed', // close the top in order
      'refilled-slowly', // refill slowly
      'leaks-looked-for', // look for leaks
      'opened-and-closed', // open and close fully
      'drain-down-timed', // drain-down within its time
      'flushed', // flush
      'flow-tested', // flow test
      'caps-on', // caps
      'height-checked', // breakaway plane at the right height above ground
      'marked-off', // mark off
      'dispatch-told', // tell dispatch
    ]);
  });

  it('says what the model of the hydrant has for a step, and nothing where it has nothing', () => {
    const us = { locale: 'en', system: 'us' } as const;
    const [d51, d45, wet] = demoModels;
    // The demo's invented models; 72 × 1.355 818 = 97.6 N·m (NIST SP 811, second-hand); order ASME PCC-1 (second-hand).
    expect(modelAtStep('tightened-to-torque', d51!, us)[0]).toBe(
      'Breakaway flange: 72 lbf·ft (97.6 N·m). 8 bolts, in the order 1-5-3-7, 2-6-4-8.',
    );
    expect(modelAtStep('faces-cleaned-gaskets-new', d51!, us)[0]).toBe(
      'Stem threads: Food-grade grease, by Brindlewater D-51 field manual, invented, page 19.',
    );
    const cover = modelAtStep('tightened-to-torque', d51!, us).at(-1);
    expect(cover).toContain('Weather cover: ');
    expect(cover).not.toMatch(/\d (lbf|N·m)/);
    // A model as the first form kept it.
    expect(modelAtStep('tightened-to-torque', d45!, us)).toHaveLength(1);
    expect(modelAtStep('thrust-nut-set', d45!, us)).toEqual([]);
    // A joint whose torque the record does not hold is named and sent to the manual: nothing is taken for it.
    expect(modelAtStep('tightened-to-torque', wet!, us)).toEqual([
      expect.stringContaining('78 lbf·ft'),
      expect.stringContaining('see the maker’s manual'),
    ]);
    expect(modelAtStep('thrust-nut-set', wet!, us)).toEqual([]);
  });
});

describe('the procedure of another job', () => {
  it('of a wet barrel asks for no drain and no thrust nut, and for every outlet valve', () => {
    const wet = stepsFor('wet-barrel', 'breakaway');
    for (const step of ['drained', 'pumped-out', 'drain-down-timed', 'thrust-nut-set', 'top-opened'] as const)
      expect(wet).not.toContain(step);
    for (const step of ['water-lowered', 'outlet-valves-checked', 'isolated', 'pressure-gone'] as const)
      expect(wet).toContain(step);
  });

  it('below ground locates first, protects the trench before anybody is in it, and fills it after the leaks were looked for', () => {
    // Locate: 29 CFR 1926.651(b), seen; protection: 1926.652(a)(1), from memory; the rest common practice, no source.
    for (const type of hydrantTypes)
      for (const scope of ['dig', 'main', 'replace'] as const) {
        const steps = stepsFor(type, scope);
        const inOrder = [
          'locate-ticket',
          'isolated',
          'pressure-gone',
          'dug',
          'trench-protected',
          'in-excavation',
          'thrust-block-set',
          'refilled-slowly',
          'leaks-looked-for',
          'backfilled',
        ] as const;
        const places = inOrder.map((step) => steps.indexOf(step));
        expect(places).not.toContain(-1);
        expect(places).toEqual([...places].sort((a, b) => a - b));
      }
    expect(stepsFor('dry-barrel', 'breakaway')).not.toContain('dug');
  });

  it('disinfects a main that was opened before water is let into it (AWWA C651, from memory)', () => {
    for (const scope of ['main', 'replace'] as const) {
      const steps = stepsFor('dry-barrel', scope);
      expect(steps.indexOf('main-opened')).toBeGreaterThan(-1);
      expect(steps.indexOf('main-disinfected')).toBeGreaterThan(steps.indexOf('main-opened'));
      expect(steps.indexOf('refilled-slowly')).toBeGreaterThan(steps.indexOf('main-disinfected'));
    }
    // Of a replacement only where the main was opened; a valve on the lateral may have held.
    expect(procedureFor('dry-barrel', 'replace').find(({ step }) => step === 'main-opened')?.ifNeeded).toBe(
      true,
    );
  });

  it('follows from the damage, and hidden damage makes a dig of a breakaway repair and never less of a wider job', () => {
    expect(damageClasses.map((damage) => scopeFor(damage, false))).toEqual([
      'breakaway',
      'breakaway',
      'dig',
      'dig',
      'main',
      'replace',
    ]);
    expect(damageClasses.map((damage) => scopeFor(damage, true))).toEqual([
      'dig',
      'dig',
      'dig',
      'dig',
      'main',
      'replace',
    ]);
    expect([scopeFor(null, false), scopeFor(null, true)]).toEqual(['breakaway', 'dig']);
  });
});

describe('every procedure', () => {
  it.each(hydrantTypes.flatMap((type) => scopes.map((scope) => [type, scope] as const)))(
    'of %s, %s: has each step once, and before a hold point everything it waits for',
    (type, scope) => {
      const steps = stepsFor(type, scope);
      expect(new Set(steps).size).toBe(steps.length);
      expect(steps).toEqual(procedureSteps.filter((step) => steps.includes(step)));
      for (const step of steps)
        for (const needed of neededBefore(step, type)) {
          expect(steps).toContain(needed);
          expect(steps.indexOf(needed)).toBeLessThan(steps.indexOf(step));
        }
    },
  );

  it('holds an unknown type to the dry barrel’s steps', () => {
    for (const scope of scopes) expect(stepsFor('unknown', scope)).toEqual(stepsFor('dry-barrel', scope));
    expect(barrelOf('unknown')).toBe('dry');
  });

  it('keeps the codes of before readable', () => {
    // The sixteen that the first form of a repair had.
    const first = [
      'traffic-and-protection',
      'isolated',
      'pressure-gone',
      'drained',
      'taken-down',
      'stem-freed',
      'top-opened',
      'hidden-damage-checked',
      'faces-cleaned-gaskets-new',
      'breakaway-parts-fitted',
      'nozzle-section-set',
      'tightened-to-torque',
      'thrust-nut-set',
      'top-closed',
      'refilled-slowly',
      'caps-on',
    ];
    const steps = first.map((step) => ({
      step,
      doneAt: '2026-03-04T02:10:00Z',
      byWorkerId: 'w-7',
      note: null,
    }));
    const read = forms.repair.body.safeParse({ ...sampleBodies.repair, steps });
    expect(read.success).toBe(true);
  });

  it('has words for every step, hazard, phase, scope and breach in both languages', () => {
    for (const locale of ['en', 'es'] as const)
      for (const step of procedureSteps)
        for (const key of [`step.${step}`, `step.${step}.caution`])
          expect(say(locale, key)).not.toMatch(/^\[/);
    for (const key of [
      ...stepHazards.map((each) => `step-hazard.${each}`),
      ...scopes.map((each) => `scope.${each}`),
      ...Object.values(recordedElsewhere).flatMap((each) => [
        `procedure.elsewhere.${each}`,
        `procedure.to.${each}`,
      ]),
    ])
      expect(hasWords(key)).toBe(true);
  });
});

describe('a trench that is said to need nothing', () => {
  // 29 CFR 1926.652(a)(1), from memory: less than 5 ft, and no indication of a potential cave-in.
  it.each([
    [4.9, 'shallow-and-sound', false],
    [5, 'shallow-and-sound', true],
    [8, 'shield', false],
    [8, 'stable-rock', false],
  ] as const)('%s ft, %s: doubted is %s', (trenchDepthFt, trenchProtection, doubted) => {
    expect(tooDeepForNothing({ trenchDepthFt, trenchProtection })).toBe(doubted);
  });
});
