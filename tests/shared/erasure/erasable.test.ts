import { describe, expect, it } from 'vitest';
import { erasableOf, holdsOn } from '../../../shared/erasure/erasable.ts';
import { project } from '../../../shared/projections/project.ts';
import { streamOf } from '../../../shared/submissions/envelope.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { correction, fact, onClaim, onHydrant, onStrike, recorded, uuid } from '../../support/submissions.ts';

/** Common practice, no source: what is under a legal hold is kept, whoever asks for it to go. */
const town = (...submissions: readonly Submission[]) =>
  project(
    submissions.map((one) => recorded(one)),
    () => 'dry-barrel',
  );

describe('what a record holds that could be erased', () => {
  it('is told by its place, without what stands there', () => {
    const party = fact('party', 2, onStrike(1));
    const found = erasableOf([recorded(party), recorded(fact('inspection', 3, onStrike(1)))]);
    expect(found.map(({ submissionId, kind }) => [submissionId, kind])).toEqual([[uuid(2), 'party']]);
    expect(found[0]?.paths).toEqual(expect.arrayContaining(['vehicles.0.plate', 'driver', 'police.officer']));
    expect(JSON.stringify(found)).not.toMatch(/AAA 111|invented driver/);
  });

  it('is also in a correction, and no longer in what was erased', () => {
    const party = fact('party', 2, onStrike(1));
    const corrected = correction(3, party, { ...party.body, note: 'A second name' });
    const found = erasableOf([{ ...recorded(party), erased: true }, recorded(corrected)]);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ submissionId: uuid(3), kind: 'correction' });
    expect(found[0]?.paths).toContain('replacement.note');
  });
});

describe('a legal hold', () => {
  const strike = fact('strike', 1, onStrike(1), { hydrantId: 'A' });
  const opened = fact('claim-opened', 2, onClaim(9), { strikeId: uuid(1), claimNumber: '2026-1' });
  const set = fact('legal-hold', 3, onClaim(9), { hold: 'set' });
  const lifted = fact('legal-hold', 4, onClaim(9), { hold: 'lifted', from: '2026-06-02' });
  const [ofStrike, ofHydrant, ofClaim] = [onStrike(1), onHydrant('A'), onClaim(9)].map(streamOf) as [
    string,
    string,
    string,
  ];

  it('of a claim holds its own record, its strike’s and its hydrant’s', () => {
    for (const stream of [ofStrike, ofHydrant, ofClaim])
      expect(holdsOn(stream, town(strike, opened, set))).toEqual(['2026-1']);
  });

  it('holds nothing before it is set, and nothing when it is lifted', () => {
    for (const stream of [ofStrike, ofHydrant, ofClaim]) {
      expect(holdsOn(stream, town(strike, opened))).toEqual([]);
      expect(holdsOn(stream, town(strike, opened, set, lifted))).toEqual([]);
    }
  });

  it('holds the strike by every id that a link joined', () => {
    const other = fact('strike', 5, onStrike(5), { hydrantId: 'A' });
    const joined = fact('link', 6, onStrike(5), { sameAsStrikeId: uuid(1) });
    const all = town(strike, opened, set, other, joined);
    expect(holdsOn(streamOf(onStrike(5)), all)).toEqual(['2026-1']);
  });

  it('does not hold another strike of the same hydrant', () => {
    const other = fact('strike', 5, onStrike(5), { hydrantId: 'A' });
    expect(holdsOn(streamOf(onStrike(5)), town(strike, opened, set, other))).toEqual([]);
    expect(holdsOn(streamOf(onHydrant('B')), town(strike, opened, set, other))).toEqual([]);
  });
});
