import { describe, expect, it } from 'vitest';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { NotSent } from '../../functions/stores/mail/mailSender.ts';
import type { KeptItem } from '../../functions/project/deps.ts';
import { dispatchPatience, hydrantSubject, placeSubject } from '../../shared/dispatch/notice.ts';
import { proofs } from '../../shared/outages/proofs.ts';
import { addresses, dispatchWorld, postOffice, streamRecord } from '../support/dispatchWorld.ts';
import { storesOnDynalite } from '../support/stores.ts';
import { at, correction, fact, onHydrant, onStrike, uuid } from '../support/submissions.ts';
import { townHydrants } from '../support/town.ts';

const hydrants = townHydrants(60);
const [own, other] = [hydrants[20]!, hydrants[45]!];
const minute = 60_000;
const unsaid = { source: 'police' as const, name: null, phone: null, reportedAt: null };

/** Struck at 02:00 and recorded minutes later, in the night of 4 March 2026. */
const struck = (number = 9, body = {}) =>
  fact('strike', number, onStrike(number), { hydrantId: own.hydrantId, dispatch: null, ...body });
const returned = (number: number, minutes: number, strike = 9, more = {}) =>
  fact('return-to-service', number, onStrike(strike), {
    closes: [uuid(strike)],
    returnedAt: at(minutes),
    proofs: proofs.map((proof) => ({
      proof,
      result: 'passed' as const,
      at: at(minutes),
      byWorkerId: 'w-7',
      deferredReason: null,
      deferredByWorkerId: null,
    })),
    valvesReopened: [],
    dispatch: null,
    ...more,
  });

function clocked(minutes = 10) {
  let ms = Date.parse(at(minutes));
  return {
    now: () => new Date(ms),
    to: (later: number) => void (ms = Date.parse(at(later))),
    pass: (milliseconds: number) => void (ms += milliseconds),
  };
}

