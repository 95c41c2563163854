import { describe, expect, it } from 'vitest';
import { findingKeys, known, type FindingKey, type Findings } from '../../../shared/damage/finding.ts';
import { judgeDamage } from '../../../shared/damage/judge.ts';
import { fires } from '../../../shared/damage/rule.ts';
import { contradictions, damageRules } from '../../../shared/damage/rules.ts';
import { hasWords } from '../../../shared/words/index.ts';
import { findings } from './support.ts';

const all = [...damageRules, ...contradictions];
const held = (id: string, said: Partial<Record<FindingKey, string>>): boolean =>
  all.filter((rule) => rule.id === id).some((rule) => fires(rule, findings(said)) !== null);

type Said = Partial<Record<FindingKey, string>>;

const cleanDry: Said = {
  type: 'dry-barrel',
  breakawayFlangeParted: 'yes',
  stemCouplingParted: 'yes',
  nozzleSection: 'sound',
  lowerBarrel: 'sound',
  barrelStands: 'upright',
  ground: 'firm',
  belowGrade: 'no-sign',
  main: 'no-sign',
  mainValve: 'holds',
};
const { stemCouplingParted: _coupling, mainValve: _valve, ...above } = cleanDry;
const cleanWet: Said = { ...above, type: 'wet-barrel', checkValve: 'none-fitted' };

/**
 * Each rule: what it fires on, and one finding that silences it. A traffic (breakaway) hydrant parts at flange and stem
 * coupling so that what is below stays whole: AWWA C502 and M17, from memory. The rest: common practice, no source.
 */
const table: readonly (readonly [string, Said, Said])[] = [
  ['flange-parted', { breakawayFlangeParted: 'yes' }, { breakawayFlangeParted: 'no' }],
  ['coupling-parted', { stemCouplingParted: 'yes' }, { stemCouplingParted: 'no' }],
  ['clean-break', cleanDry, { ...cleanDry, lowerBarrel: 'damaged' }],
  ['wet-clean-break', cleanWet, { ...cleanWet, checkValve: 'does-not-hold' }],
  ['nozzle-section-damaged', { nozzleSection: 'damaged' }, { nozzleSection: 'sound' }],
  ['barrel-damaged', { lowerBarrel: 'damaged' }, { lowerBarrel: 'sound' }],
  ['barrel-leans', { barrelStands: 'leans' }, { barrelStands: 'upright' }],
  ['main-valve-leaks', { mainValve: 'does-not-hold' }, { mainValve: 'holds' }],
  ['check-valve-leaks', { checkValve: 'does-not-hold' }, { checkValve: 'none-fitted' }],
  ['stem-bent', { stem: 'bent' }, { stem: 'straight' }],
  ['seat-scored', { seat: 'scored' }, { seat: 'sound' }],
  ['below-grade-found', { belowGrade: 'found' }, { belowGrade: 'suspected' }],
  ['below-grade-suspected', { belowGrade: 'suspected' }, { belowGrade: 'no-sign' }],
  ['barrel-leans-below', { barrelStands: 'leans' }, { barrelStands: 'upright' }],
  ['out-of-place', { barrelStands: 'out-of-place' }, { barrelStands: 'leans' }],
  [
    'flange-held',
    { type: 'dry-barrel', breakawayFlangeParted: 'no', nozzleSection: 'damaged' },
    { type: 'wet-barrel', breakawayFlangeParted: 'no', nozzleSection: 'damaged' },
  ],
  ['washed-out', { ground: 'washed-out' }, { ground: 'firm' }],
  ['water-rising', { ground: 'water-rising' }, { ground: 'firm' }],
  ['drain-blocked', { drain: 'blocked' }, { drain: 'clear' }],
  ['dig-asked-for', { dig: 'needed' }, {}],
  ['stem-bent-too', { stem: 'bent' }, { stem: 'straight' }],
  ['seat-scored-too', { seat: 'scored' }, { seat: 'sound' }],
  ['dig-asked-for-too', { dig: 'needed' }, {}],
  ['main-found', { main: 'found' }, { main: 'suspected' }],
  ['main-suspected', { main: 'suspected' }, { main: 'no-sign' }],
  ['water-rising-main', { ground: 'water-rising' }, { ground: 'washed-out' }],
  ['out-of-place-main', { barrelStands: 'out-of-place' }, { barrelStands: 'upright' }],
  [
    'both-halves',
    { nozzleSection: 'damaged', lowerBarrel: 'damaged' },
    { nozzleSection: 'damaged', lowerBarrel: 'sound' },
  ],
  [
    'barrel-and-below',
    { lowerBarrel: 'damaged', belowGrade: 'found' },
    { lowerBarrel: 'damaged', belowGrade: 'suspected' },
  ],
  ['out-of-place-whole', { barrelStands: 'out-of-place' }, { barrelStands: 'leans' }],
  ['flange-not-parted', { breakawayFlangeParted: 'no' }, { breakawayFlangeParted: 'yes' }],
  [
    'coupling-held',
    { breakawayFlangeParted: 'yes', stemCouplingParted: 'no' },
    { breakawayFlangeParted: 'yes', stemCouplingParted: 'yes' },
  ],
  ['main-valve-passes', { mainValve: 'does-not-hold' }, { mainValve: 'holds' }],
  ['check-valve-passes', { checkValve: 'does-not-hold' }, { checkValve: 'holds' }],
  ['more-than-the-kit', { lowerBarrel: 'damaged' }, { lowerBarrel: 'sound' }],
  ['not-upright', { barrelStands: 'out-of-place' }, { barrelStands: 'upright' }],
  ['deeper-than-the-barrel', { belowGrade: 'found' }, { belowGrade: 'suspected' }],
  [
    'wet-has-no-coupling',
    { type: 'wet-barrel', stemCouplingParted: 'yes' },
    { type: 'dry-barrel', stemCouplingParted: 'yes' },
  ],
  [
    'type-has-no-flange',
    { type: 'wall', breakawayFlangeParted: 'yes' },
    { type: 'wet-barrel', breakawayFlangeParted: 'yes' },
  ],
  ['barrel-sound', { lowerBarrel: 'sound' }, { lowerBarrel: 'damaged' }],
  ['main-valve-holds', { mainValve: 'holds' }, { mainValve: 'does-not-hold' }],
  ['no-sign-below', { belowGrade: 'no-sign' }, { belowGrade: 'suspected' }],
  ['stands-upright', { barrelStands: 'upright' }, { barrelStands: 'leans' }],
  ['no-sign-on-the-main', { main: 'no-sign' }, { main: 'suspected' }],
  [
    'valve-stops-it',
    { isolationValve: 'holds', ground: 'water-rising' },
    { isolationValve: 'does-not-hold', ground: 'water-rising' },
  ],
];

