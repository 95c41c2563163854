import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { LogEntry } from '../../functions/log/log.ts';
import { projectStream } from '../../functions/project/project.ts';
import { createStreamHandler } from '../../functions/project/streamHandler.ts';
import { publishAndReport } from '../../functions/publish/report.ts';
import type { SiteRenderer } from '../../functions/publish/renderer.ts';
import { readSources } from '../../functions/publish/sources.ts';
import { memoryStores } from '../../functions/stores/dynamodb/stores.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import { nearestIndex } from '../../shared/nearest/nearest.ts';
import type { PublicSources } from '../../shared/public/build.ts';
import type { FactKind } from '../../shared/submissions/kinds.ts';
import { streamOfSubmission, type BodyOf } from '../../shared/submissions/submission.ts';
import { builtRenderer } from '../support/builtSite.ts';
import { allKinds, bodyWithCanary } from '../support/canaries.ts';
import { sampleSubjectTypes } from '../support/sampleBodies.ts';
import { fact, onClaim, onHydrant, onStrike, onUtility, recorded } from '../support/submissions.ts';
import { aHydrant, inventoryOf, townNow, townSettings } from '../support/town.ts';

let renderer: SiteRenderer;
beforeAll(async () => {
  renderer = await builtRenderer();
}, 120_000);

const subjects = {
  strike: onStrike(1),
  hydrant: onHydrant('H-0012'),
  claim: onClaim(2),
  utility: onUtility,
};
const canary = fc.stringMatching(/^QX[a-z0-9]{10}$/);
const everyKind = fc.subarray([...allKinds], { minLength: 1 });

/** The whole way: handed in, marked, projected, read from the stores, published; with the log of each step. */
async function wholeWay(kinds: readonly FactKind[], word: string) {
  const stores = memoryStores();
  const lines: LogEntry[] = [];
  const log = (entry: LogEntry) => void lines.push(entry);
  const submissions = kinds.map((kind, index) =>
    fact(
      kind,
      index + 1,
      subjects[sampleSubjectTypes[kind]],
      bodyWithCanary(kind, word) as BodyOf<FactKind>,
      { person: { personId: word }, device: { deviceId: word } },
    ),
  );
  for (const submission of submissions) await stores.ledger.accept(submission, recorded(submission));
  // The last is left unprojected, so that the page lacks it and says so.
  for (const submission of submissions.slice(0, -1))
    await projectStream({ ...stores, hydrantType: async () => 'dry-barrel' }, streamOfSubmission(submission));
  // What the inventory knows beyond number, place, class and type is the utility's own.
  const own = { owner: word, isolationValveId: word, modelId: word, source: { file: word, row: 1 } };
  const town = [
    aHydrant('H-12', own),
    aHydrant('H-0012', { ...own, latitudeDeg: 39.2012 }),
    aHydrant('H-13', { ...own, latitudeDeg: 39.2023 }),
  ];
  const inventory = { ...inventoryOf(town), index: nearestIndex(town) };
  const read = async (checkedAt: string): Promise<PublicSources> => ({
    ...(await readSources(
      { ...stores, inventory: { current: async () => null }, pause: async () => undefined },
      checkedAt,
    )),
    inventory,
  });
  const store = memoryPublished();
  const deps = {
    settings: townSettings,
    store,
    renderer,
    readSources: read,
    stillRecorded: async () => true,
  };
  return { stores, store, deps, lines, log };
}

const textsOf = (store: ReturnType<typeof memoryPublished>): [string, string][] =>
  [...store.objects]
    .filter(([key]) => !key.endsWith('.woff2'))
    .map(([key, { bytes }]) => [key, new TextDecoder().decode(bytes)]);

describe('what is private', () => {
  test('is in no public file, feed, log line or error, on the whole way from the form to the page', async () => {
    await fc.assert(
      fc.asyncProperty(everyKind, canary, async (kinds, word) => {
        const { store, deps, lines, log } = await wholeWay(kinds, word);
        const sources = await deps.readSources(townNow.toISOString());
        expect(JSON.stringify(sources.inventory)).toContain(word);
        await publishAndReport(deps, townNow, log);
        const files = textsOf(store);
        expect(files.length).toBeGreaterThan(10);
        for (const [key, text] of files) expect(text.includes(word), key).toBe(false);
        for (const key of store.objects.keys()) expect(key.includes(word)).toBe(false);
        expect(JSON.stringify(lines)).not.toContain(word);
      }),
      { numRuns: 25 },
    );
  });

  test('is in no log line when anything fails with it in its message', async () => {
    const faults: readonly ((word: string) => Error)[] = [
      (word) => new Error(`cannot read ${word}`),
      (word) => new StoreUnavailable(`no answer about ${word}`, { cause: new Error(word) }),
      (word) => new TypeError(`${word} is not a function`),
    ];
    await fc.assert(
      fc.asyncProperty(everyKind, canary, fc.constantFrom(...faults), async (kinds, word, fault) => {
        const { store, deps, lines, log } = await wholeWay(kinds, word);
        const failing = () => Promise.reject(fault(word));
        await publishAndReport({ ...deps, readSources: failing }, townNow, log).catch(() => undefined);
        const broken = { ...renderer, render: failing };
        await publishAndReport({ ...deps, renderer: broken }, townNow, log).catch(() => undefined);
        // A value that the public schema does not know is somebody's words in the place of a code.
        const unknown = async (checkedAt: string): Promise<PublicSources> => {
          const sources = await deps.readSources(checkedAt);
          const outage = { outageId: word, cause: word, since: word, expectedAt: word, waitingFor: word };
          const open = [{ ...outage, endedAt: null, heldReturns: [], deferred: [], dispatchToldAt: null }];
          const status = { hydrantId: 'H-13', inService: false, open, past: [], lastInspectedAt: null };
          return {
            ...sources,
            statuses: [...sources.statuses, { ...status, flowTestIds: [], planned: [] }] as never,
          };
        };
        await publishAndReport({ ...deps, readSources: unknown }, townNow, log).catch(() => undefined);
        await createStreamHandler({ project: failing, log })({
          Records: [{ dynamodb: { Keys: { stream: { S: 'strike:1' } }, SequenceNumber: '1' } }],
        });
        expect(lines.filter(({ level }) => level === 'error')).toHaveLength(4);
        expect(JSON.stringify(lines)).not.toContain(word);
        for (const [key, text] of textsOf(store)) expect(text.includes(word), key).toBe(false);
      }),
      { numRuns: 15 },
    );
  });
});
