import { describe, expect, it } from 'vitest';
import { mayRead, strikeAsSeenBy, writingProblems } from '../../shared/access.ts';
import { declaredExhibits, namedDocuments } from '../../shared/evidence/declared.ts';
import { project } from '../../shared/projections/project.ts';
import { roles, type Member, type Role } from '../../shared/roles.ts';
import { correction, fact, onClaim, onStrike, recorded } from '../support/submissions.ts';

const member = (...has: Role[]): Member => ({ personId: 'p', name: 'P', roles: has });

// The issue: parties are written by crew or clerk and read by clerks; claims are the desk's.
describe('who may read', () => {
  it('keeps parties and claims from crew', () => {
    for (const kind of ['party', 'claim-opened', 'packet-frozen', 'demand-sent', 'rate-book'] as const)
      expect([kind, ...roles.map((role) => mayRead(member(role), kind))]).toEqual([kind, false, true, true]);
    expect(mayRead(member('crew', 'clerk'), 'party')).toBe(true);
    expect(mayRead(member(), 'strike')).toBe(false);
  });

  it('shows crew a strike as if no party had been recorded', () => {
    const strike = fact('strike', 1, onStrike(9));
    const party = fact('party', 2, onStrike(9));
    const states = (facts: (typeof strike | typeof party)[]) =>
      project(
        facts.map((each) => recorded(each)),
        () => 'dry-barrel',
      ).strikes[0]!;
    const seen = strikeAsSeenBy(member('crew'), states([strike, party]));
    expect(seen).toEqual(strikeAsSeenBy(member('crew'), states([strike])));
    // Nor that the desk recorded anything else.
    const desk = [fact('documents', 3, onStrike(9)), fact('credit', 4, onStrike(9))];
    expect(strikeAsSeenBy(member('crew'), states([strike, party, ...desk] as never))).toEqual(seen);
    expect(seen).toMatchObject({ submissionIds: [strike.submissionId], lastRecordedAt: strike.sentAt });
    // A state kept by an older release does not say what is whose.
    const { ofField: _older, ...older } = states([strike, party]);
    expect(strikeAsSeenBy(member('crew'), older)).toMatchObject({ submissionIds: [] });
    expect(strikeAsSeenBy(member('clerk'), states([strike, party])).partyIds).toEqual([party.submissionId]);
  });
});

describe('who may write', () => {
  const codes = (who: Member, submission: Parameters<typeof writingProblems>[1]) =>
    writingProblems(who, submission).map(({ code, path }) => `${path} ${code}`);
  it('is said of a correction by what it corrects', () => {
    const strike = fact('strike', 1, onStrike(9));
    expect(codes(member('clerk'), correction(2, strike, null))).toEqual(['kind role-may-not-write']);
    expect(codes(member('crew'), correction(2, strike, null))).toEqual([]);
  });
  it('names every reason at once', () => {
    const frozen = { ...fact('packet-frozen', 1, onClaim(9)), test: true as const };
    expect(codes(member('crew'), frozen)).toEqual([
      'kind role-may-not-write',
      'kind server-writes-this',
      'test test-needs-manager',
    ]);
  });
});

describe('documents that a submission names', () => {
  const strike = fact('strike', 1, onStrike(9));
  it('are its photos, for those who may read it', () => {
    expect(namedDocuments(strike)).toEqual(
      strike.body.photos.map(({ sha256, mediaType }) => ({
        sha256,
        mediaType,
        readers: ['crew', 'clerk', 'manager'],
      })),
    );
    expect(namedDocuments(fact('party', 2, onStrike(9)))).toEqual([]);
  });
  it('of a correction are those of its replacement; of a withdrawal, none', () => {
    expect(declaredExhibits(correction(3, strike, { ...strike.body }))).toEqual(strike.body.photos);
    expect(declaredExhibits(correction(3, strike, null))).toEqual([]);
  });
  it('of a freeze are its packet, for the desk alone', () => {
    const frozen = fact('packet-frozen', 4, onClaim(9));
    expect(namedDocuments(frozen)).toEqual([
      { sha256: frozen.body.pdfSha256, mediaType: 'application/pdf', readers: ['clerk', 'manager'] },
    ]);
  });
});
