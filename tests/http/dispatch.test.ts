import { beforeEach, describe, expect, it } from 'vitest';
import { NotSent } from '../../functions/stores/mail/mailSender.ts';
import { dispatchPatience } from '../../shared/dispatch/notice.ts';
import type { NoticesAnswer } from '../../shared/dispatch/view.ts';
import { createDispatchApp } from '../../functions/dispatch/app.ts';
import { addresses, dispatchWorld, postOffice } from '../support/dispatchWorld.ts';
import { at, correction, fact, onHydrant, onStrike, uuid } from '../support/submissions.ts';
import { testWorld } from './support/world.ts';

const struck = (body = {}) => fact('strike', 9, onStrike(9), { hydrantId: 'H-12', dispatch: null, ...body });

let ms: number;
let fails: boolean;
async function world(over = {}) {
  const http = await testWorld({ now: () => new Date(ms) });
  const office = postOffice(() => (fails ? new NotSent('ThrottlingException') : null));
  const sending = dispatchWorld({ stores: http.stores, now: () => new Date(ms), office, ...over });
  http.apps.dispatch = createDispatchApp({ ...http.deps, settings: sending.settings });
  const read = async (path: string, headers = {}) =>
    (await http.ask(path, 'crew', { headers })).body as unknown as NoticesAnswer;
  return { http, sending, read, ofStrike: () => read(`/api/dispatch/strikes/${uuid(9)}`) };
}
beforeEach(() => {
  ms = Date.parse(at(10));
  fails = false;
});

describe('what was sent to dispatch', () => {
  it('is shown by label, with what the text says, until a person has told them', async () => {
    const { sending, ofStrike, read } = await world();
    await sending.record(struck());
    const [notice, ...more] = (await ofStrike()).notices;
    expect(more).toEqual([]);
    expect(notice).toMatchObject({
      what: 'out',
      hydrantId: 'H-12',
      held: null,
      latest: true,
      confirmedAt: null,
      deliveries: [
        { label: 'Dispatch floor', by: 'email', state: 'sent', changedAt: at(10) },
        { label: 'Duty officer’s telephone', by: 'text', state: 'sent', changedAt: at(10) },
      ],
    });
    expect(notice!.text).toContain('HYDRANT OUT OF SERVICE: H-12');
    const spanish = await read(`/api/dispatch/strikes/${uuid(9)}`, { 'accept-language': 'es' });
    expect(spanish.notices[0]!.text).toContain('HIDRANTE FUERA DE SERVICIO');
    for (const address of addresses) expect(JSON.stringify([notice, spanish])).not.toContain(address);

    ms = Date.parse(at(60));
    await sending.record(fact('out-of-service-notice', 52, onStrike(9)));
    expect((await ofStrike()).notices[0]!.confirmedAt).toBe('2026-03-04T02:52:00Z');
  });

  it('is shown on the strike after its hydrant was corrected: both messages, each confirmed by itself', async () => {
    const { sending, ofStrike } = await world();
    const wrong = struck({ dispatch: { at: at(5), toldByWorkerId: 'w-7', takenBy: null } });
    await sending.record(wrong);
    expect((await ofStrike()).notices[0]!.confirmedAt).toBe(at(5));
    ms = Date.parse(at(30));
    await sending.record(correction(30, wrong, { ...wrong.body, hydrantId: 'H-13' }));
    const { notices } = await ofStrike();
    expect(notices.map(({ hydrantId, what, confirmedAt }) => [hydrantId, what, confirmedAt]).sort()).toEqual([
      ['H-12', 'corrected', null],
      ['H-12', 'out', at(5)],
      ['H-13', 'out', at(5)],
    ]);
  });

  it('of another cause is shown on its hydrant', async () => {
    const { sending, read } = await world();
    await sending.record(fact('outage', 10, onHydrant('H-20'), { dispatch: null }));
    expect((await read('/api/dispatch/hydrants/h-20')).notices).toMatchObject([
      { what: 'out', hydrantId: 'H-20', latest: true },
    ]);
  });

  it('of a hydrant that was out already is what they were told then', async () => {
    const { sending, ofStrike } = await world();
    await sending.record(fact('outage', 8, onHydrant('H-12'), { dispatch: null }), struck());
    expect((await ofStrike()).notices).toMatchObject([{ what: 'out', hydrantId: 'H-12' }]);
  });

  it('where nothing is set up says so', async () => {
    const { sending, ofStrike } = await world({ settings: { dispatchMessages: undefined } });
    await sending.record(struck());
    expect(await ofStrike()).toMatchObject({ on: false, notices: [] });
  });

  it('nobody learns an address from any answer, signed in or not', async () => {
    const { http, sending } = await world();
    await sending.record(struck());
    for (const path of [
      '/api/utility',
      '/api/me',
      '/api/dispatch',
      `/api/dispatch/strikes/${uuid(9)}`,
      '/api/health',
    ]) {
      const text = JSON.stringify((await http.ask(path, 'manager')).body);
      for (const address of addresses) expect([path, text.includes(address)]).toEqual([path, false]);
    }
  });

  it('asks for a strike that there is', async () => {
    const { http } = await world();
    expect((await http.ask(`/api/dispatch/strikes/${uuid(77)}`, 'crew')).status).toBe(404);
  });
});

