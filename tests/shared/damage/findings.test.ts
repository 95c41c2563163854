import { describe, expect, it } from 'vitest';
import { compared, crewJudgement } from '../../../shared/damage/crew.ts';
import { readFindings } from '../../../shared/damage/findings.ts';
import { judgeDamage } from '../../../shared/damage/judge.ts';
import { expectedWork } from '../../../shared/damage/work.ts';
import { damageClasses } from '../../../shared/strikes/damage.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import { forms } from '../../../shared/submissions/kinds.ts';
import type { BodyOf, Submission } from '../../../shared/submissions/submission.ts';
import { sampleBodies } from '../../support/sampleBodies.ts';
import { at, correction, fact, onHydrant, onStrike, recorded } from '../../support/submissions.ts';
import { findings } from './support.ts';

type FoundBody = NonNullable<(typeof sampleBodies)['strike']['found']>;

/** A report as it was written before the later questions were asked. */
const before: FoundBody = {
  flow: 'none',
  jetHeightIn: null,
  throwDistanceIn: null,
  openingDiameterIn: null,
  breakawayFlangeParted: 'unknown',
  stemCouplingParted: 'unknown',
  nozzleSection: 'unknown',
  lowerBarrel: 'unknown',
  belowGrade: 'unknown',
  isolationValve: 'not-tried',
  mainValve: 'unknown',
};
const report = (
  number: number,
  found: Partial<FoundBody> | null,
  hazards: never[] | ['undermined-ground'] = [],
) => fact('strike', number, onStrike(1), { found: found && { ...before, ...found }, hazards });
const read = (...submissions: readonly Submission[]) =>
  readFindings(effectiveFacts(submissions.map((each) => recorded(each))).facts, 'dry-barrel');
const values = (found: ReturnType<typeof readFindings>): Record<string, string> =>
  Object.fromEntries(Object.values(found.findings).map(({ key, value }) => [key, value]));

