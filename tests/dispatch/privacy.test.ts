import { describe, expect, it } from 'vitest';
import { correctionKind } from '../../shared/submissions/kinds.ts';
import { hydrantSubject } from '../../shared/dispatch/notice.ts';
import { bodyWithCanary } from '../support/canaries.ts';
import { dispatchWorld, recipients } from '../support/dispatchWorld.ts';
import { at, correction, fact, onClaim, onHydrant, onStrike, uuid } from '../support/submissions.ts';
import { townHydrants } from '../support/town.ts';

const canary = 'CANARY-Q7';
const hydrants = townHydrants(40);
const [own, other] = [hydrants[12]!, hydrants[13]!];

/** Every free text of every form that a strike's night brings: names, notes, plates, ids of people, of valves, of claims. */
describe('a message to dispatch', () => {
  it('holds nothing that somebody typed freely, and nothing of a driver, a claim or a name', async () => {
    const world = dispatchWorld({ hydrants, now: () => new Date(at(60)) });
    const strike = fact('strike', 9, onStrike(9), {
      ...bodyWithCanary('strike', canary),
      hydrantId: own.hydrantId,
    });
    await world.record(
      fact('party', 10, onStrike(9), bodyWithCanary('party', canary)),
      fact('claim-opened', 11, onClaim(1), { ...bodyWithCanary('claim-opened', canary), strikeId: uuid(9) }),
      strike,
      fact('out-of-service-notice', 12, onStrike(9), bodyWithCanary('out-of-service-notice', canary)),
      fact('outage', 13, onHydrant(other.hydrantId), bodyWithCanary('outage', canary)),
      fact('expected-return', 14, onStrike(9), bodyWithCanary('expected-return', canary)),
      correction(15, strike, { ...strike.body, hydrantId: hydrants[30]!.hydrantId }),
    );
    expect(world.went.length).toBeGreaterThanOrEqual(8);
    expect(strike.kind).not.toBe(correctionKind);
    expect(JSON.stringify(world.went)).not.toContain(canary);
    expect(JSON.stringify(world.logged)).not.toContain(canary);
    // Nor does what is kept; and no address is kept either.
    const told = await world.stores.notices.of(hydrantSubject(own.hydrantId));
    const days = await world.stores.notices.deliveriesOn(told[0]!.value.day);
    const kept = JSON.stringify([told, days]);
    expect(kept).not.toContain(canary);
    for (const one of recipients) expect(kept).not.toContain(one.by === 'email' ? one.email : one.phone);
  });

  it('says the crew’s words for a place only where nothing else says where it is', async () => {
    const words = 'Behind the bakery on Alder';
    const told = async (body: object): Promise<string> => {
      const world = dispatchWorld({ hydrants, now: () => new Date(at(60)) });
      await world.record(fact('strike', 9, onStrike(9), { ...body, placeDescription: words }));
      return JSON.stringify(world.went);
    };
    expect(await told({ hydrantId: own.hydrantId })).not.toContain(words);
    expect(await told({ hydrantId: null })).not.toContain(words);
    expect(await told({ hydrantId: null, position: null })).toContain(words);
  });
});
