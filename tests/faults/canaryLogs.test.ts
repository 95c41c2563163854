import { describe, expect, it } from 'vitest';
import { runDigest } from '../../functions/digest/run.ts';
import { runDispatch } from '../../functions/dispatchSend/run.ts';
import type { LogEntry } from '../../functions/log/log.ts';
import { checkOutgoing } from '../../functions/outgoing/check.ts';
import { runJob } from '../../functions/packets/jobs.ts';
import { createProjector } from '../../functions/project/projector.ts';
import { createStreamHandler } from '../../functions/project/streamHandler.ts';
import { memoryStores } from '../../functions/stores/dynamodb/stores.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { NotSent } from '../../functions/stores/mail/mailSender.ts';
import { hydrantSubject } from '../../shared/dispatch/notice.ts';
import { partitions } from '../../shared/projections/items.ts';
import { watchedEvents } from '../../shared/deployment/watchedEvents.ts';
import { bodyWithCanary } from '../support/canaries.ts';
import { demoClaim } from '../support/demoClaim.ts';
import { demanded, digestDeps, record } from '../support/digestWorld.ts';
import { addresses, dispatchWorld, postOffice, streamRecord } from '../support/dispatchWorld.ts';
import { packetWorld } from '../support/packetWorld.ts';
import { at, fact, onClaim, onHydrant, onStrike, uuid } from '../support/submissions.ts';
import { demoUtility } from '../../infra/local/demo/index.ts';

/**
 * What the functions that nobody calls by hand write into the log when something breaks with a person's words in its
 * message. `tests/public/canary.test.ts` does the same for the publisher and `tests/http/canary.test.ts` for the routes;
 * what a function throws is looked at in `wordless.test.ts`.
 */
const word = 'qxcanaryann';
const about = (more: string): string => `refused:\n    at ${word} (${more})\n${more}`;
const faults: readonly ((more: string) => Error)[] = [
  (more) => new Error(about(more)),
  (more) => new StoreUnavailable(about(more), { cause: new Error(about(more)) }),
  (more) => Object.assign(new TypeError(about(more)), { Item: { S: word } }),
  (more) => new NotSent('mail-service-away', { cause: new Error(about(more)) }),
];
const strike = fact('strike', 9, onStrike(9), { ...bodyWithCanary('strike', word), hydrantId: 'H-12' });
const claimed = fact('claim-opened', 1, onClaim(1), {
  ...bodyWithCanary('claim-opened', word),
  strikeId: uuid(9),
});

/** The lines, which there must be, and in which nothing personal may stand: neither the word nor anybody's address. */
function expectWordless(lines: readonly LogEntry[], ...events: readonly string[]): void {
  const said = JSON.stringify(lines).toLowerCase();
  expect(lines.map(({ event }) => event)).toEqual(expect.arrayContaining([...events]));
  expect(said).not.toContain(word);
  for (const one of [...addresses, ...demoUtility.digest!.to.map(({ email }) => email)])
    expect(said).not.toContain(one.toLowerCase());
}

describe.each(faults.map((fault) => [fault('').name, fault] as const))('with a %s', (_, fault) => {
  it('the projector says no word of a report', async () => {
    const lines: LogEntry[] = [];
    const stores = memoryStores();
    await stores.ledger.accept(strike, { recordedAt: at(60), deliveredBy: word });
    const handle = createStreamHandler({
      ...createProjector({
        ...stores,
        hydrantType: async () => {
          throw fault(JSON.stringify(strike));
        },
        pause: async () => undefined,
      }),
      log: (entry) => void lines.push(entry),
    });
    const { batchItemFailures } = await handle({
      Records: [{ dynamodb: { Keys: { stream: { S: `strike:${uuid(9)}` } }, SequenceNumber: '7' } }],
    });
    expect(batchItemFailures).toEqual([{ itemIdentifier: '7' }]);
    expectWordless(lines, 'projection-failed');
  });

  it('the daily letter says no word of a claim, and to nobody', async () => {
    const stores = memoryStores();
    const noon = new Date('2026-04-22T16:00:00Z');
    await record(stores, [
      strike,
      claimed,
      ...demanded.slice(2).map((one) => ({ ...one, person: { personId: word } })),
    ]);
    let letters = 0;
    const deps = digestDeps(
      stores,
      {
        send: async (mail) => {
          letters += 1;
          // The claim's own number, as it was typed, stands in the letter: it must not get from there into the log.
          expect(mail.text).toContain(word);
          throw fault(JSON.stringify(mail));
        },
      },
      () => noon,
    );
    await runDigest(deps);
    expect(letters).toBeGreaterThan(0);
    expectWordless(deps.logged, 'letter-not-sent');
  });

  it('dispatch’s messages are spoken of without a word, an address or a place', async () => {
    const office = postOffice((attempt) => (attempt < 50 ? fault(addresses.join()) : null));
    const world = dispatchWorld({ now: () => new Date(at(60)), office });
    // Where nothing else says where it is, the crew's own words for the place are in the message.
    const place = { ...strike, body: { ...strike.body, hydrantId: null, position: null } };
    await world.record(place, fact('outage', 13, onHydrant('H-13'), bodyWithCanary('outage', word)));
    expectWordless(world.logged, 'dispatch-message-not-sent');

    const lines: LogEntry[] = [];
    const broken = {
      ...world.deps,
      log: (entry: LogEntry) => void lines.push(entry),
      current: new Proxy(world.deps.current, {
        get: () => () => Promise.reject(fault(word)),
        apply: () => Promise.reject(fault(word)),
      }),
      inventory: { current: () => Promise.reject(fault(word)) },
    };
    const { batchItemFailures } = await runDispatch(
      broken,
      [{ partition: partitions.hydrant, key: 'H-13' }].map(streamRecord),
    );
    expect(batchItemFailures).toHaveLength(1);
    expectWordless(lines, 'dispatch-message-not-made');
    expect(lines[0]).toMatchObject({ subject: hydrantSubject('H-13') });

    const checked: LogEntry[] = [];
    await checkOutgoing({
      ...world.stores,
      settings: world.settings,
      now: () => new Date(at(24 * 60)),
      account: {
        mailIsOpen: async () => false,
        isConfirmed: async () => false,
        textsAreOpen: async () => false,
      },
      log: (entry) => void checked.push(entry),
    });
    expectWordless(checked, watchedEvents.lateMessages.event);
    expect(Number(checked[0]!['lateMessages'])).toBeGreaterThan(0);
  });

  it('a packet that could not be built is spoken of without a word', async () => {
    const world = await packetWorld(demoClaim());
    const { claimId } = demoClaim();
    const member = { personId: word, name: `${word} Example`, roles: ['clerk' as const] };
    const request = { mode: 'freeze' as const, changes: word };
    const evidence = new Proxy(world.deps.evidence, {
      get: () => () => Promise.reject(fault(JSON.stringify(member))),
    });
    await runJob({ ...world.deps, evidence }, { claimId, jobId: 'job-1', member, request });
    expectWordless(world.logged, watchedEvents.packetFailed.event);
  });
});
