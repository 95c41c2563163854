import { describe, expect, it } from 'vitest';
import { clocksOf, todayIn } from '../../../shared/clocks/clocks.ts';
import { clockSettings } from '../../../shared/clocks/settings.ts';
import { deadlineWords } from '../../../shared/clocks/words.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import { recorded } from '../../support/submissions.ts';
import { dates, demand, opened, payer, rule, settingsWith, uuid } from './support.ts';

/** Rules and days here are invented; the counting itself is held against outside sources in tests/reference. */
describe('how it is said', () => {
  const found = dates([opened(), demand(10, '2026-04-01')], payer, '2026-04-02');

  it.each(['en', 'es'] as const)('what is asked of insurers is never the utility’s right (%s)', (locale) => {
    for (const one of Object.values(found).filter(({ whose }) => whose === 'payer-target')) {
      const { source } = deadlineWords(locale, one);
      expect(source).toContain('Invented Code 1-2');
      expect(source).toMatch(
        locale === 'en'
          ? /^Target set for insurers by .*; not the utility’s right/
          : /^Meta fijada a las aseguradoras por .*; no es un derecho/,
      );
      expect(source).not.toMatch(/own date|entitled|must|fecha propia/i);
    }
  });

  it('every date shows its rule, its source, and who has confirmed it', () => {
    expect(deadlineWords('en', found[`pay-by:${uuid(10)}`]!)).toEqual({
      clock: 'Payment',
      state: 'open',
      of: 'after the demand of Apr 1, 2026',
      ended: null,
      rule: '60 days after the demand of Apr 1, 2026',
      source: 'The utility’s own date. By Invented Code 1-2 (Nowhere). Not confirmed: have counsel confirm.',
    });
    const confirmed = settingsWith([
      rule({
        clock: 'limitation',
        from: 'strike',
        count: 1,
        unit: 'years',
        ifNotWorking: 'day-before',
        confirmedBy: { name: 'A. Counsel', on: '2026-01-05' },
      }),
    ]);
    expect(deadlineWords('en', dates([opened()], confirmed, '2026-04-02')['limitation']!)).toMatchObject({
      rule: '1 year after the strike of Mar 3, 2026; a day that is not worked moves to the one before that is',
      source:
        'The utility’s own date. By Invented Code 1-2 (Nowhere). Confirmed by A. Counsel on Jan 5, 2026.',
    });
  });
});

describe('the settings', () => {
  const codes = (rules: readonly object[]) =>
    clockSettings
      .safeParse({ rules })
      .error?.issues.map((issue) => [
        'params' in issue ? issue.params?.['problem'] : issue.code,
        issue.path.join('.'),
      ]);

  it.each([
    [
      'a clock that starts from what it cannot',
      [rule({ clock: 'limitation', from: 'demand-sent' })],
      [['clock-starts-elsewhere', 'rules.0.from']],
    ],
    [
      'years where days were meant',
      [rule({ clock: 'limitation', from: 'strike', count: 730, unit: 'years' })],
      [['clock-too-long', 'rules.0.count']],
    ],
    [
      'a target where there can be none',
      [rule({ clock: 'limitation', from: 'strike', whose: 'payer-target' })],
      [['clock-is-the-utilitys', 'rules.0.whose']],
    ],
    [
      'the same clock twice',
      [
        rule({ clock: 'answer-by', from: 'demand-sent' }),
        rule({ clock: 'answer-by', from: 'demand-sent', payerKinds: ['driver'] }),
      ],
      [['clock-rule-twice', 'rules.1']],
    ],
    [
      'apart by payer',
      [
        rule({ clock: 'answer-by', from: 'demand-sent', payerKinds: ['government'] }),
        rule({ clock: 'answer-by', from: 'demand-sent', payerKinds: ['driver'] }),
      ],
      undefined,
    ],
  ])('%s', (_, rules, expected) => expect(codes(rules)).toEqual(expected));

  it('hold no legal default', () => {
    expect(clockSettings.parse({ rules: [] }).rules).toEqual([]);
    expect(
      clocksOf({
        facts: effectiveFacts([recorded(opened())]).facts,
        struckOn: '2026-03-03',
        settings: { timeZone: 'UTC' },
        today: '2026-04-01',
      }),
    ).toEqual([]);
  });
});

describe('the utility’s day', () => {
  // 8 March 2026, 2:00 → 3:00 in New York (IANA); 03:30 UTC is still the evening before.
  it.each([
    ['2026-03-08T03:30:00Z', 'America/New_York', '2026-03-07'],
    ['2026-11-01T05:30:00Z', 'America/New_York', '2026-11-01'],
    ['2027-01-01T06:59:00Z', 'America/Los_Angeles', '2026-12-31'],
  ])('%s in %s is %s', (instant, zone, day) => expect(todayIn(new Date(instant), zone)).toBe(day));
});
