import { describe, expect, it } from 'vitest';
import { project } from '../../../shared/projections/project.ts';
import { missingOf } from '../../../shared/strikes/missing.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { proofs } from '../../../shared/outages/proofs.ts';
import { shown } from '../../support/tell.ts';
import { at, fact, onClaim, onStrike, recorded, uuid } from '../../support/submissions.ts';

// What a record lacks, by the order of the work (common practice, no source).
const strike = fact('strike', 1, onStrike(1), {
  hydrantId: 'H-1',
  struckAt: null,
  struckAtBasis: 'unknown',
  arrivedAt: null,
  waterShutAt: null,
  markedOutOfServiceAt: null,
  dispatch: null,
  photos: [],
});
const notice = fact('out-of-service-notice', 2, onStrike(1), {
  markedOutOfServiceAt: at(5),
  dispatch: { at: at(5), toldByWorkerId: 'w-7', takenBy: null },
});
const closed = fact('valve-operation', 3, onStrike(1), {
  valveId: 'V-1',
  action: 'closed',
  at: at(6),
  waterShut: 'yes',
});
const repair = (finished: boolean): Submission =>
  fact('repair', 4, onStrike(1), {
    hydrantId: 'H-1',
    steps: [],
    photos: [],
    reassembledAt: finished ? at(60) : null,
    completedAt: finished ? at(61) : null,
  });

const missing = (submissions: Submission[], desk = false): string[] => {
  const { strikes, claims } = project(
    submissions.map((each) => recorded(each)),
    () => 'dry-barrel',
  );
  return missingOf({ strike: strikes[0]!, desk, claims, photosAwaited: 0 }).map(({ code }) => code);
};

describe('what is missing next', () => {
  it('begins with who may be hurt', () => {
    expect(missing([strike]).slice(0, 3)).toEqual(['dispatch', 'mark', 'water-shut']);
  });

  it('goes on to the repair, the proof and the return', () => {
    expect(missing([strike, notice, closed])).toEqual(['expected-return', 'repair', 'photos']);
    expect(missing([strike, notice, closed, repair(false)])).toContain('repair-open');
    expect(missing([strike, notice, closed, repair(true)])).toEqual(['flow-test', 'return', 'photos']);
  });

  it('says that a return has no effect, not that there is none', () => {
    const held = fact('return-to-service', 6, onStrike(1), {
      returnedAt: at(90),
      closes: [uuid(1)],
      proofs: [],
      valvesReopened: [],
    });
    const found = missing([strike, notice, closed, repair(true), held]);
    expect(found).toContain('return-held');
    expect(found).not.toContain('return');
  });

  it('asks whether dispatch was told that it is back, until the return or a notice of after it says so', () => {
    const back = (dispatch: object | null) =>
      fact('return-to-service', 6, onStrike(1), {
        returnedAt: at(90),
        closes: [uuid(1)],
        proofs: proofs.map((proof) => shown(proof, 80)),
        valvesReopened: [{ valveId: 'V-1', at: at(85), byWorkerId: 'w-7' }],
        dispatch: dispatch as null,
      });
    const told = { at: at(95), toldByWorkerId: 'w-7', takenBy: null };
    const job = [strike, notice, closed, repair(true)];
    expect(missing([...job, back(null)])).toContain('dispatch-back');
    expect(missing([...job, back(told)])).not.toContain('dispatch-back');
    // The notice of the outage itself told of no return.
    const after = fact('out-of-service-notice', 9, onStrike(1), {
      markedOutOfServiceAt: null,
      dispatch: told,
    });
    expect(missing([...job, back(null), after])).not.toContain('dispatch-back');
  });

  it('asks for the strike when only its repair was typed', () => {
    expect(missing([repair(false)])).toContain('strike-report');
  });

  it('tells of parties and claims to the desk alone', () => {
    expect(missing([strike, notice])).not.toContain('party');
    expect(missing([strike, notice], true)).toEqual(expect.arrayContaining(['party', 'claim']));
  });

  it('follows a claim from open to demanded', () => {
    const claim = fact('claim-opened', 7, onClaim(9), { strikeId: uuid(1) });
    expect(missing([strike, claim], true)).toContain('packet');
    const frozen = fact('packet-frozen', 8, onClaim(9));
    expect(missing([strike, claim, frozen], true)).toContain('demand');
    // A packet that the bill has left behind is not the one to send.
    const { strikes, claims } = project(
      [strike, claim, frozen].map((each) => recorded(each)),
      () => 'dry-barrel',
    );
    const codes = (billIds: readonly string[]): string[] =>
      missingOf({ strike: strikes[0]!, desk: true, claims, billIds, photosAwaited: 0 }).map(
        ({ code }) => code,
      );
    const { builtFrom } = claims[0]!.packets[0]!;
    expect(codes(builtFrom)).toContain('demand');
    expect(codes([...builtFrom, uuid(77)])).toContain('packet-old');
    expect(codes([...builtFrom, uuid(77)])).not.toContain('demand');

    const sent = fact('demand-sent', 10, onClaim(9), { sentOn: '2026-03-04' });
    const done = missing([strike, claim, frozen, sent], true);
    expect(done).not.toContain('claim');
    expect(done).not.toContain('packet');
    expect(done).not.toContain('demand');
  });
});
