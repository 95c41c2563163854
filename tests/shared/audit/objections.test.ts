import { describe, expect, it } from 'vitest';
import type { AuditCase } from '../../../shared/audit/case.ts';
import { objectionsTo, rules, withAnswers } from '../../../shared/audit/objections.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import type { FactKind } from '../../../shared/submissions/kinds.ts';
import { hasWords, say } from '../../../shared/words/index.ts';
import { labor, machine } from '../../support/rates.ts';
import { at, fact, onClaim, recorded } from '../../support/submissions.ts';
import { hour, photo, crew, caseOf, raised, body, premium, repair, party } from './caseOf.ts';
import { cases } from './raisedBy.ts';

/**
 * Each rule, raised by the one thing that it is about and silent without it. What an adjuster asks is common practice,
 * with the cases named in the reference of costs; amounts are by hand.
 */

/** What issue 4 of the work lists as the least, in its words, and the rules that are it. */
const listed: readonly (readonly [phrase: string, ...rules: readonly string[]])[] = [
  ['no crash-report number', 'no-crash-report'],
  ['liability not shown', 'liability-not-shown'],
  ['hit and run with no other payer', 'hit-and-run-no-payer'],
  ['driver’s insurer unknown', 'insurer-unknown'],
  ['no photo before repair', 'no-photo-before-repair'],
  ['or no scale', 'no-scale-in-photos'],
  ['photo time far from the event', 'photo-far-from-event'],
  ['or camera clock wrong', 'camera-clock-differs'],
  ['last inspection or flow test missing or old', 'no-inspection-before', 'no-flow-test-before'],
  ['hours overlap for one person across jobs', 'hours-overlap-elsewhere'],
  ['machine hours above crew hours', 'machine-above-crew'],
  ['machine billed by the day', 'machine-by-day'],
  ['standby billed', 'standby-billed'],
  ['overtime with no reason', 'premium-without-reason'],
  ['crew size out of line with the utility’s own past repairs of the kind', 'crew-out-of-line'],
  ['call-out minimum without a call time', 'minimum-without-call'],
  ['part with no invoice or issue slip', 'part-without-paper'],
  ['part not of the hydrant’s model', 'part-not-of-model'],
  ['hydrant near the end of its service life with no counter-calculation', 'old-without-counter-calculation'],
  ['upgrade billed without its reason', 'upgrade-without-reason'],
  ['overhead with no authority', 'overhead-without-authority'],
  ['percentage on a rate that holds it', 'share-on-schedule-rate'],
  ['rate edition not in force on the date', 'edition-not-in-force'],
  ['water figure above what the hydrant can deliver', 'water-above-hydrant'],
  ['work after return to service', 'work-after-return'],
  ['repair before isolation', 'repair-before-isolation'],
  ['duplicate line', 'duplicate-line'],
  ['bill that does not foot', 'bill-does-not-foot'],
  ['estimate where an actual exists', 'water-estimate-though-metered'],
  ['water billed though the main valve held', 'water-though-valve-held', 'water-seen-though-valve-held'],
  ['limitation date near', 'limitation-near'],
];

describe('what the work lists as the least', () => {
  it.each(listed)('%s', (_phrase, ...wanted) => {
    for (const each of wanted) {
      expect(raised(cases[each]!())).toContain(each);
      expect(raised(caseOf())).not.toContain(each);
    }
  });
});

