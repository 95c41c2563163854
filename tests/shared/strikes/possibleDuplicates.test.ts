import { describe, expect, it } from 'vitest';
import { project } from '../../../shared/projections/project.ts';
import { possibleDuplicates } from '../../../shared/strikes/possibleDuplicates.ts';
import type { BodyOf, Submission } from '../../../shared/submissions/submission.ts';
import { at, fact, onStrike, recorded, uuid } from '../../support/submissions.ts';

// Two crews can report the same strike; a hydrant can be struck again while it is out (issue, "Submissions"). The limits
// of a day and of 60 m are common practice, no source.
const place = { latitudeDeg: 41.25, longitudeDeg: -70.5, accuracyM: 8 };
/** 0.0005° of latitude are 55.6 m, 0.0006° 66.7 m (6371 km sphere). */
const north = (degrees: number) => ({ ...place, latitudeDeg: place.latitudeDeg + degrees });
const report = (number: number, body: Partial<BodyOf<'strike'>>, minutes = 0): Submission =>
  fact(
    'strike',
    number,
    onStrike(number),
    {
      struckAt: at(minutes),
      reportedBy: { source: 'public', name: null, phone: null, reportedAt: null },
      arrivedAt: null,
      ...body,
    },
    { occurredAt: at(minutes) },
  );
const of = (number: number, submissions: Submission[]): string[] => {
  const { strikes } = project(
    submissions.map((each) => recorded(each)),
    () => 'unknown',
  );
  return possibleDuplicates(
    strikes.find(({ memberIds }) => memberIds.includes(uuid(number)))!,
    strikes,
  );
};

describe('possible duplicates of a strike', () => {
  it('are other reports of the same hydrant within a day', () => {
    const day = 24 * 60;
    const all = [
      report(1, { hydrantId: 'H-1' }),
      report(2, { hydrantId: 'H-1' }, day),
      report(3, { hydrantId: 'H-1' }, day + 1),
      report(4, { hydrantId: 'H-2' }),
    ];
    expect(of(1, all)).toEqual([uuid(2)]);
  });

  it('are reports close by where one does not name its hydrant', () => {
    const all = [
      report(1, { hydrantId: null, position: place }),
      report(2, { hydrantId: null, position: north(0.0005) }),
      report(3, { hydrantId: null, position: north(0.0006) }),
      report(4, { hydrantId: 'H-1', position: north(0.0001) }),
      report(5, { hydrantId: null, position: null, placeDescription: 'Somewhere' }),
    ];
    expect(of(1, all)).toEqual([uuid(2), uuid(4)]);
    expect(of(5, all)).toEqual([]);
  });

  it('are never two hydrants that both have a name, however close', () => {
    expect(
      of(1, [
        report(1, { hydrantId: 'H-1', position: place }),
        report(2, { hydrantId: 'H-2', position: place }),
      ]),
    ).toEqual([]);
  });

  it('end when a link has joined them', () => {
    const all = [report(1, { hydrantId: 'H-1' }), report(2, { hydrantId: 'H-1' })];
    expect(of(2, [...all, fact('link', 9, onStrike(2), { sameAsStrikeId: uuid(1) })])).toEqual([]);
  });
});
