import { describe, expect, it } from 'vitest';
import { projectStream } from '../../functions/project/project.ts';
import { createProjector } from '../../functions/project/projector.ts';
import { rebuild, replayUnprojected } from '../../functions/project/rebuild.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import type { HydrantStatus } from '../../shared/outages/hydrantStatus.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import { streamOfSubmission, type Submission } from '../../shared/submissions/submission.ts';
import { storesOnDynalite } from '../support/stores.ts';
import {
  at,
  correction,
  fact,
  onClaim,
  onHydrant,
  onStrike,
  onUtility,
  uuid,
} from '../support/submissions.ts';
import { delivery, kept, world, type World } from './support.ts';

/** Accepts and projects each in turn, as the handlers do. */
async function told(one: World, ...submissions: readonly Submission[]): Promise<void> {
  for (const submission of submissions) {
    await one.ledger.accept(submission, delivery);
    await projectStream(one, streamOfSubmission(submission));
  }
}

const strikeOf = async ({ projections }: World, number: number): Promise<StrikeState | null> =>
  (await projections.get<StrikeState>('strike', uuid(number)))?.value ?? null;
const statusOf = async ({ projections }: World, hydrantId: string): Promise<HydrantStatus | null> =>
  (await projections.get<HydrantStatus>('hydrant', hydrantId))?.value ?? null;
const openOutages = async (one: World, hydrantId: string): Promise<string[] | undefined> =>
  (await statusOf(one, hydrantId))?.open.map(({ outageId }) => outageId);
const strikeAt = (number: number, hydrantId: string | null, on = number): Submission =>
  fact('strike', 100 + number, onStrike(on), { hydrantId });

