import { describe, expect, it } from 'vitest';
import { breakawaySteps } from '../../infra/local/demo/bodies.ts';
import { demoUtility } from '../../infra/local/demo/utility.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import type { Block } from '../../shared/packet/blocks.ts';
import { readerOf } from '../../shared/packet/reader.ts';
import type { BodyOf, Submission } from '../../shared/submissions/submission.ts';
import { demoCase, demoClaim, demoContent, type DemoClaim } from '../support/demoClaim.ts';

/** Every word of a document's blocks. */
const wordsOf = (blocks: readonly Block[]): string =>
  JSON.stringify(blocks, (_, value: unknown) => (typeof value === 'function' ? undefined : value));

const changedRepair = (
  claim: DemoClaim,
  change: (body: BodyOf<'repair'>) => Partial<BodyOf<'repair'>>,
): DemoClaim => ({
  ...claim,
  submissions: claim.submissions
    .filter(({ kind }) => kind !== 'correction')
    .map((submission): Submission =>
      submission.kind === 'repair' &&
      submission.subject.type === 'strike' &&
      submission.subject.strikeId === claim.strikeId
        ? { ...submission, body: { ...submission.body, ...change(submission.body) } }
        : submission,
    ),
});

describe('the timeline', () => {
  it('runs from the strike to the return, in order, with every recorded moment', async () => {
    const { content } = await demoContent(demoClaim());
    const codes = content.timeline.map(({ code }) => code);
    expect(codes[0]).toBe('struck');
    for (const code of [
      'reported',
      'called-out',
      'arrived',
      'dispatch-told',
      'valve-closed',
      'marked',
      'work-began',
      'closed-up',
      'completed',
      'flow-tested',
      'valve-reopened',
      'returned',
      'mark-removed',
    ] as const)
      expect(codes).toContain(code);
    // As many as the demo's crew ticked.
    expect(codes.filter((code) => code === 'step-done')).toHaveLength(breakawaySteps.length);
    expect(codes.filter((code) => code === 'proof')).toHaveLength(4);
    const times = content.timeline.map(({ at }) => Date.parse(at));
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });

  it('leaves out what is not of this strike: the routine test and the inspection before it', async () => {
    const { content } = await demoContent(demoClaim());
    expect(content.timeline.filter(({ code }) => code === 'flow-tested')).toHaveLength(1);
    expect(content.hydrant.lastInspection).not.toBeNull();
    expect(content.hydrant.lastFlowTest).not.toBeNull();
    expect(Date.parse(content.hydrant.lastInspection!.inspectedAt)).toBeLessThan(
      Date.parse(content.strike.since),
    );
  });

  it('says what two reports say alike once', async () => {
    const claim = demoClaim();
    const twice = demoClaim((teller, { strikeId }) => {
      const strike = teller.told.find(
        ({ submission }) =>
          submission.kind === 'strike' &&
          submission.subject.type === 'strike' &&
          submission.subject.strikeId === strikeId,
      )!.submission;
      teller.tell('strike', { type: 'strike', strikeId }, 400, strike.body as never);
    });
    const [one, two] = [await demoContent(claim), await demoContent(twice)];
    expect(two.content.timeline).toHaveLength(one.content.timeline.length);
    expect(two.content.manifest.submissions).toHaveLength(one.content.manifest.submissions.length + 1);
  });

  it('says what the hydrant waited for', async () => {
    const claim = demoClaim((teller, { strikeId }) => {
      teller.tell('expected-return', { type: 'strike', strikeId }, 408, {
        outageId: null,
        expectedAt: '2026-11-09T17:00:00Z',
        waitingFor: 'kit',
        note: null,
      });
    });
    const { content } = await demoContent(claim);
    expect(wordsOf(packetDocument(content).blocks)).toContain(
      'Return expected Nov 9, 2026, 12:00 PM EST. Waiting for: A repair kit',
    );
  });

  it('gives local time with its zone and UTC, on both sides of a clock change', () => {
    // 1 November 2026, 2:00 EDT: the clock goes back (15 U.S.C. 260a).
    const reader = readerOf({ locale: 'en', units: 'us', timeZone: 'America/New_York' });
    expect(reader.dateTime('2026-11-01T05:30:00Z')).toBe('Nov 1, 2026, 1:30 AM EDT');
    expect(reader.dateTime('2026-11-01T06:30:00Z')).toBe('Nov 1, 2026, 1:30 AM EST');
    expect(reader.utc('2026-11-01T06:30:00Z')).toBe('2026-11-01 06:30Z');
    expect(reader.utc('2026-11-01T06:30:12.345Z')).toBe('2026-11-01 06:30:12Z');
  });
});