describe('each rule', () => {
  it.each(table)('%s fires on its findings and is silent otherwise', (id, said, silent) => {
    expect(held(id, said)).toBe(true);
    expect(held(id, silent)).toBe(false);
  });

  it.each(table)('%s needs every one of its findings: one that is not known silences it', (id, said) => {
    const rule = all.find((each) => each.id === id)!;
    for (const { key } of rule.conditions) {
      const { [key]: _left, ...rest } = said;
      expect(held(id, rest)).toBe(false);
    }
  });

  it('stands in this table, has a sentence of its own, a source, and findings that can be said', () => {
    expect(all.map(({ id }) => id).sort()).toEqual(table.map(([id]) => id).sort());
    for (const { id, source, conditions } of all) {
      expect(hasWords(`damage.rule.${id}`), id).toBe(true);
      expect(source).not.toBe('');
      expect(conditions.length).toBeGreaterThan(0);
      for (const { key, values } of conditions)
        for (const value of values) expect(known[key] as readonly string[]).toContain(value);
    }
  });
});

const judged = (said: Said) => judgeDamage({ findings: findings(said), disagree: [] });
const answers = (said: Said): string[] =>
  judged(said).ranked.map(({ damage, level }) => `${level} ${damage}`);

describe('the judgement', () => {
  it('of a clean break with everything below looked at is a kit, and likely', () => {
    expect(answers(cleanDry)).toEqual(['likely breakaway-kit']);
    expect(judged(cleanDry)).toMatchObject({ cannotTell: false, look: [] });
  });

  it.each(Object.keys(cleanDry) as FindingKey[])(
    'of the same with %s not known cannot tell, and says to look there',
    (key) => {
      const { [key]: _left, ...rest } = cleanDry;
      expect(judged(rest)).toMatchObject({ cannotTell: true, look: [key] });
    },
  );

  it('of nothing found cannot tell, and asks for everything that the type has', () => {
    expect(judged({})).toMatchObject({ cannotTell: true, ranked: [], atLeast: false });
    expect(judged({ type: 'dry-barrel' }).look).not.toContain('checkValve');
    const wet = judged({ type: 'wet-barrel' }).look;
    expect(wet).toContain('checkValve');
    expect(wet).not.toContain('stemCouplingParted');
    expect(wet).not.toContain('mainValve');
    // What shows only with the top open is not asked for before it is.
    for (const key of ['stem', 'seat', 'drain', 'dig'] as const) expect(judged({}).look).not.toContain(key);
  });

  it('of a wet barrel calls its break-off likely only when it knows what holds the water', () => {
    expect(answers(cleanWet)).toEqual(['likely breakaway-kit']);
    const { checkValve: _unknown, ...rest } = cleanWet;
    expect(answers(rest)).toEqual(['possible breakaway-kit']);
    expect(answers({ ...cleanWet, type: 'dry-barrel' })).toEqual(['possible breakaway-kit']);
  });

  it('of a type with no breakaway flange is never likely a kit', () => {
    for (const type of ['underground', 'wall', 'standpipe'])
      expect(answers({ ...cleanDry, type })).toEqual(['possible breakaway-kit']);
  });

  it('of damage that was seen names the deepest first, and that it may go deeper', () => {
    expect(answers({ ...cleanDry, nozzleSection: 'damaged' })).toEqual([
      'seen nozzle-section',
      'possible breakaway-kit',
    ]);
    expect(judged({ ...cleanDry, nozzleSection: 'damaged' }).atLeast).toBe(false);
    expect(judged({ nozzleSection: 'damaged' })).toMatchObject({
      atLeast: true,
      look: ['ground', 'barrelStands', 'lowerBarrel', 'belowGrade', 'mainValve', 'main'],
    });
    expect(answers({ lowerBarrel: 'damaged', belowGrade: 'found', main: 'found' })).toEqual([
      'seen main',
      'seen below-grade',
      'seen lower-barrel',
      'likely replace-whole',
    ]);
    expect(judged({ belowGrade: 'found', main: 'no-sign' })).toMatchObject({ atLeast: false, look: [] });
  });

  it('of a bent stem found on opening keeps the kit, says that it is not enough, and that a dig may follow', () => {
    expect(answers({ ...cleanDry, stem: 'bent' })).toEqual(['likely breakaway-kit', 'possible lower-barrel']);
    expect(judged({ ...cleanDry, stem: 'bent' }).ranked[0]!.against.map(({ rule }) => rule)).toEqual([
      'stem-bent-too',
    ]);
  });

  it('of a blocked drain keeps the kit, and says that a dig may follow', () => {
    expect(answers({ ...cleanDry, drain: 'blocked' })).toEqual([
      'likely breakaway-kit',
      'possible below-grade',
    ]);
  });

  it('names for each reason the findings that it rests on, and what speaks against it', () => {
    const { ranked } = judged({ ...cleanDry, mainValve: 'does-not-hold' });
    const kit = ranked.find(({ damage }) => damage === 'breakaway-kit')!;
    expect(kit.reasons.map(({ rule }) => rule)).toEqual(['flange-parted', 'coupling-parted']);
    expect(kit.reasons[0]!.findings.map(({ key, value }) => [key, value])).toEqual([
      ['breakawayFlangeParted', 'yes'],
    ]);
    expect(kit.against.map(({ rule }) => rule)).toEqual(['main-valve-passes']);
  });
});

describe('words', () => {
  it('stand for everything that can be found and looked at', () => {
    const said: Findings = {};
    expect(said).toEqual({});
    for (const key of findingKeys.filter(
      (each) => !['stem', 'seat', 'drain', 'dig', 'isolationValve'].includes(each),
    ))
      expect(hasWords(`damage.look.${key}`), key).toBe(true);
  });
});