describe('likely objections', () => {
  it('are none to a case that has everything but a paper with a page', () => {
    expect(raised(caseOf())).toEqual([]);
  });

  it('have at least 25 rules, each with its words, and each is tried here', () => {
    expect(rules.length).toBeGreaterThanOrEqual(25);
    expect(Object.keys(cases).sort()).toEqual(rules.map(({ rule }) => rule).sort());
    for (const { rule } of rules)
      expect([rule, hasWords(`objection.${rule}`), hasWords(`objection.${rule}.answer`)]).toEqual([
        rule,
        true,
        true,
      ]);
  });

  it.each(Object.entries(cases))('%s', (rule, make) => {
    expect(raised(make())).toContain(rule);
  });

  it.each(Object.entries(cases))('%s is said in both languages with what it is about', (rule, make) => {
    const found = objectionsTo(make()).find((each) => each.rule === rule);
    for (const locale of ['en', 'es'] as const)
      for (const key of [`objection.${rule}`, `objection.${rule}.answer`]) {
        const sentence = say(locale, key, found?.params ?? {});
        expect(sentence).toMatch(/^[A-ZÁÉÍÓÚÑ0-9].*[.]$/u);
        // Nothing left empty, no code in place of a word.
        expect(sentence).not.toMatch(/undefined|NaN|\{|\}|“”|«»|\(\)|  /u);
      }
  });

  it('takes no photo of after the work began for one of before, though it came with the strike report', () => {
    const withPhoto = (takenAt: string | null): boolean =>
      raised(caseOf(body('strike', { photos: [photo('scale', takenAt, 'a1')] }))).includes(
        'no-photo-before-repair',
      );
    // Work begins at minute 60.
    expect([withPhoto(at(35)), withPhoto(null), withPhoto(at(90))]).toEqual([false, false, true]);
  });

  it('asks no call for hours that were rounded to steps and not brought to a minimum', () => {
    const inSteps = (minutes: number, minimumHours: string | null) =>
      raised(
        caseOf(
          {
            ...body('strike', { calledOutAt: null }),
            ...body('repair', { crew: [crew('w-1', 'mechanic', [hour(60, 60 + minutes)])] }),
          },
          {},
          {
            payRules: [
              {
                ...premium,
                otherHours: { ...premium.otherHours, minimumHours },
                increment: { minutes: 15, toward: 'up', of: 'call' },
              },
            ],
            labor: [{ ...labor('mechanic', '40.00'), payRulesId: 'p' }],
          },
        ),
      ).includes('minimum-without-call');
    expect([inSteps(115, null), inSteps(115, '1'), inSteps(115, '3')]).toEqual([false, false, true]);
  });

  it('puts of a best figure no more at stake than what it is above the low one', () => {
    const [found] = objectionsTo(cases['water-best-figure-chosen']!()).filter(
      ({ rule }) => rule === 'water-best-figure-chosen',
    );
    // 30.1 thousand gallons at $6.00 are $180.60; (1 - 25.8 / 30.1) of it is $25.80.
    expect(found).toMatchObject({ atStakeCents: 25_80, params: { figure: 'best', percent: 117 } });
  });

  it('rank by the money at stake, never more than the demand', () => {
    const audited = caseOf({
      ...party({ police: null }),
      ...body('repair', {
        parts: repair().parts.map((each) => ({ ...each, source: { from: 'stock', issueSlip: null } })),
      }),
    });
    // 2 h × 40 + 2 h × 25 + 400: all of it without a crash report, 400 without the slip.
    expect(objectionsTo(audited).map(({ rule, atStakeCents }) => [rule, atStakeCents])).toEqual([
      ['no-crash-report', 530_00],
      ['part-without-paper', 400_00],
    ]);
  });

  it('those with no money at stake come last, in the order in which a reader meets them', () => {
    const audited = caseOf({
      ...party({ police: null }),
      ...body('strike', { photos: [photo('overall', at(35), 'a1')] }),
      'flow-test': null,
      ...body('repair', {
        parts: repair().parts.map((each) => ({ ...each, source: { from: 'stock', issueSlip: null } })),
      }),
    });
    expect(objectionsTo(audited).map(({ rule, atStakeCents }) => [rule, atStakeCents])).toEqual([
      ['no-crash-report', 530_00],
      ['part-without-paper', 400_00],
      ['no-scale-in-photos', 0],
      ['no-flow-test-before', 0],
    ]);
  });

  it('ask for a correction of the record that they are about, and for a new one where there is none', () => {
    const of = (audited: AuditCase, wanted: string) =>
      objectionsTo(audited).find(({ rule }) => rule === wanted)?.corrects;
    const ids = ({ facts }: AuditCase, kind: FactKind) =>
      facts.flatMap(({ fact: each }) => (each.kind === kind ? [each.submissionId] : []));
    // The first of two repairs has the machine that nobody ran, the second the hours.
    const machineAlone = { ...repair(), crew: [], parts: [] };
    const two = caseOf({
      repair: [
        {
          ...machineAlone,
          machines: machineAlone.machines.map((each) => ({ ...each, operatorWorkerId: null })),
        },
        { ...repair(), machines: [] },
      ],
    });
    const [first, second] = ids(two, 'repair');
    expect(of(two, 'machine-without-operator')).toEqual([first]);
    const late = { ...two, strike: { ...two.strike, returnedAt: at(120) } };
    expect(of(late, 'work-after-return')).toEqual([second]);
    const noFinding = cases['no-findings-recorded']!();
    expect(of(noFinding, 'no-findings-recorded')).toEqual(ids(noFinding, 'strike'));
    // Papers are added beside each other, and with no party there is none to correct.
    expect(of(cases['no-scale-in-photos']!(), 'no-scale-in-photos')).toEqual([]);
    expect(of(cases['nobody-known']!(), 'nobody-known')).toEqual([]);
  });

  it('ask nobody who ran a machine that the rate book says works alone', () => {
    const board = (unattended: boolean) =>
      caseOf(
        body('repair', {
          machines: repair().machines.map((each) => ({
            ...each,
            operatorWorkerId: null,
            inUse: [hour(60, 420)],
          })),
        }),
        {},
        { machines: [{ ...machine('truck', 'hour', '6.80'), unattended }] },
      );
    expect(raised(board(false))).toEqual(['machine-without-operator', 'machine-above-crew']);
    // Its hours past those of the crew are still asked about, as what they are.
    expect(objectionsTo(board(true)).map(({ rule, params }) => [rule, params['unattended']])).toEqual([
      ['machine-above-crew', 'yes'],
    ]);
  });

  it('two clocks of a photo are told as two times alike', () => {
    const found = objectionsTo(cases['camera-clock-differs']!()).find(
      ({ rule }) => rule === 'camera-clock-differs',
    );
    const { cameraTime, takenAt } = found?.params ?? {};
    expect([cameraTime, takenAt]).toEqual([
      expect.stringMatching(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/),
      expect.stringMatching(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/),
    ]);
  });

  it('a police report among the papers answers only with its number', () => {
    const paper = (number: string | null) =>
      caseOf({
        ...party({ police: null }),
        documents: {
          documents: [
            {
              ...photo('overall', null, 'd4'),
              view: 'document' as const,
              mediaType: 'application/pdf' as const,
              what: 'police-report' as const,
              title: 'Crash report',
              number,
            },
          ],
        },
      });
    expect(raised(paper(null))).toContain('no-crash-report');
    expect(raised(paper('2026-04711'))).not.toContain('no-crash-report');
  });

  it('keep the last answer to each, by name', () => {
    const audited = caseOf(party({ police: null }));
    const answers = [
      fact('objection-answer', 900, onClaim(4), { objection: 'no-crash-report', answer: 'accepted' }),
      fact('objection-answer', 901, onClaim(4), {
        objection: 'no-crash-report',
        answer: 'answered',
        reason: 'It came by post.',
      }),
    ];
    const { facts } = effectiveFacts(answers.map((each) => recorded(each)));
    expect(withAnswers(objectionsTo(audited), facts)[0]?.answered).toMatchObject({
      answer: 'answered',
      reason: 'It came by post.',
      personId: 'w-7',
    });
  });
});