describe('out of service and back', () => {
  it('is told to each recipient once, with what firefighters need', async () => {
    const time = clocked();
    const world = dispatchWorld({ hydrants, now: time.now });
    await world.record(struck());
    expect(world.went.map(({ to }) => to).sort()).toEqual([...addresses].sort());
    const text = world.went.find(({ to }) => to.startsWith('+'))!.text;
    expect(text).toContain(
      `HYDRANT OUT OF SERVICE: ${own.hydrantId}, ${own.place}. Struck by a vehicle, 21:00 EST Tue, Mar 3.`,
    );
    expect(text).toMatch(/Nearest in service, straight line: H-\d{4} \d+ ft \w+/);
    expect(text).toMatch(/Ref [A-Z]{2} \d{4}\. Call 555-0100\.$/);

    // Hours of other facts about it bring nothing more.
    time.to(60);
    await world.record(fact('valve-operation', 11, onStrike(9)), fact('expected-return', 12, onStrike(9)));
    await world.wake();
    expect(world.went).toHaveLength(2);

    time.to(16 * 60);
    await world.record(
      fact('valve-operation', 13, onStrike(9), { action: 'reopened', at: at(300) }),
      returned(20, 15.5 * 60),
    );
    expect(world.went).toHaveLength(4);
    const back = world.went.slice(2).find(({ to }) => to.startsWith('+'))!.text;
    expect(back).toContain(
      `HYDRANT BACK IN SERVICE: ${own.hydrantId}, ${own.place}. Since 12:30 EST Wed, Mar 4.`,
    );
    const reference = (sentence: string) => /Ref ([A-Z]{2} \d{4})/.exec(sentence)?.[1];
    expect(reference(back)).toBe(reference(text));
  });

  it('says what was not tested again', async () => {
    const time = clocked();
    const world = dispatchWorld({ hydrants, now: time.now });
    await world.record(struck());
    time.to(200);
    const put = returned(20, 190);
    await world.record({
      ...put,
      body: {
        ...put.body,
        proofs: put.body.proofs.map((one) =>
          one.proof === 'flow-test'
            ? { ...one, result: 'deferred', deferredReason: 'Ice', deferredByWorkerId: 'w-8' }
            : one,
        ),
      },
    });
    expect(world.went.at(-1)?.text).toContain('Not tested again: flow.');
  });

  it('is told of an outage of another cause too', async () => {
    const world = dispatchWorld({ hydrants, now: clocked().now });
    await world.record(fact('outage', 10, onHydrant(own.hydrantId), { cause: 'main-break', dispatch: null }));
    expect(world.went.at(-1)?.text).toMatch(/Main break, 21:00 EST/);
  });

  it('names no hydrant as the nearest that is out, or that may be the one reported without a number', async () => {
    const world = dispatchWorld({ hydrants, now: clocked().now });
    const near = hydrants[21]!;
    const doubtful = hydrants[19]!;
    await world.record(
      fact('outage', 10, onHydrant(near.hydrantId), { dispatch: null }),
      fact('strike', 11, onStrike(11), {
        hydrantId: null,
        position: { latitudeDeg: doubtful.latitudeDeg, longitudeDeg: doubtful.longitudeDeg, accuracyM: 5 },
      }),
      struck(),
    );
    const mail = world.went.filter(({ text }) => text.includes(`service: ${own.hydrantId}`))[0]!.text;
    expect(mail).toContain('Nearest hydrants in service:');
    expect(mail).not.toContain(near.hydrantId);
    expect(mail).not.toContain(doubtful.hydrantId);
  });

  it('a return that has no effect is no news; one that loses its effect is', async () => {
    const time = clocked();
    const world = dispatchWorld({ hydrants, now: time.now });
    await world.record(struck(), returned(20, 5, 9, { proofs: [] }));
    expect(world.went).toHaveLength(2);
    time.to(200);
    const good = returned(21, 190);
    await world.record(good);
    expect(world.went).toHaveLength(4);
    // Days later a proof turns out to have failed: they believe that it serves.
    time.to(5 * 24 * 60);
    await world.record(
      returned(22, 5 * 24 * 60, 9, {
        proofs: [{ ...good.body.proofs[0], result: 'failed', at: at(5 * 24 * 60) }],
      }),
    );
    expect(world.went).toHaveLength(6);
    expect(world.went.at(-1)?.text).toContain('OUT OF SERVICE');
  });
});

describe('what is corrected', () => {
  it('a wrong hydrant: both are told of, each with the other', async () => {
    const time = clocked();
    const world = dispatchWorld({ hydrants, now: time.now });
    const wrong = struck();
    await world.record(wrong);
    const first = /ref ([A-Z]{2} \d{4})/i.exec(world.went[0]!.text)![1];
    time.to(30);
    await world.record(correction(30, wrong, { ...wrong.body, hydrantId: other.hydrantId }));
    expect(world.went).toHaveLength(6);
    const texts = world.went
      .slice(2)
      .filter(({ to }) => to.startsWith('+'))
      .map(({ text }) => text);
    const taken = texts.find((text) => text.includes('CORRECTION'))!;
    const put = texts.find((text) => text.includes('OUT OF SERVICE:'))!;
    expect(taken).toContain(`hydrant ${own.hydrantId}, ${own.place} is NOT out of service`);
    const second = /Ref ([A-Z]{2} \d{4})/.exec(put)![1];
    expect(taken).toContain(`Out of service instead: ${other.hydrantId}, ref ${second}.`);
    expect(put).toContain(`OUT OF SERVICE: ${other.hydrantId}`);
    expect(put).toContain(`This replaces hydrant ${own.hydrantId}, ref ${first}.`);
  });

  it('a report that should not have been: they are told', async () => {
    const world = dispatchWorld({ hydrants, now: clocked(30).now });
    const wrong = struck();
    await world.record(wrong, correction(30, wrong, null));
    expect(world.went.at(-1)?.text).toContain('is NOT out of service. It was reported by mistake.');
    expect(world.went.at(-1)?.text).not.toContain('instead');
  });

  it('a place without a number is said to be of the hydrant that stands there', async () => {
    const world = dispatchWorld({ hydrants, now: clocked(30).now });
    const { latitudeDeg, longitudeDeg } = own;
    await world.record(struck(9, { hydrantId: null, position: { latitudeDeg, longitudeDeg, accuracyM: 5 } }));
    for (const { text } of world.went) expect(text).toContain(`It may be ${own.hydrantId}.`);
  });

  it('a place without a number, and then its number', async () => {
    const world = dispatchWorld({ hydrants, now: clocked(30).now });
    const place = struck(9, { hydrantId: null });
    await world.record(place);
    expect(world.went.at(-1)?.text).toContain('OUT OF SERVICE: number not known yet, 41.25000, -70.50000');
    await world.record(correction(30, place, { ...place.body, hydrantId: own.hydrantId }));
    const [named] = await world.stores.notices.of(hydrantSubject(own.hydrantId));
    const told = await world.stores.notices.of(placeSubject(uuid(9)));
    expect(told.map(({ value }) => value.what)).toEqual(['out', 'corrected']);
    expect(named!.value.facts.instead).toEqual({ hydrantId: null, reference: told[0]!.value.reference });
    expect(told[1]!.value.facts.instead).toEqual({
      hydrantId: own.hydrantId,
      reference: named!.value.reference,
    });
  });

  it('two reports of one strike, joined: the return of the joined one is a return, not a mistake', async () => {
    const time = clocked();
    const world = dispatchWorld({ hydrants, now: time.now });
    await world.record(struck(9), struck(5), fact('link', 12, onStrike(9), { sameAsStrikeId: uuid(5) }));
    expect(world.went).toHaveLength(2);
    time.to(200);
    await world.record(returned(21, 190));
    expect(world.went).toHaveLength(4);
    expect(world.went.at(-1)?.text).toContain('BACK IN SERVICE');
  });
});