describe('what is kept after each fact', () => {
  it('a strike takes its hydrant out of service, a whole return puts it back', async () => {
    const one = world();
    await told(one, strikeAt(1, 'A'));
    expect(await statusOf(one, 'A')).toMatchObject({ inService: false });
    await told(
      one,
      fact('return-to-service', 200, onHydrant('A'), { closes: [uuid(1)], returnedAt: at(300) }),
    );
    expect(await statusOf(one, 'A')).toMatchObject({ inService: true });
    expect(await strikeOf(one, 1)).toMatchObject({ stage: 'back' });
  });

  it('a strike of a hydrant that a correction moves to another: both hydrants are computed anew', async () => {
    const one = world();
    const wrong = fact('strike', 101, onStrike(1), { hydrantId: 'A' });
    await told(one, fact('inspection', 90, onHydrant('A')), wrong);
    expect(await openOutages(one, 'A')).toEqual([uuid(1)]);
    await told(one, correction(102, wrong, { ...wrong.body, hydrantId: 'B' }));
    expect(await openOutages(one, 'A')).toEqual([]);
    expect(await openOutages(one, 'B')).toEqual([uuid(1)]);
    expect(await strikeOf(one, 1)).toMatchObject({ hydrantId: 'B' });
  });

  it('a hydrant that only a wrong report named is no longer kept', async () => {
    const one = world();
    const wrong = fact('strike', 101, onStrike(1), { hydrantId: 'no such' });
    await told(one, wrong, correction(102, wrong, { ...wrong.body, hydrantId: 'B' }));
    expect(await statusOf(one, 'no such')).toBeNull();
    await told(one, correction(103, correction(102, wrong, {}), null));
    expect(await statusOf(one, 'B')).toBeNull();
    expect(await strikeOf(one, 1)).toBeNull();
  });

  it('a link joins two strikes under the smaller id, and its withdrawal parts them', async () => {
    const one = world();
    const link = fact('link', 150, onStrike(2), { sameAsStrikeId: uuid(1) });
    await told(one, strikeAt(1, 'A'), strikeAt(2, 'A'));
    expect(await openOutages(one, 'A')).toEqual([uuid(1), uuid(2)]);
    await told(one, link);
    expect(await openOutages(one, 'A')).toEqual([uuid(1)]);
    expect(await strikeOf(one, 1)).toMatchObject({ memberIds: [uuid(1), uuid(2)] });
    expect(await strikeOf(one, 2)).toBeNull();
    expect((await one.projections.get('joined', uuid(2)))?.value).toEqual({ strikeId: uuid(1) });
    await told(one, correction(151, link, null));
    expect(await openOutages(one, 'A')).toEqual([uuid(1), uuid(2)]);
    expect(await one.projections.get('joined', uuid(2))).toBeNull();
  });

  it('a link that arrives before either strike, in the stream of the other', async () => {
    const one = world();
    await told(one, fact('link', 150, onStrike(2), { sameAsStrikeId: uuid(1) }));
    await told(one, strikeAt(1, 'A'));
    expect(await strikeOf(one, 1)).toMatchObject({ memberIds: [uuid(1), uuid(2)], hydrantId: 'A' });
    await told(one, strikeAt(2, 'A'));
    expect(await openOutages(one, 'A')).toEqual([uuid(1)]);
  });

  it('a valve closed in the stream of another strike of the hydrant holds this one', async () => {
    const one = world();
    await told(
      one,
      strikeAt(1, 'A'),
      strikeAt(2, 'A'),
      fact('return-to-service', 200, onStrike(1), {
        closes: [uuid(1)],
        returnedAt: at(300),
        valvesReopened: [],
      }),
    );
    expect(await strikeOf(one, 1)).toMatchObject({ stage: 'back' });
    await told(one, fact('valve-operation', 210, onStrike(2), { action: 'closed', at: at(290) }));
    expect(await strikeOf(one, 1)).toMatchObject({ returnedAt: null });
    expect(await openOutages(one, 'A')).toEqual([uuid(1), uuid(2)]);
  });

  it('claims stand by themselves, also when their opening comes last', async () => {
    const one = world();
    const subject = onClaim(7);
    await told(one, fact('packet-frozen', 299, subject));
    await told(one, fact('demand-sent', 300, subject, { sentOn: '2026-03-04' }));
    expect(await one.projections.get('claim', uuid(7))).toBeNull();
    await told(one, fact('claim-opened', 301, subject));
    expect((await one.projections.get('claim', uuid(7)))?.value).toMatchObject({ stage: 'billed' });
  });

  it('rates, models and the inventory in force', async () => {
    const one = world();
    const model = fact('hydrant-model', 400, onUtility, { name: 'First' });
    await told(
      one,
      fact('rate-book', 410, onUtility),
      model,
      fact('hydrant-model', 402, onUtility, { name: 'Second' }),
      fact('inventory-loaded', 403, onUtility, { sourceFile: 'new.csv', loadedAt: at(10) }),
      fact('inventory-loaded', 404, onUtility, { sourceFile: 'old.csv', loadedAt: at(5) }),
    );
    const utility = await one.projections.list<Record<string, unknown>>('utility');
    expect(
      utility.map(({ key, value }) => [key, value['name'] ?? value['sourceFile'] ?? value['title']]),
    ).toEqual([
      ['hydrant-model:M-1', 'Second'],
      ['inventory-loaded', 'new.csv'],
      ['rate-book:2026', 'Rates of 2026'],
    ]);
    await told(
      one,
      correction(405, fact('hydrant-model', 402, onUtility), null),
      correction(406, model, null),
    );
    expect(await one.projections.get('utility', 'hydrant-model:M-1')).toBeNull();
  });

  it('an inventory that says another type lets a held return take effect', async () => {
    let type: 'unknown' | 'wet-barrel' = 'unknown';
    const one: World = { ...world(), hydrantType: async () => type };
    const dryOnly = fact('return-to-service', 200, onStrike(1), { closes: [uuid(1)], returnedAt: at(300) });
    const proofs = dryOnly.body.proofs.filter(({ proof }) => proof !== 'drains-down');
    await told(one, strikeAt(1, 'A'), { ...dryOnly, body: { ...dryOnly.body, proofs } });
    expect(await statusOf(one, 'A')).toMatchObject({ inService: false });
    type = 'wet-barrel';
    await told(one, fact('inventory-loaded', 300, onUtility));
    expect(await statusOf(one, 'A')).toMatchObject({ inService: true });
  });

  it('documents are listed with everyone who may read a submission that names them', async () => {
    const one = world();
    const sha256 = 'a1'.repeat(32);
    await told(one, strikeAt(1, 'A'));
    expect((await one.projections.get('exhibits', sha256))?.value).toEqual({
      sha256,
      mediaType: 'image/jpeg',
      readers: ['clerk', 'crew', 'manager'],
      declaredAt: expect.any(String),
    });
    await told(one, fact('packet-frozen', 300, onClaim(1), { pdfSha256: 'c3'.repeat(32) }));
    expect((await one.projections.get('exhibits', 'c3'.repeat(32)))?.value).toMatchObject({
      readers: ['clerk', 'manager'],
    });
  });

  it('who may read a document is decided by who named it first, whichever is projected first', async () => {
    const photo = { ...fact('strike', 1, onStrike(1)).body.photos[0]!, sha256: 'd4'.repeat(32) };
    const paper = fact('documents', 1, onStrike(1), { documents: [{ ...photo, what: 'other' } as never] });
    const again = fact('strike', 400, onStrike(2), { photos: [photo] });
    const readersAfter = async (...submissions: Submission[]) => {
      const one = world();
      for (const submission of submissions) {
        await one.ledger.accept(submission, { recordedAt: submission.sentAt, deliveredBy: null });
        await projectStream(one, streamOfSubmission(submission));
      }
      return (await one.projections.get<{ readers: string[] }>('exhibits', photo.sha256))?.value.readers;
    };
    expect(await readersAfter(paper, again)).toEqual(['clerk', 'manager']);
    expect(await readersAfter(again, paper)).toEqual(['clerk', 'manager']);
    // A crew's photo that the desk files as a paper stays the crew's too.
    const early = fact('strike', 1, onStrike(2), { photos: [photo] });
    const late = fact('documents', 400, onStrike(1), { documents: [{ ...photo, what: 'other' } as never] });
    expect(await readersAfter(late, early)).toEqual(['clerk', 'crew', 'manager']);
  });

  it('a trial changes nothing that is kept of strikes, hydrants and claims', async () => {
    const one = world();
    await told(one, strikeAt(1, 'A'));
    const before = await kept(one);
    const trial = { test: true } as const;
    await told(
      one,
      fact('strike', 500, onStrike(9), { hydrantId: 'A', photos: [] }, trial),
      fact('link', 501, onStrike(9), { sameAsStrikeId: uuid(1) }, trial),
      fact('return-to-service', 502, onStrike(1), { closes: [uuid(1)], returnedAt: at(300) }, trial),
      fact('claim-opened', 503, onClaim(9), {}, trial),
      fact('hydrant-model', 504, onUtility, {}, trial),
    );
    expect(await kept(one)).toEqual(before);
  });

  it('nothing personal is kept', async () => {
    const one = world();
    await told(
      one,
      strikeAt(1, 'A'),
      fact('party', 110, onStrike(1)),
      fact('out-of-service-notice', 111, onStrike(1)),
      fact('claim-opened', 112, onClaim(1)),
      fact('demand-sent', 113, onClaim(1)),
    );
    const text = JSON.stringify(await kept(one));
    expect(text).toContain(uuid(110));
    expect(text).not.toMatch(/A caller|555-|Desk two|AAA 111|invented driver|An adjuster|Officer 9|the ice/);
  });

  it('a name that is no stream is refused', async () => {
    for (const stream of ['', 'strike:', 'truck:1', 'utility:1'])
      await expect(projectStream(world(), stream)).rejects.toThrow(/not a stream/);
  });
});

