import { describe, expect, it } from 'vitest';
import { demoModels } from '../../infra/local/demo/models.ts';
import { demoRateBooks } from '../../infra/local/demo/rates.ts';
import { closedStrikes } from '../../infra/local/demo/stories/closed.ts';
import { openStrikes } from '../../infra/local/demo/stories/open.ts';
import { otherCauses } from '../../infra/local/demo/stories/otherCauses.ts';
import { Teller } from '../../infra/local/demo/teller.ts';
import { townInventoryCsv } from '../../infra/local/demo/town.ts';
import { demoUtility } from '../../infra/local/demo/utility.ts';
import { project } from '../../shared/projections/project.ts';
import { parseSubmission, writersOf } from '../../shared/submissions/submission.ts';
import { jointsOf } from '../../shared/tightening/fromModel.ts';
import { tighteningDoubts } from '../../shared/tightening/judge.ts';
import { utilitySettings } from '../../shared/utility/settings.ts';

const now = new Date('2026-11-25T14:00:00Z');

function tellAll(): Teller {
  const teller = new Teller(now);
  demoRateBooks.forEach((edition) =>
    teller.tell('rate-book', { type: 'utility' }, 4000, edition, { role: 'manager' }),
  );
  demoModels.forEach((model) =>
    teller.tell('hydrant-model', { type: 'utility' }, 3990, model, { role: 'manager' }),
  );
  otherCauses(teller);
  closedStrikes(teller);
  openStrikes(teller);
  return teller;
}

describe('the demo utility', () => {
  it('has settings that the deployment would accept', () => {
    expect(utilitySettings.safeParse(demoUtility).error?.issues ?? []).toEqual([]);
  });

  it('tells only submissions that the server would accept, from people who may write them', () => {
    for (const { role, submission } of tellAll().told) {
      const parsed = parseSubmission(JSON.parse(JSON.stringify(submission)));
      expect(parsed.ok ? [] : parsed.problems, JSON.stringify(submission).slice(0, 300)).toEqual([]);
      expect(writersOf(submission), submission.kind).toContain(role);
    }
  });

  it('tells the same story, id for id, when it is told again with the same clock', () => {
    expect(JSON.stringify(tellAll().told)).toBe(JSON.stringify(tellAll().told));
  });

  it('has strikes at every stage, one that is held, one not re-tested, one joined, and an outage of another cause', () => {
    const recorded = tellAll().told.map(({ submission }) => ({
      submission,
      recordedAt: now.toISOString(),
      deliveredBy: null,
      erased: false,
    }));
    const { strikes, hydrants, problems } = project(recorded, () => 'dry-barrel');
    expect(problems).toEqual([]);
    // The stages are what the stories say in words; the number of each is read from them, not from the fold.
    const count = (stage: string): number => strikes.filter((strike) => strike.stage === stage).length;
    expect({
      reported: count('reported'),
      shut: count('shut-off'),
      waiting: count('waiting'),
      under: count('under-repair'),
      repaired: count('repaired'),
      back: count('back'),
    }).toEqual({
      reported: 2,
      shut: 2,
      waiting: 2,
      under: 1,
      repaired: 1,
      back: 4,
    });
    expect(strikes.filter(({ memberIds }) => memberIds.length === 2)).toHaveLength(1);
    expect(strikes.find(({ hydrantId }) => hydrantId === 'TH-0160')?.returns[0]?.holds).toEqual([
      { code: 'valve-still-closed', valveId: 'V-0160' },
    ]);
    expect(strikes.filter(({ deferred }) => deferred.length > 0).map(({ hydrantId }) => hydrantId)).toEqual([
      'TH-0019',
    ]);
    expect(hydrants.find(({ hydrantId }) => hydrantId === 'TH-0188')?.open.map(({ cause }) => cause)).toEqual(
      ['main-shut'],
    );
    expect(hydrants.find(({ hydrantId }) => hydrantId === 'TH-0365')?.inService).toBe(true);
    expect(strikes.flatMap(({ breaches }) => breaches)).toEqual([]);
  });

  it('tells repairs closed as their model’s record says, with wrench and name', () => {
    const model = demoModels.find(({ modelId }) => modelId === 'BW-D51')!;
    const repairs = tellAll().told.flatMap(({ submission }) =>
      submission.kind === 'repair' && submission.body.tightened ? [submission.body.tightened] : [],
    );
    expect(repairs.length).toBeGreaterThan(0);
    for (const tightened of repairs) {
      expect(tightened.map(({ kind }) => kind)).toEqual(['bolts', 'back-off', 'bolts']);
      for (const done of tightened) {
        const recorded = jointsOf(model).find(({ joint }) => joint === done.joint) ?? null;
        expect(recorded, done.joint).not.toBeNull();
        expect(tighteningDoubts(done, recorded, done.doneAt.slice(0, 10))).toEqual([]);
      }
    }
  });

  it('is a town of about 400 hydrants, each number once', () => {
    const numbers = townInventoryCsv()
      .trim()
      .split('\r\n')
      .slice(1)
      .map((row) => row.split(',')[0]);
    expect(numbers.length).toBeGreaterThan(380);
    expect(numbers.length).toBeLessThan(430);
    expect(new Set(numbers).size).toBe(numbers.length);
  });
});