describe('what is typed in late', () => {
  it('is recorded as not sent, and so is its return; another of now goes out', async () => {
    const time = clocked(13 * 60);
    const world = dispatchWorld({ hydrants, now: time.now });
    await world.record(struck());
    await world.record(returned(20, 40));
    const told = async () =>
      (await world.stores.notices.of(hydrantSubject(own.hydrantId))).map(({ value: { what, held } }) => [
        what,
        held,
      ]);
    expect(await told()).toEqual([
      ['out', 'too-old'],
      ['back', 'too-old'],
    ]);
    expect(world.went).toEqual([]);
    await world.record(
      fact('outage', 30, onHydrant(own.hydrantId), { since: at(13 * 60 - 5), dispatch: null }),
    );
    expect(world.went).toHaveLength(2);
  });

  it('and taken back: that it corrects nothing they had is recorded', async () => {
    const world = dispatchWorld({ hydrants, now: clocked(13 * 60).now });
    const late = struck();
    await world.record(late, correction(30, late, null));
    const told = await world.stores.notices.of(hydrantSubject(own.hydrantId));
    expect(told.map(({ value: { what, held } }) => [what, held])).toEqual([
      ['out', 'too-old'],
      ['corrected', 'nothing-sent'],
    ]);
    expect(world.went).toEqual([]);
  });

  it('is not held against a strike of now on a hydrant that was out already', async () => {
    const time = clocked(13 * 60);
    const world = dispatchWorld({ hydrants, now: time.now });
    await world.record(fact('outage', 10, onHydrant(own.hydrantId), { dispatch: null }));
    expect(world.went).toEqual([]);
    await world.record({
      ...struck(9, { struckAt: at(13 * 60 - 10), arrivedAt: null, reportedBy: unsaid }),
      occurredAt: at(13 * 60 - 8),
    });
    expect(world.went).toHaveLength(2);
  });
});

it('a trial is told to nobody, and leaves no trace', async () => {
  const world = dispatchWorld({ hydrants, now: clocked().now });
  await world.record({ ...struck(), test: true });
  expect(world.went).toEqual([]);
  expect(await world.stores.notices.subjectsOf(uuid(9))).toEqual([]);
});

