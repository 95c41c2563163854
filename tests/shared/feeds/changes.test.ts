import { describe, expect, it } from 'vitest';
import { nextChanges, type FeedChanges } from '../../../shared/feeds/changes.ts';
import type { PublicOutage, PublicOutOfService } from '../../../shared/public/snapshot.ts';
import { aStatus, anOutage } from '../../support/town.ts';
import {
  at,
  changesAfter,
  editionOf,
  noneOut,
  oneOut,
  overAt,
  street,
  twoReasons,
  uuids,
} from '../../support/feeds.ts';

describe('what feeds tell', () => {
  it('an outage is told when a check first lists it, and as new only when what is said of it changes', () => {
    const [first] = changesAfter([0, oneOut]).outages;
    expect(first).toMatchObject({ listedAt: at(0), changedAt: at(0), version: 1, ended: null });
    const [same] = changesAfter([0, oneOut], [5, oneOut], [10, oneOut]).outages;
    expect(same).toMatchObject({ listedAt: at(0), changedAt: at(0), version: 1 });
    const later = street([
      aStatus('H-1', [anOutage(uuids.strike, { since: '2026-03-04T18:40:00Z', expectedAt: at(999) })]),
    ]);
    expect(changesAfter([0, oneOut], [5, later], [10, later]).outages).toMatchObject([
      { listedAt: at(0), changedAt: at(5), version: 2, outage: { expectedAt: at(999) } },
    ]);
  });

  const entry = (more: Partial<PublicOutOfService>) => more;
  const outage = (more: Partial<PublicOutage>) => more;
  it.each([
    ['its place', entry({ place: 'Elm St at Second Ave' }), outage({})],
    ['its position', entry({ position: { latitudeDeg: 39.21, longitudeDeg: -98.4 } }), outage({})],
    ['that the inventory has it no more', entry({ inInventory: false }), outage({})],
    ['its cause', entry({}), outage({ cause: 'frozen' })],
    ['since when', entry({}), outage({ since: '2026-03-04T17:00:00Z' })],
    ['what it waits for', entry({}), outage({ waitingFor: 'parts' })],
    ['how far it is', entry({}), outage({ stage: 'repaired' })],
    ['what holds its return', entry({}), outage({ heldBy: ['test'] })],
  ] as const)('%s is something that is said of it, and news when it changes', (_, hydrant, told) => {
    const before = changesAfter([0, oneOut]);
    const edition = editionOf(oneOut, 5);
    const [listed] = edition.snapshot.outOfService;
    const changed = { ...listed!, ...hydrant, outages: [{ ...listed!.outages[0]!, ...told }] };
    const { outages } = nextChanges(before, {
      ...edition,
      snapshot: { ...edition.snapshot, outOfService: [changed] },
    });
    expect(outages).toMatchObject([{ listedAt: at(0), changedAt: at(5), version: 2 }]);
  });

  it('is the same after its memory went through a file', () => {
    const before = changesAfter([0, oneOut], [5, oneOut]);
    const reread = JSON.parse(JSON.stringify(before)) as typeof before;
    expect(nextChanges(reread, editionOf(oneOut, 10)).outages).toEqual(before.outages);
  });

  it('one that is over is told with its end, for two weeks', () => {
    const end = at(3);
    const over = changesAfter([0, oneOut], [5, overAt(end)]);
    expect(over.outages).toMatchObject([
      { listedAt: at(0), changedAt: at(5), version: 2, ended: { endedAt: end, stillOut: false } },
    ]);
    const days = (count: number): number => count * 24 * 60;
    expect(nextChanges(over, editionOf(overAt(end), days(13))).outages).toEqual(over.outages);
    expect(nextChanges(over, editionOf(overAt(end), 5 + days(14))).outages).toEqual([]);
  });

  it('one that was over before it was ever listed is not told', () => {
    expect(changesAfter([0, overAt(at(-60))]).outages).toEqual([]);
  });

  it('one that is nowhere any more is said to be listed no longer, and no end is made up', () => {
    expect(changesAfter([0, oneOut], [5, noneOut]).outages).toMatchObject([
      { ended: { endedAt: null, stillOut: false } },
    ]);
  });

  it('one of two that is over leaves its hydrant out', () => {
    const { outages } = changesAfter([0, twoReasons], [5, overAt(at(4), 'main-shut')]);
    const ofStrike = outages.find(({ outage }) => outage.outageId === uuids.strike);
    const ofMain = outages.find(({ outage }) => outage.outageId === uuids.main);
    expect(ofStrike?.ended).toEqual({ endedAt: at(4), stillOut: true });
    expect(ofMain).toMatchObject({ ended: null, changedAt: at(0) });
  });

  it('what was true of it when it left the list stays said, and is no news when the other is over, too', () => {
    const both = street([
      aStatus('H-2', [
        anOutage(uuids.strike, { since: '2026-03-04T18:40:00Z', endedAt: at(4) }),
        anOutage(uuids.main, { cause: 'main-shut', since: '2026-03-04T09:00:00Z', endedAt: at(9) }),
      ]),
    ]);
    const { outages } = changesAfter([0, twoReasons], [5, overAt(at(4), 'main-shut')], [10, both]);
    const ofStrike = outages.find(({ outage }) => outage.outageId === uuids.strike);
    expect(ofStrike).toMatchObject({ ended: { endedAt: at(4), stillOut: true }, changedAt: at(5) });
    const ofMain = outages.find(({ outage }) => outage.outageId === uuids.main);
    expect(ofMain).toMatchObject({ ended: { endedAt: at(9), stillOut: false }, changedAt: at(10) });
  });

  it('of a great many that end at once the latest two thousand are told', () => {
    const before = changesAfter([0, oneOut]);
    const many: FeedChanges = {
      ...before,
      outages: Array.from({ length: 2100 }, (_, index) => ({
        ...before.outages[0]!,
        outage: { ...before.outages[0]!.outage, outageId: `id-${index}`, since: at(-index) },
      })),
    };
    const { outages } = nextChanges(many, editionOf(noneOut, 5));
    expect(outages).toHaveLength(2000);
    expect(outages.at(-1)?.outage.outageId).toBe('id-1999');
  });

  it('one that is open again is open, with a change', () => {
    expect(changesAfter([0, oneOut], [5, overAt(at(4))], [10, oneOut]).outages).toMatchObject([
      { ended: null, listedAt: at(0), changedAt: at(10), version: 3 },
    ]);
  });

  it('what changed last stands first', () => {
    const struckToo = street([
      ...oneOut.statuses,
      aStatus('H-3', [anOutage(uuids.past, { since: at(-30) })]),
    ]);
    expect(changesAfter([0, oneOut], [5, struckToo]).outages.map(({ hydrantId }) => hydrantId)).toEqual([
      'H-3',
      'H-1',
    ]);
  });
});