describe('what was found', () => {
  it('is read from a report of before the later questions, which is still good', () => {
    expect(forms.strike.body.safeParse({ ...sampleBodies.strike, found: before }).success).toBe(true);
    expect(values(read(report(1, {})))).toEqual({ type: 'dry-barrel' });
    expect(values(read(report(1, null)))).toEqual({ type: 'dry-barrel' });
  });

  it('holds nothing that a report calls not known or not tried', () => {
    const found = values(read(report(1, { lowerBarrel: 'sound', barrelStands: 'unknown', ground: 'firm' })));
    expect(found).toEqual({ type: 'dry-barrel', lowerBarrel: 'sound', ground: 'firm' });
  });

  it('names the record that each finding is from', () => {
    const { findings: said } = read(report(3, { lowerBarrel: 'damaged' }));
    expect(said.lowerBarrel).toMatchObject({
      value: 'damaged',
      source: { kind: 'strike', submissionId: report(3, {}).submissionId, personId: 'w-7' },
    });
    expect(said.type?.source).toEqual({ kind: 'inventory' });
  });

  it('takes washed-out ground from the hazards, and nothing from a hazard that is not ticked', () => {
    expect(values(read(report(1, null, ['undermined-ground'])))).toMatchObject({ ground: 'washed-out' });
    expect(values(read(report(1, null)))['ground']).toBeUndefined();
  });

  it('lets a suspicion go when somebody looked later, and keeps damage that was seen', () => {
    const looked = read(report(1, { belowGrade: 'suspected' }), report(2, { belowGrade: 'no-sign' }));
    expect(values(looked)).toMatchObject({ belowGrade: 'no-sign' });
    const kept = read(report(1, { lowerBarrel: 'damaged' }), report(2, { lowerBarrel: 'sound' }));
    expect(values(kept)).toMatchObject({ lowerBarrel: 'damaged' });
    expect(kept.disagree).toMatchObject([{ stands: { value: 'damaged' }, otherwise: { value: 'sound' } }]);
    expect(judgeDamage(kept).disagree).toHaveLength(1);
  });

  it('follows a correction of the report', () => {
    const wrong = report(1, { lowerBarrel: 'damaged' });
    const right = correction(2, wrong, { ...wrong.body, found: { ...before, lowerBarrel: 'sound' } });
    expect(values(read(wrong, right))).toMatchObject({ lowerBarrel: 'sound' });
    expect(read(wrong, right).disagree).toEqual([]);
  });

  it('learns whether the isolation valve holds from its being shut', () => {
    const shut = (waterShut: 'yes' | 'no' | 'unknown') =>
      fact('valve-operation', 5, onStrike(1), { action: 'closed', valve: 'isolation', waterShut, at: at(5) });
    expect(values(read(shut('yes')))).toMatchObject({ isolationValve: 'holds' });
    expect(values(read(shut('no')))).toMatchObject({ isolationValve: 'does-not-hold' });
    expect(values(read(shut('unknown')))['isolationValve']).toBeUndefined();
    expect(
      values(
        read(
          fact('valve-operation', 5, onStrike(1), { action: 'closed', valve: 'main-line', waterShut: 'yes' }),
        ),
      )['isolationValve'],
    ).toBeUndefined();
  });

  it('learns of a blocked drain from an inspection', () => {
    const looked = fact('inspection', 6, onHydrant('H-12'), { findings: ['does-not-drain'] });
    expect(values(read(report(1, {}), looked))).toMatchObject({ drain: 'blocked' });
  });

  it('learns from a later look at a struck hydrant what the first report could not say, and names it', () => {
    const look = fact('inspection', 6, onHydrant('H-12'), {
      findings: [],
      found: { lowerBarrel: 'damaged', ground: 'firm', isolationValve: 'not-tried' },
    });
    const found = read(report(1, { lowerBarrel: 'unknown', belowGrade: 'suspected' }), look);
    expect(found.findings.lowerBarrel).toMatchObject({
      value: 'damaged',
      source: { kind: 'inspection', submissionId: look.submissionId, at: at(6), personId: 'w-7' },
    });
    expect(values(found)).toEqual({
      type: 'dry-barrel',
      lowerBarrel: 'damaged',
      belowGrade: 'suspected',
      ground: 'firm',
    });
    // A cracked lower barrel was seen: by the rules it is at least that (common practice, no source).
    expect(judgeDamage(found).ranked[0]).toMatchObject({ damage: 'lower-barrel', level: 'seen' });
  });

  it('learns nothing of the damage from a leak, a stiff stem or a worn thread, which may be older', () => {
    const ticked = fact('inspection', 6, onHydrant('H-12'), {
      findings: ['leak', 'stem-stiff', 'thread-damaged', 'cap-missing'],
    });
    expect(values(read(report(1, {}), ticked))).toEqual({ type: 'dry-barrel' });
  });

  it('learns from what a repair found once the hydrant was open', () => {
    const opened = (body: Partial<BodyOf<'repair'>>) =>
      read(report(1, { lowerBarrel: 'sound' }), fact('repair', 8, onStrike(1), body));
    expect(values(opened({ hiddenDamage: ['bent-stem', 'scored-seat', 'blocked-drain'] }))).toMatchObject({
      stem: 'bent',
      seat: 'scored',
      drain: 'blocked',
      lowerBarrel: 'sound',
    });
    const cracked = opened({ hiddenDamage: ['cracked-barrel'], needsDig: true });
    expect(values(cracked)).toMatchObject({ lowerBarrel: 'damaged', dig: 'needed' });
    expect(judgeDamage(cracked).ranked[0]).toMatchObject({ damage: 'lower-barrel', level: 'seen' });
    expect(values(opened({ hiddenDamage: ['nothing'] }))).toMatchObject({ stem: 'straight', drain: 'clear' });
    expect(
      expectedWork('breakaway-kit', opened({ hiddenDamage: ['bent-stem'] }).findings, null).parts,
    ).toEqual(['lower-works']);
  });

  it('is the same in whatever order the records arrived', () => {
    const [a, b] = [
      report(1, { lowerBarrel: 'damaged' }),
      report(2, { lowerBarrel: 'sound', ground: 'firm' }),
    ];
    expect(read(b, a)).toEqual(read(a, b));
  });
});