describe('an older reading', () => {
  const cases: readonly [string, Submission][] = [
    ['a strike', fact('valve-operation', 120, onStrike(1), { action: 'closed' })],
    ['a strike that nothing was known of', fact('strike', 120, onStrike(2), { hydrantId: 'A', photos: [] })],
    ['a link', fact('link', 120, onStrike(3), { sameAsStrikeId: uuid(1) })],
    ['a hydrant', fact('outage', 120, onHydrant('B'))],
    ['a claim', fact('claim-opened', 120, onClaim(1))],
    ['the utility', fact('hydrant-model', 120, onUtility)],
  ];
  it.each(cases)(
    'of %s never replaces a newer one, not even one that says what was there before',
    async (_name, wrong) => {
      const one = world();
      await told(one, strikeAt(1, 'A'), fact('strike', 103, onStrike(3), { hydrantId: 'A', photos: [] }));
      const state = async () =>
        Object.fromEntries(Object.entries(await kept(one)).filter(([name]) => !name.startsWith('mention')));
      const before = await state();

      // A projection that has read the fact, and is held up before its first write.
      await one.ledger.accept(wrong, delivery);
      const reached = Promise.withResolvers<undefined>();
      const release = Promise.withResolvers<undefined>();
      const slow: World = {
        ...one,
        projections: {
          ...one.projections,
          put: async (...write) => {
            if (write[0] === 'mention') return one.projections.put(...write);
            reached.resolve(undefined);
            await release.promise;
            return one.projections.put(...write);
          },
        },
      };
      const finished = projectStream(slow, streamOfSubmission(wrong));
      await reached.promise;

      // Meanwhile the fact is withdrawn, and that is projected whole: it says what was kept before.
      await told(one, correction(121, wrong, null));
      expect(await state()).toEqual(before);
      release.resolve(undefined);
      await finished;
      expect(await state()).toEqual(before);
    },
  );
});

