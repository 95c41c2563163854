import { beforeAll, describe, expect, it } from 'vitest';
import { runDigest } from '../../functions/digest/run.ts';
import { runDispatch } from '../../functions/dispatchSend/run.ts';
import { publishAndReport } from '../../functions/publish/report.ts';
import { readSources } from '../../functions/publish/sources.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import { demoUtility } from '../../infra/local/demo/index.ts';
import { routes } from '../../shared/deployment/routes.ts';
import { partitions } from '../../shared/projections/items.ts';
import type { Subject } from '../../shared/submissions/envelope.ts';
import { factKinds, type FactKind } from '../../shared/submissions/kinds.ts';
import { streamOfSubmission, type Submission } from '../../shared/submissions/submission.ts';
import { demoClaim, demoNow, struckHydrant, townNear } from '../support/demoClaim.ts';
import { digestDeps } from '../support/digestWorld.ts';
import { postOffice, streamRecord } from '../support/dispatchWorld.ts';
import { sampleSubjectTypes } from '../support/sampleBodies.ts';
import { fact, onClaim, onHydrant, onStrike, onUtility, uuid } from '../support/submissions.ts';
import { townMeta } from '../support/townMeta.ts';
import { testWorld, type World } from './support/world.ts';

/**
 * A trial (`test: true`) is kept and counts nowhere. Two utilities are told the same; the second is also told trials of
 * every kind, about everything that is real and about things that are not.
 * Whatever either answers, publishes, mails or sends must be the same to the byte, so no total can have counted one.
 */
const demo = demoClaim();
const samples = { strike: onStrike(1), hydrant: onHydrant('TH-0070'), claim: onClaim(2), utility: onUtility };
const aboutReal = (kind: FactKind) =>
  kind === 'claim-opened' ? { strikeId: uuid(1), claimNumber: '2026-0777' } : {};
const facts: readonly Submission[] = [
  ...demo.submissions,
  ...factKinds.map((kind, index) =>
    fact(kind, 100 + index, samples[sampleSubjectTypes[kind]], {
      ...aboutReal(kind),
      ...(kind === 'strike' ? { hydrantId: 'TH-0072' } : {}),
    }),
  ),
];

const subjects: Record<Subject['type'], readonly Subject[]> = {
  strike: [samples.strike, { type: 'strike', strikeId: demo.strikeId }, onStrike(90)],
  hydrant: [samples.hydrant, onHydrant('TH-0071'), onHydrant('TH-0104')],
  claim: [samples.claim, { type: 'claim', claimId: demo.claimId }, onClaim(91)],
  utility: [onUtility],
};
let made = 5000;
const trials: readonly Submission[] = [
  ...factKinds.flatMap((kind) =>
    subjects[sampleSubjectTypes[kind]].map((subject) =>
      fact(kind, made++, subject, aboutReal(kind), { test: true }),
    ),
  ),
  // Two real strikes said to be one, an outage on a hydrant that has none, a claim of a real strike.
  fact('link', made++, samples.strike, { sameAsStrikeId: demo.strikeId }, { test: true }),
  fact('outage', made++, onHydrant('TH-0088'), {}, { test: true }),
  fact(
    'claim-opened',
    made++,
    onClaim(92),
    { strikeId: demo.strikeId, claimNumber: '2026-0888' },
    { test: true },
  ),
];

const parameters: Record<string, readonly string[]> = {
  '{strikeId}': [uuid(1), demo.strikeId, uuid(90)],
  '{hydrantId}': ['TH-0070', 'TH-0071', 'TH-0072', 'TH-0088', 'TH-0104'],
  '{claimId}': [uuid(2), demo.claimId, uuid(91), uuid(92)],
  '{letter}': ['follow-up', 'preservation'],
  '{file}': ['none.ics'],
  '{jobId}': ['none'],
  '{sha256}': ['ab'.repeat(32)],
};
const filled = (path: string): readonly string[] => {
  const [name] = /\{\w+\}/.exec(path) ?? [];
  if (name === undefined) return [path];
  return parameters[name]!.flatMap((value) => filled(path.replace(name, value)));
};
/** What is read by a POST, by its body. Every other POST writes. */
const questions: Record<string, readonly object[]> = {
  '/api/search': [{ find: 'ABC 1234' }, { find: '2026-0777' }, { find: 'TH-0072' }, { find: 'Ann Example' }],
  '/api/network/{hydrantId}/closing': [{ links: ['P3'] }],
};
const writing = [
  '/api/submissions',
  '/api/dispatch/retry',
  '/api/calendar',
  '/api/claims/{claimId}/letters',
  '/api/claims/{claimId}/packet',
  '/api/evidence/uploads',
];
const asked = routes.flatMap(({ method, path }) =>
  filled(path).flatMap((one): [string, string, object | undefined][] =>
    method === 'GET'
      ? [[method, one, undefined]]
      : (questions[path] ?? []).map((body) => [method, one, body]),
  ),
);

