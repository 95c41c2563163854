import { expect, it } from 'vitest';
import type { Mark } from '../../functions/stores/unprojected/unprojected.ts';
import { describeOnPlaces } from './onPlaces.ts';
import { fact, onHydrant, onStrike, uuid } from '../support/submissions.ts';

const mark = (stream: string, number: number, attempt = 'a'): Mark => ({
  stream,
  submissionId: uuid(number),
  recordedAt: '2026-03-04T02:31:00.000Z',
  attempt,
});

describeOnPlaces('marks of what is not projected', (opened) => {
  it('are listed of one stream and of all, and removed each by itself', async () => {
    const { unprojected } = opened().stores;
    expect(await unprojected.list()).toEqual([]);
    // Two who hand in the same fact at once have a mark each; streams whose names begin alike are apart.
    const all = [
      mark('hydrant:1', 1, 'a'),
      mark('hydrant:1', 1, 'b'),
      mark('hydrant:10', 2),
      mark('hydrant:Ñ 消', 3),
    ];
    for (const each of [...all, all[0]!]) await unprojected.add(each);
    expect(await unprojected.list()).toHaveLength(4);
    expect(await unprojected.list()).toEqual(expect.arrayContaining(all));
    expect(await unprojected.list('hydrant:1')).toEqual(all.slice(0, 2));
    expect(await unprojected.list('hydrant:Ñ 消')).toEqual([all[3]]);
    await unprojected.remove([all[0]!, all[3]!]);
    await unprojected.remove([all[0]!]);
    expect(await unprojected.list()).toEqual([all[1], all[2]]);
    await unprojected.remove(all);
    expect(await unprojected.list()).toEqual([]);
  });

  it('stand for a fact that was accepted, and for no repeat and no clash', async () => {
    const { ledger, unprojected } = opened().stores;
    const delivery = { recordedAt: '2026-03-04T02:31:00.000Z', deliveredBy: null };
    const sent = fact('inspection', 40, onHydrant('A'));
    await ledger.accept(sent, delivery);
    await ledger.accept(sent, delivery);
    await ledger.accept({ ...sent, body: { ...sent.body, note: 'Another' } }, delivery);
    await ledger.accept(fact('strike', 41, onStrike(41)), delivery);
    expect((await unprojected.list()).map(({ stream, submissionId }) => [stream, submissionId])).toEqual([
      ['hydrant:A', uuid(40)],
      [`strike:${uuid(41)}`, uuid(41)],
    ]);
  });
});