describe('the crew’s word', () => {
  const repair = (number: number, damage: (typeof damageClasses)[number] | null) =>
    fact('repair', number, onStrike(1), { damage });
  const factsOf = (...all: readonly Submission[]) => effectiveFacts(all.map((each) => recorded(each))).facts;

  it('is the last that a repair gives, by name', () => {
    expect(crewJudgement(factsOf(repair(2, null)))).toBeNull();
    expect(
      crewJudgement(factsOf(repair(2, 'breakaway-kit'), repair(3, 'below-grade'), repair(4, null))),
    ).toMatchObject({ damage: 'below-grade', personId: 'w-7', submissionId: repair(3, null).submissionId });
  });

  it('stands beside the rules: the same, another, or nothing sure to compare it with', () => {
    const judged = (said: Parameters<typeof findings>[0]) =>
      judgeDamage({ findings: findings(said), disagree: [] });
    expect(compared('lower-barrel', judged({ lowerBarrel: 'damaged' }))).toBe('same');
    expect(compared('breakaway-kit', judged({ lowerBarrel: 'damaged' }))).toBe('other');
    expect(compared('breakaway-kit', judged({ breakawayFlangeParted: 'yes' }))).toBe('open');
  });
});

// What a damage takes: common practice, no source; disinfection of an opened main: AWWA C651, from memory.
describe('the work to expect', () => {
  const kit = { kitContents: [{ partNumber: 'K-1', description: 'Kit', quantity: 1 }] };

  it('brings the model’s kit where that is what it takes, and says why there is none', () => {
    expect(expectedWork('breakaway-kit', findings({}), kit)).toMatchObject({
      crew: [2, 2],
      kit: kit.kitContents,
      kitMissing: null,
      parts: [],
    });
    expect(expectedWork('breakaway-kit', findings({}), null).kitMissing).toBe('no-model');
    expect(expectedWork('breakaway-kit', findings({}), { kitContents: [] }).kitMissing).toBe('no-contents');
    expect(expectedWork('main', findings({}), kit)).toMatchObject({ kit: [], kitMissing: null });
  });

  it('of a wet barrel with no kit on record names its break-off bolts, never a coupling', () => {
    expect(expectedWork('breakaway-kit', findings({ type: 'wet-barrel' }), null).parts).toEqual([
      'break-off-bolts',
      'gaskets',
    ]);
  });

  it('asks for the utility locate before every dig, and for none without', () => {
    // Common practice, no source: what stands below ground is reached by digging, and nothing else is.
    expect(
      damageClasses.filter((damage) => expectedWork(damage, findings({}), kit).needs.includes('locate')),
    ).toEqual(['lower-barrel', 'below-grade', 'main', 'replace-whole']);
    for (const damage of damageClasses) {
      const { needs, machines } = expectedWork(damage, findings({}), kit);
      expect(needs.includes('locate')).toBe(machines.includes('excavator'));
      expect(needs.includes('trench')).toBe(machines.includes('excavator'));
    }
  });

  it('of a main ends with disinfection and samples, and shuts it', () => {
    const { needs } = expectedWork('main', findings({}), kit);
    for (const need of ['shut-main', 'disinfect', 'samples'] as const) expect(needs).toContain(need);
  });

  it('shuts the main where the hydrant’s own valve does not hold, or there is none', () => {
    for (const isolationValve of ['does-not-hold', 'none-fitted'])
      expect(expectedWork('breakaway-kit', findings({ isolationValve }), kit).needs).toEqual(['shut-main']);
    expect(expectedWork('breakaway-kit', findings({ isolationValve: 'holds' }), kit).needs).toEqual([
      'isolate',
    ]);
  });
});