describe('what was not sent', () => {
  const failAll = async (sending: Awaited<ReturnType<typeof world>>['sending']): Promise<void> => {
    fails = true;
    await sending.record(struck());
    for (let minutes = 0; minutes < 90; minutes += 1) {
      ms += 60_000;
      await sending.wake();
    }
    fails = false;
  };

  it('is seen on the strike, at the desk and in the health route, and a person has it sent again', async () => {
    const { http, sending, ofStrike, read } = await world();
    await failAll(sending);
    const [notice] = (await ofStrike()).notices;
    expect(notice!.deliveries).toMatchObject([
      { state: 'dead', tries: dispatchPatience.mostTries, why: 'ThrottlingException' },
      { state: 'dead', tries: dispatchPatience.mostTries, why: 'ThrottlingException' },
    ]);
    expect((await read('/api/dispatch')).notices).toMatchObject([{ subject: notice!.subject }]);
    const health = async () => (await http.ask('/api/health', null)).body['dispatchMessages'];
    expect(await health()).toEqual({ failed: 2 });

    const { subject, number } = notice!;
    const again = () => http.ask('/api/dispatch/retry', 'crew', { body: { subject, number } });
    expect((await again()).status).toBe(202);
    await sending.wake();
    expect(sending.went.map(({ to }) => to).sort()).toEqual([...addresses].sort());
    expect((await ofStrike()).notices[0]!.deliveries.map(({ state }) => state)).toEqual(['sent', 'sent']);
    expect((await read('/api/dispatch')).notices).toEqual([]);
    expect(await health()).toEqual({ failed: 0 });
    const [kept] = await sending.stores.notices.of(subject);
    expect(kept!.value.asked).toMatchObject([
      { byPersonId: expect.any(String), at: new Date(ms).toISOString() },
    ]);

    const refused = await again();
    expect([refused.status, refused.body.problems[0]?.code]).toEqual([409, 'notice-went']);
    await sending.wake();
    expect(sending.went).toHaveLength(2);
  });

  it('leaves the list once a person has told them by telephone', async () => {
    const { sending, read } = await world();
    await failAll(sending);
    await sending.record(
      fact('out-of-service-notice', 52, onStrike(9), {
        dispatch: { at: new Date(ms).toISOString(), toldByWorkerId: 'w-7', takenBy: 'Desk two' },
      }),
    );
    expect((await read('/api/dispatch')).notices).toEqual([]);
  });

  it('for its age goes out all the same when a person says so', async () => {
    const { http, sending, ofStrike } = await world();
    ms = Date.parse(at(20 * 60));
    await sending.record(struck());
    const [notice] = (await ofStrike()).notices;
    expect(notice).toMatchObject({ held: 'too-old', deliveries: [] });
    const { subject, number } = notice!;
    expect((await http.ask('/api/dispatch/retry', 'crew', { body: { subject, number } })).status).toBe(202);
    await sending.wake();
    expect(sending.went).toHaveLength(2);
    expect((await ofStrike()).notices[0]).toMatchObject({ held: null });
  });

  it('is not sent again once a later message says otherwise, or after days', async () => {
    const { http, sending, ofStrike } = await world();
    await failAll(sending);
    const { subject, number } = (await ofStrike()).notices[0]!;
    const again = async (of = number) => {
      const { status, body } = await http.ask('/api/dispatch/retry', 'manager', {
        body: { subject, number: of },
      });
      return [status, body.problems?.[0]?.code];
    };
    ms += 4 * 24 * 60 * 60_000;
    expect(await again()).toEqual([409, 'notice-past']);
    await sending.record(correction(60, struck(), null));
    expect(await again()).toEqual([409, 'notice-overtaken']);
    expect(await again(7)).toEqual([404, 'no-such-notice']);
  });

  it.each([
    [{}, 'subject'],
    [{ subject: 'hydrant:H-12', number: 0 }, 'number'],
    [{ subject: 'hydrant:H-12', number: 1, to: '+12025550111' }, 'to'],
  ])('%j is refused by the field', async (body, path) => {
    const { http } = await world();
    const answer = await http.ask('/api/dispatch/retry', 'crew', { body });
    expect(answer.status).toBe(422);
    expect(answer.body.problems.map((one) => one.path)).toContain(path);
  });
});