describe('a fault', () => {
  it.each(['ledger', 'inventory'] as const)('of the %s writes nothing and is thrown', async (which) => {
    const one = world();
    await told(one, strikeAt(1, 'A'));
    const before = await kept(one);
    await one.ledger.accept(fact('repair', 130, onStrike(1), { hydrantId: 'A' }), delivery);
    const unavailable = async (): Promise<never> => {
      throw new StoreUnavailable('down');
    };
    const broken: World =
      which === 'ledger'
        ? { ...one, ledger: { ...one.ledger, readStream: unavailable } }
        : { ...one, hydrantType: unavailable };
    await expect(projectStream(broken, streamOf(onStrike(1)))).rejects.toThrow(StoreUnavailable);
    expect(await kept(one)).toEqual(before);
    await expect(rebuild({ ...one, hydrantType: unavailable }, { write: true })).rejects.toThrow(
      StoreUnavailable,
    );
  });
});

describe('rebuild', () => {
  const busy: readonly Submission[] = [
    strikeAt(1, 'A'),
    strikeAt(2, 'A'),
    strikeAt(3, null),
    fact('link', 150, onStrike(2), { sameAsStrikeId: uuid(1) }),
    fact('outage', 160, onHydrant('B')),
    fact('claim-opened', 170, onClaim(1)),
    fact('rate-book', 180, onUtility),
  ];

  it('finds nothing after every fact was projected', async () => {
    const one = world();
    await told(one, ...busy);
    expect(await rebuild(one, { write: false })).toMatchObject({
      facts: busy.length,
      differences: [],
      left: [],
    });
  });

  it('names every difference by partition, key and first path, changes nothing unasked, and repairs when asked', async () => {
    const one = world();
    await told(one, ...busy);
    const right = await kept(one);
    const spoil = async (
      partition: string,
      key: string,
      change: (value: never) => unknown,
    ): Promise<void> => {
      const stored = await one.projections.get<never>(partition, key);
      await one.projections.put(partition, key, change(stored!.value), stored!.version);
    };
    await spoil('strike', uuid(1), (value: StrikeState) => ({ ...value, stage: 'back' }));
    await spoil('hydrant', 'A', (value: HydrantStatus) => ({
      ...value,
      open: value.open.map((outage) => ({ ...outage, cause: 'frozen' })),
    }));
    await one.projections.remove('claim', uuid(1), 1);
    await one.projections.put('strike', uuid(99), { strikeId: uuid(99) }, 0);
    await one.projections.remove('mention', `hydrant:A\nstrike:${uuid(2)}`, 1);
    await one.projections.put('mention', `hydrant:B\nstrike:${uuid(77)}`, {}, 0);

    const expected = [
      { partition: 'claim', key: uuid(1), kind: 'missing', path: '' },
      { partition: 'hydrant', key: 'A', kind: 'differs', path: 'open.0.cause' },
      { partition: 'mention', key: `hydrant:A\nstrike:${uuid(2)}`, kind: 'missing', path: '' },
      { partition: 'mention', key: `hydrant:B\nstrike:${uuid(77)}`, kind: 'extra', path: '' },
      { partition: 'strike', key: uuid(1), kind: 'differs', path: 'stage' },
      { partition: 'strike', key: uuid(99), kind: 'extra', path: '' },
    ];
    const byName = (a: { partition: string; key: string }, b: { partition: string; key: string }): number =>
      `${a.partition} ${a.key}` < `${b.partition} ${b.key}` ? -1 : 1;
    const looked = await rebuild(one, { write: false });
    expect([...looked.differences].sort(byName)).toEqual(expected);
    expect(looked.left).toEqual(looked.differences);
    expect((await rebuild(one, { write: false })).differences).toHaveLength(expected.length);

    const repaired = await rebuild(one, { write: true });
    expect([...repaired.differences].sort(byName)).toEqual(expected);
    expect(repaired.left).toEqual([]);
    expect(await kept(one)).toEqual(right);
  });

  it('projects what was accepted and never projected, over HTTP as in memory', async () => {
    const opened = await storesOnDynalite();
    try {
      for (const one of [world(), world(opened.stores)]) {
        await told(one, ...busy.slice(0, 2));
        for (const submission of busy.slice(2)) await one.ledger.accept(submission, delivery);
        const { differences, left } = await replayUnprojected(one);
        expect(differences.length).toBeGreaterThan(0);
        expect(left).toEqual([]);
        const direct = world();
        await told(direct, ...busy);
        expect(await kept(one)).toEqual(await kept(direct));
      }
    } finally {
      await opened.close();
    }
  });
});