describe('what did not go by the book is shown', () => {
  it('a take-down before it was safe', async () => {
    const claim = changedRepair(demoClaim(), (body) => ({
      steps: body.steps.filter(({ step }) => step !== 'drained'),
    }));
    const { content } = await demoContent(claim);
    expect(content.strike.breaches).toMatchObject([
      { code: 'take-down-before-safe', missing: ['drained'] },
      { code: 'opened-before-safe', missing: ['drained'] },
    ]);
    expect(wordsOf(packetDocument(content).blocks)).toContain(
      'before this was confirmed by name: Barrel drained',
    );
  });

  it('work that two records claim is billed once, and the statement says so', async () => {
    const claim = demoClaim((teller, { strikeId }) => {
      const repair = teller.told.find(
        ({ submission }) =>
          submission.kind === 'repair' &&
          submission.subject.type === 'strike' &&
          submission.subject.strikeId === strikeId,
      )!.submission;
      teller.tell('repair', { type: 'strike', strikeId }, 390, repair.body as never);
    });
    const { content, found } = await demoContent(claim);
    expect(found.statement.sections.find(({ section }) => section === 'labor')).toEqual(
      demoCase(demoClaim()).statement.sections.find(({ section }) => section === 'labor'),
    );
    expect(wordsOf(packetDocument(content).blocks)).toMatch(/Two records claim the same .* of worker w-101/);
  });
});

describe('the letter', () => {
  it('says who, what, where, how much and where to pay', async () => {
    const { content } = await demoContent(demoClaim());
    const text = wordsOf(packetDocument(content).blocks);
    for (const words of [
      'Harrowgate Casualty',
      'Property damage claims',
      'Claim 2026-0001: damage to fire hydrant TH-0071',
      'Sailmaker Street at Thimble Avenue',
      ...demoUtility.letterhead.remitTo,
      'not legal advice',
    ])
      expect(text).toContain(words);
  });

  it('asks for a part, and names what other claims ask, where there are several', async () => {
    const { content } = await demoContent(demoClaim(), { demandCents: 400_00, otherDemandsCents: 300_00 });
    const text = wordsOf(packetDocument(content).blocks);
    expect(text).toContain('Our demand to you is $400.00');
    expect(text).toContain('Other claims for the same damage come to $300.00');
    expect(text).toContain('Demanded by this claim: $400.00');
  });

  it('speaks of a hydrant without a number, a place in words, and an unknown time', async () => {
    const claim = demoClaim();
    const bare: DemoClaim = {
      ...claim,
      submissions: claim.submissions.map((submission): Submission => {
        if (submission.subject.type !== 'strike' || submission.subject.strikeId !== claim.strikeId)
          return submission;
        if (submission.kind === 'strike')
          return {
            ...submission,
            body: {
              ...submission.body,
              hydrantId: null,
              placeDescription: 'Behind the cannery',
              struckAt: null,
              struckAtBasis: 'unknown',
            },
          };
        if (submission.kind === 'repair')
          return { ...submission, body: { ...submission.body, hydrantId: null } };
        return submission;
      }),
    };
    const { content } = await demoContent(
      {
        ...bare,
        submissions: bare.submissions.filter(({ kind }) => kind !== 'flow-test' && kind !== 'correction'),
      },
      { hydrant: null },
    );
    const text = wordsOf(packetDocument(content).blocks);
    expect(text).toContain('a fire hydrant that has no number in our inventory at Behind the cannery');
    expect(text).toContain('Time of the strike: not known; the first record of it is of ');
    expect(text).toContain('No flow test of this strike is recorded.');
  });
});