it('with messages turned off, or nobody to tell, nothing is made', async () => {
  for (const settings of [
    { dispatchMessages: undefined },
    { dispatchMessages: { ...dispatchWorld({ now: clocked().now }).settings.dispatchMessages!, on: false } },
  ]) {
    const world = dispatchWorld({ hydrants, now: clocked().now, settings });
    await world.record(struck());
    expect(world.went).toEqual([]);
    expect(await world.stores.notices.of(hydrantSubject(own.hydrantId))).toEqual([]);
  }
});

describe('services that fail', () => {
  it('a message that was not taken goes later, the one that was does not go again', async () => {
    const time = clocked();
    const office = postOffice((attempt) => (attempt === 0 ? new NotSent('ThrottlingException') : null));
    const world = dispatchWorld({ hydrants, now: time.now, office });
    await world.record(struck());
    expect(world.went).toHaveLength(1);
    await world.wake();
    expect(world.went).toHaveLength(1);
    time.pass(dispatchPatience.firstWaitMs);
    await world.wake();
    await world.wake();
    expect(world.went.map(({ to }) => to).sort()).toEqual([...addresses].sort());
  });

  it(`is given up after ${dispatchPatience.mostTries} tries within about an hour, and logged without an address`, async () => {
    const time = clocked();
    let tries = 0;
    const office = postOffice(() => {
      tries += 1;
      return new Error(`550 no such user ${addresses.join(' ')}`);
    });
    const world = dispatchWorld({ hydrants, now: time.now, office });
    await world.record(struck());
    // The clock of the schedule: each minute, for two hours.
    for (let minutes = 0; minutes < 120; minutes += 1) {
      time.pass(minute);
      await world.wake();
    }
    expect(tries).toBe(2 * dispatchPatience.mostTries);
    const [notice] = await world.stores.notices.of(hydrantSubject(own.hydrantId));
    const deliveries = (await world.stores.notices.deliveriesOf(notice!.value)).map(({ value }) => value);
    expect(deliveries.map(({ state, why }) => [state, why])).toEqual([
      ['dead', 'sender-threw'],
      ['dead', 'sender-threw'],
    ]);
    const log = JSON.stringify(world.logged);
    for (const address of addresses) expect(log).not.toContain(address);
    expect(log).not.toContain('550');
    expect(world.logged.filter(({ level }) => level === 'error')).toHaveLength(2);
  });

  it('a timeout after the service took it: it goes again, under the same reference', async () => {
    const time = clocked();
    const office = postOffice();
    const email = {
      send: async (mail: Parameters<typeof office.email.send>[0], key: string) => {
        await office.email.send(mail, key);
        if (office.went.filter(({ to }) => to === mail.to).length === 1) throw new NotSent('TimeoutError');
        return null;
      },
    };
    const world = dispatchWorld({ hydrants, now: time.now, office: { ...office, email } });
    await world.record(struck());
    time.pass(dispatchPatience.firstWaitMs);
    await world.wake();
    time.pass(60 * minute);
    await world.wake();
    // At least once: twice here, the very same, and never a third time.
    const mails = world.went.filter(({ to }) => !to.startsWith('+'));
    expect(mails).toHaveLength(2);
    expect(mails[0]).toEqual(mails[1]);
  });

  it('what was not sent before it is back is not sent after', async () => {
    const time = clocked();
    const office = postOffice((attempt) => (attempt < 2 ? new NotSent('away') : null));
    const world = dispatchWorld({ hydrants, now: time.now, office });
    await world.record(struck());
    time.to(60);
    await world.record(returned(20, 50));
    await world.wake();
    expect(world.went).toHaveLength(2);
    for (const { text } of world.went) expect(text).toContain('BACK IN SERVICE');
    const [out] = await world.stores.notices.of(hydrantSubject(own.hydrantId));
    const states = (await world.stores.notices.deliveriesOf(out!.value)).map(({ value }) => value.state);
    expect(states).toEqual(['overtaken', 'overtaken']);
  });
});