describe('many at once over HTTP', () => {
  const strikes = (count: number): Submission[] =>
    Array.from({ length: count }, (_, index) =>
      fact('strike', 100 + index, onStrike(index + 1), { hydrantId: 'A', photos: [] }),
    );

  it('twenty strikes of one hydrant in one process', async () => {
    const opened = await storesOnDynalite();
    try {
      const { pause: _none, ...one } = world(opened.stores);
      const { project } = createProjector(one);
      await Promise.all(
        strikes(20).map(async (submission) => {
          await one.ledger.accept(submission, delivery);
          await project(streamOfSubmission(submission));
        }),
      );
      expect(await openOutages(one, 'A')).toHaveLength(20);
      expect((await rebuild(one, { write: false })).differences).toEqual([]);
    } finally {
      await opened.close();
    }
  });

  it('six strikes of one hydrant in six processes', async () => {
    const opened = await storesOnDynalite();
    try {
      const { pause: _none, ...one } = world(opened.stores);
      await Promise.all(
        strikes(6).map(async (submission) => {
          await one.ledger.accept(submission, delivery);
          await projectStream(one, streamOfSubmission(submission));
        }),
      );
      expect(await openOutages(one, 'A')).toHaveLength(6);
      expect((await rebuild(one, { write: false })).differences).toEqual([]);
    } finally {
      await opened.close();
    }
  });

  it('a stream that waits already is projected once for all who wait, and one that fails holds up no other', async () => {
    const one = world();
    const read: string[] = [];
    const counting: World = {
      ...one,
      ledger: {
        ...one.ledger,
        readStream: async (stream, options) => {
          read.push(stream);
          if (stream === 'claim:broken') throw new StoreUnavailable('down');
          return one.ledger.readStream(stream, options);
        },
      },
    };
    const { project } = createProjector(counting);
    const outcomes = await Promise.allSettled([
      project('claim:a'),
      project('claim:broken'),
      ...Array.from({ length: 10 }, () => project('claim:b')),
    ]);
    expect(outcomes.map(({ status }) => status)).toEqual([
      'fulfilled',
      'rejected',
      ...Array<string>(10).fill('fulfilled'),
    ]);
    const once = read.filter((stream) => stream === 'claim:a').length;
    expect(read.filter((stream) => stream === 'claim:b')).toHaveLength(once);
  });
});
