import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findingKeys, known, type FindingKey } from '../../../shared/damage/finding.ts';
import { judgeDamage, type Judgement } from '../../../shared/damage/judge.ts';
import { levels } from '../../../shared/damage/rule.ts';
import { damageClasses, type DamageClass } from '../../../shared/strikes/damage.ts';
import { findings } from './support.ts';

type Said = Partial<Record<FindingKey, string>>;

/** Any mixture of things seen and things that nobody has looked at, consistent or not. */
const anySaid: fc.Arbitrary<Said> = fc.record(
  Object.fromEntries(
    findingKeys.map((key) => [key, fc.constantFrom(...(known[key] as readonly string[]))]),
  ) as Record<FindingKey, fc.Arbitrary<string>>,
  { requiredKeys: [] },
);
/** Much of it known, so that the sure answers come up often. */
const mostlySound: fc.Arbitrary<Said> = fc
  .tuple(
    fc.constantFrom('dry-barrel', 'wet-barrel'),
    fc.record(
      {
        nozzleSection: fc.constantFrom('sound', 'damaged'),
        mainValve: fc.constantFrom('holds', 'does-not-hold'),
        checkValve: fc.constantFrom('holds', 'none-fitted', 'does-not-hold'),
        stem: fc.constantFrom('straight', 'bent'),
        ground: fc.constantFrom('firm', 'firm', 'water-rising'),
      },
      { requiredKeys: ['ground'] },
    ),
  )
  .map(([type, more]) => ({
    type,
    breakawayFlangeParted: 'yes',
    stemCouplingParted: 'yes',
    nozzleSection: 'sound',
    lowerBarrel: 'sound',
    barrelStands: 'upright',
    belowGrade: 'no-sign',
    main: 'no-sign',
    mainValve: 'holds',
    checkValve: 'holds',
    ...more,
  }));

const judged = (said: Said): Judgement => judgeDamage({ findings: findings(said), disagree: [] });
const sureness = (judgement: Judgement, damage: DamageClass): number => {
  const found = judgement.ranked.find((each) => each.damage === damage);
  return found ? levels.indexOf(found.level) : -1;
};
const surest = ({ ranked }: Judgement): number =>
  Math.max(-1, ...ranked.map(({ level }) => levels.indexOf(level)));

describe('what is not known', () => {
  it('never makes an answer surer, nor the judgement', () => {
    fc.assert(
      fc.property(fc.oneof(anySaid, mostlySound), fc.subarray([...findingKeys]), (said, forgotten) => {
        const less = Object.fromEntries(
          Object.entries(said).filter(([key]) => !forgotten.includes(key as FindingKey)),
        );
        const [whole, part] = [judged(said), judged(less)];
        for (const damage of damageClasses)
          expect(sureness(part, damage)).toBeLessThanOrEqual(sureness(whole, damage));
        expect(surest(part)).toBeLessThanOrEqual(surest(whole));
        if (whole.cannotTell) expect(part.cannotTell).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });

  it('never ends the damage: what was seen stays an "at least" while anything deeper is open', () => {
    fc.assert(
      fc.property(anySaid, fc.constantFrom(...findingKeys), (said, forgotten) => {
        const { [forgotten]: _left, ...less } = said;
        const [whole, part] = [judged(said), judged(less)];
        if (
          whole.atLeast &&
          part.ranked[0]?.damage === whole.ranked[0]?.damage &&
          part.ranked[0]?.level === 'seen'
        )
          expect(part.atLeast).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });

  it('is asked for: whoever has no sign at all has something to look at, unless all was seen and is sound', () => {
    const bad = ['yes', 'damaged', 'suspected', 'found', 'does-not-hold', 'leans', 'washed-out'];
    fc.assert(
      fc.property(anySaid, (said) => {
        const { look, ranked } = judged(said);
        if (look.length === 0 && ranked.length === 0)
          for (const [key, value] of Object.entries(said))
            if (key !== 'isolationValve') expect(bad).not.toContain(value);
      }),
      { numRuns: 3000 },
    );
  });

  it('does reach every level in these trials', () => {
    const seen = new Set(
      fc
        .sample(fc.oneof(anySaid, mostlySound), { numRuns: 2000, seed: 6 })
        .map((said) => surest(judged(said))),
    );
    expect([...seen]).toEqual(expect.arrayContaining([0, 1, 2]));
  });
});