async function told(submissions: readonly Submission[]): Promise<World> {
  const world = await testWorld({ now: () => demoNow });
  await world.inventory.publish([struckHydrant, ...townNear], townMeta(5));
  for (const submission of submissions) {
    const recordedAt = new Date(Date.parse(submission.sentAt) + 60_000).toISOString();
    const { outcome } = await world.stores.ledger.accept(submission, { recordedAt, deliveredBy: null });
    expect(outcome).toBe('accepted');
    await world.deps.afterAppend({ stream: streamOfSubmission(submission), submission });
  }
  return world;
}

/** Every file that is published, by its name. */
async function published({ stores, deps }: World): Promise<Record<string, string>> {
  const store = memoryPublished();
  await publishAndReport(
    {
      settings: demoUtility,
      store,
      renderer: {
        render: async (path, { edition: { snapshot }, ...own }) =>
          `<a href="tel:${demoUtility.emergencyPhone.replaceAll('-', '')}"></a><time datetime="${snapshot.checkedAt}"></time><time datetime="${snapshot.relyUntil}"></time>${path} ${JSON.stringify(own)}`,
        asset: async () => new Uint8Array(),
      },
      readSources: (checkedAt) =>
        readSources({ ...stores, inventory: deps.inventory, pause: async () => undefined }, checkedAt),
      stillRecorded: async () => true,
    },
    demoNow,
    () => undefined,
  );
  return Object.fromEntries(
    [...store.objects].map(([key, { bytes }]) => [key, new TextDecoder().decode(bytes)]),
  );
}

/** What the daily letter and dispatch were sent. */
async function sent({ stores, deps }: World): Promise<readonly unknown[]> {
  const office = postOffice();
  await runDigest(digestDeps(stores, office.email, () => demoNow));
  const keys = await Promise.all(
    ([partitions.hydrant, partitions.strike] as const).map(async (partition) =>
      (await stores.projections.list(partition)).map(({ key }) => ({ partition, key })),
    ),
  );
  await runDispatch(
    {
      ...deps,
      settings: {
        ...demoUtility,
        dispatchMessages: { ...demoUtility.dispatchMessages!, tooOldHours: 10_000 },
      },
      email: office.email,
      texts: office.texts,
      pause: async () => undefined,
    },
    keys.flat().map(streamRecord),
  );
  return office.went;
}

let plain: World;
let mixed: World;
beforeAll(async () => {
  // Trials first, last and between, so that order helps nobody.
  const half = Math.floor(trials.length / 2);
  plain = await told(facts);
  mixed = await told([...trials.slice(0, half), ...facts, ...trials.slice(half)]);
}, 120_000);

describe('a trial', () => {
  it('of every kind was told', () => {
    const kinds = new Set(trials.flatMap(({ kind, test }) => (test === true ? [kind] : [])));
    expect([...kinds].sort()).toEqual([...factKinds].sort());
  });

  it('is looked for in the answer of every route that reads', () => {
    const others = routes
      .filter(({ method, path }) => method === 'POST' && !(path in questions))
      .map(({ path }) => path);
    expect(others.sort()).toEqual(writing.toSorted());
  });

  it.each(asked)('changes nothing in the answer to %s %s %j', async (method, path, body) => {
    const [without, withTrials] = await Promise.all(
      [plain, mixed].map(async (world) => {
        const answer = await world.ask(path, 'manager', { method, ...(body ? { body } : {}) });
        return { status: answer.status, body: answer.body };
      }),
    );
    expect(without!.status).not.toBe(500);
    expect(withTrials).toEqual(without);
  });

  it('changes nothing that is published: pages, snapshot, feeds', async () => {
    const [without, withTrials] = [await published(plain), await published(mixed)];
    expect(Object.keys(without).length).toBeGreaterThan(10);
    expect(Object.keys(withTrials).sort()).toEqual(Object.keys(without).sort());
    for (const [key, text] of Object.entries(without)) expect(withTrials[key], key).toBe(text);
  });

  it('is in no letter and no message to dispatch', async () => {
    const [without, withTrials] = [await sent(plain), await sent(mixed)];
    expect(without.length).toBeGreaterThan(1);
    expect(withTrials).toEqual(without);
  });

  it('leaves the projections as they would be without it', async () => {
    for (const partition of [partitions.strike, partitions.hydrant, partitions.claim]) {
      const [without, withTrials] = await Promise.all(
        [plain, mixed].map(async ({ stores }) =>
          (await stores.projections.list(partition)).map(({ key, value }) => ({ key, value })),
        ),
      );
      expect(withTrials, partition).toEqual(without);
    }
  });
});