describe('stores that are away', () => {
  it('while a message is made: that record is asked for again, and what waits is sent all the same', async () => {
    const world = dispatchWorld({ hydrants, now: clocked().now });
    await world.accept(struck());
    const records = world.take();
    const { current } = world.deps;
    const hydrant = current.hydrant.bind(current);
    Object.assign(current, { hydrant: () => Promise.reject(new StoreUnavailable('away')) });
    const run = await world.wake(records);
    const index = records.findIndex(({ partition, key }) => partition === 'hydrant' && key === own.hydrantId);
    expect(run.batchItemFailures).toEqual([
      { itemIdentifier: streamRecord(records[index]!, index).dynamodb.SequenceNumber },
    ]);
    Object.assign(current, { hydrant });
    await world.wake(records);
    expect(world.went).toHaveLength(2);
  });

  it('while it is sent: the whole waking fails, so that it is tried again', async () => {
    const world = dispatchWorld({ hydrants, now: clocked().now });
    const deliveriesOn = () => Promise.reject(new StoreUnavailable('away'));
    Object.assign(world.stores.notices, { deliveriesOn });
    await expect(world.wake()).rejects.toThrow(StoreUnavailable);
  });
});

describe('a process that ends in the middle', () => {
  it('after writing the message and before addressing it: the next waking addresses it', async () => {
    const time = clocked();
    const world = dispatchWorld({ hydrants, now: time.now });
    const { notices } = world.stores;
    const addDelivery = notices.addDelivery.bind(notices);
    Object.assign(notices, { addDelivery: () => Promise.reject(new Error('killed')) });
    await world.accept(struck());
    const records = world.take();
    const run = await world.wake(records);
    // The stream is asked for that record again.
    expect(run.batchItemFailures.length).toBeGreaterThan(0);
    expect(world.went).toEqual([]);
    Object.assign(notices, { addDelivery });
    await world.wake(records);
    await world.wake(records);
    expect(world.went).toHaveLength(2);
  });

  it('while it was sending: free again after two minutes', async () => {
    const time = clocked();
    const world = dispatchWorld({ hydrants, now: time.now });
    const { notices } = world.stores;
    const replaceDelivery = notices.replaceDelivery.bind(notices);
    let writes = 0;
    // The claim is written; what became of it is not.
    Object.assign(notices, {
      replaceDelivery: (...given: Parameters<typeof replaceDelivery>) =>
        ++writes % 2 === 0 ? Promise.resolve(false) : replaceDelivery(...given),
    });
    await world.record(struck());
    expect(world.went).toHaveLength(2);
    Object.assign(notices, { replaceDelivery });
    time.pass(dispatchPatience.claimMs - 1);
    await world.wake();
    expect(world.went).toHaveLength(2);
    time.pass(1);
    await world.wake();
    await world.wake();
    expect(world.went).toHaveLength(4);
  });

  it('a slow one that read the state of before says nothing of it after a quicker one has', async () => {
    const world = dispatchWorld({ hydrants, now: clocked().now });
    const item: KeptItem = { partition: 'hydrant', key: own.hydrantId };
    const { current } = world.deps;
    const read = current.hydrant.bind(current);
    let first = true;
    Object.assign(current, {
      hydrant: async (hydrantId: string) => {
        const seen = await read(hydrantId);
        if (first) {
          first = false;
          // Meanwhile it is struck, and another process has told dispatch.
          await world.record(struck());
        }
        return seen;
      },
    });
    await world.wake([item]);
    const told = await world.stores.notices.of(hydrantSubject(own.hydrantId));
    expect(told.map(({ value }) => value.what)).toEqual(['out']);
  });
});

it('ten processes at once on the real API write one message and send it once to each', async () => {
  const { stores, close } = await storesOnDynalite();
  try {
    const world = dispatchWorld({ stores, hydrants, now: clocked().now });
    await world.accept(struck());
    const records = world.take();
    await Promise.all(Array.from({ length: 10 }, () => world.wake(records)));
    expect(world.went.map(({ to }) => to).sort()).toEqual([...addresses].sort());
    expect(await stores.notices.of(hydrantSubject(own.hydrantId))).toHaveLength(1);
  } finally {
    await close();
  }
}, 60_000);
