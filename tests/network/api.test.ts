import { beforeAll, describe, expect, it } from 'vitest';
import { createNetworkApp } from '../../functions/network/app.ts';
import { readOutline, solveNetwork } from '../../functions/network/solve.ts';
import { inTurns } from '../../functions/network/turns.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { memoryObjects } from '../../functions/stores/objects/memory.ts';
import { objectModels } from '../../functions/stores/network/objectModels.ts';
import type { NetworkClosing, NetworkForHydrant } from '../../shared/network/forHydrant.ts';
import { testWorld, type World } from '../http/support/world.ts';
import { fact, onStrike, uuid } from '../support/submissions.ts';
import { bareFlowGpm, barePressures } from './bare.ts';
import { streetHydrants, streetInp, streetInventory, streetMeta } from './streetTown.ts';

let world: World;
const load = async (inp: string, to = world.deps.models): Promise<void> => {
  const reply = await readOutline(inp, 0);
  if (!reply.ok) throw new Error(JSON.stringify(reply.problems));
  await to.publish(Buffer.from(inp), reply.answer, streetMeta);
};
beforeAll(async () => {
  world = await testWorld();
  await world.inventory.publish(streetHydrants, streetInventory(uuid(40)));
});
const ofHydrant = async (id: string, query = ''): Promise<NetworkForHydrant> => {
  const { status, body } = await world.ask(`/api/network/${id}${query}`, 'crew');
  expect(status, JSON.stringify(body)).toBe(200);
  return body as unknown as NetworkForHydrant;
};
const codes = (body: { problems?: readonly { path: string; code: string }[] }): string[] =>
  (body.problems ?? []).map(({ path, code }) => `${path} ${code}`.trim());

describe('before a model is loaded', () => {
  it.each([
    ['en', 'No network model is loaded.'],
    ['es', 'No hay ningún modelo de la red cargado.'],
  ])('says so, never nothing (%s)', async (language, sentence) => {
    const { status, body } = await world.ask('/api/network/H-A', 'crew', {
      headers: { 'accept-language': language },
    });
    expect([status, codes(body)]).toEqual([404, ['no-network-model']]);
    expect(body.problems[0]!.message).toContain(sentence);
    const closing = await world.ask('/api/network/H-A/closing', 'crew', { body: { links: ['AB'] } });
    expect(codes(closing.body)).toEqual(['no-network-model']);
  });
});

describe('with a model', () => {
  beforeAll(() => load(streetInp));

  it('finds the node by the map and says how far it is', async () => {
    const { available, model } = await ofHydrant('H-C');
    // 0.0001° of a meridian: a nautical mile (6,076.1 ft) is a minute of arc.
    expect(available.at.nodeId).toBe('C');
    expect(available.at.distanceFt! / ((6076.1 * 60) / 10_000)).toBeCloseTo(1, 1);
    expect(model).toMatchObject({ datedOn: '2026-01-15', demandGpm: 185, nodes: 7, links: 8, edition: 1 });
  });

  // Outside: epanet-js alone on the same file.
  it('gives the bare library’s pressures, and a flow that leaves 20 psi in it', async () => {
    const { available, nearby, bound } = await ofHydrant('H-C');
    const bare = await barePressures(streetInp, ['C', 'A', 'B', 'F']);
    expect(available.staticPsi).toBeCloseTo(bare['C']!, 2);
    for (const node of available.watched) expect(node.beforePsi).toBeCloseTo(bare[node.nodeId]!, 2);
    const flowing = await barePressures(streetInp, ['C', 'A', 'B', 'F'], {
      take: { nodeId: 'C', gpm: available.flowGpm },
    });
    expect(flowing['C']).toBeCloseTo(20, 1);
    for (const node of available.watched) expect(node.afterPsi).toBeCloseTo(flowing[node.nodeId]!, 1);
    // Into the air through its lateral, 15 ft of 6 in as smooth as pipe is (C 150), with one velocity head at the end:
    // written into the file itself as a pipe to a reservoir at C's own height.
    const withLateral = streetInp
      .replace('R 215', 'R 215\nAIR 48')
      .replace('EF E F', 'LAT C AIR 15 6 150 1 Open\nEF E F');
    expect(bound.flowGpm / (await bareFlowGpm(withLateral, 'LAT'))).toBeCloseTo(1, 4);
    expect(nearby.find(({ hydrantId }) => hydrantId === 'H-FAR')).toMatchObject({
      nodeId: null,
      problem: { code: 'no-node-near' },
    });
  });

  it('gives the bare library’s pressures with pipes closed', async () => {
    const { status, body } = await world.ask('/api/network/H-C/closing', 'crew', {
      body: { links: ['BC', 'CD'] },
    });
    expect(status).toBe(200);
    const { closing } = body as unknown as NetworkClosing;
    const bare = await barePressures(streetInp, ['C', 'A', 'B', 'F'], { closed: ['BC', 'CD'] });
    expect(closing.watched.map(({ hydrantId }) => hydrantId)).toEqual(['H-C', 'H-B', 'H-F', 'H-A']);
    for (const node of closing.watched) expect(node.afterPsi).toBeCloseTo(bare[node.nodeId]!, 2);
    expect(closing.cutOffNodes).toBe(0);
  });

  it('says who is cut off when the only way is closed', async () => {
    const { body } = await world.ask('/api/network/H-F/closing', 'clerk', { body: { links: ['EF'] } });
    const { closing } = body as unknown as NetworkClosing;
    expect(closing.watched[0]).toMatchObject({ hydrantId: 'H-F', afterPsi: null });
    expect(closing.cutOffNodes).toBe(1);
  });

  it('offers the pipes nearest along the network first', async () => {
    const { links } = await ofHydrant('H-F');
    expect(links.map(({ linkId }) => linkId)).toEqual(['EF', 'CE', 'BE', 'BC', 'CD', 'AB', 'DA', 'PR']);
    expect(links[1]).toMatchObject({ alongFt: 300, lengthFt: 400, diameterIn: 6, kind: 'pipe', open: true });
  });

  it.each([
    ['a hydrant that is not there', 'GET', '/api/network/H-X', undefined, 404, ['no-such-hydrant']],
    [
      'a hydrant far from every pipe',
      'GET',
      '/api/network/H-FAR',
      undefined,
      404,
      ['hydrantId no-node-near'],
    ],
    ['no such strike', 'GET', `/api/network/H-A?strike=${uuid(99)}`, undefined, 404, ['no-such-strike']],
    ['no links', 'POST', '/api/network/H-A/closing', { links: [] }, 422, ['links too-few']],
    [
      'a link that is not there',
      'POST',
      '/api/network/H-A/closing',
      { links: ['AB', 'X'] },
      422,
      ['links.1 no-such-link'],
    ],
    [
      'another field',
      'POST',
      '/api/network/H-A/closing',
      { links: ['AB'], open: 1 },
      422,
      ['open unknown-field'],
    ],
  ] as const)('%s is said', async (_, method, path, body, status, expected) => {
    const answer = await world.ask(path, 'crew', { method, ...(body ? { body } : {}) });
    expect([answer.status, codes(answer.body)]).toEqual([status, expected]);
  });

  it.each(['crew', 'clerk', 'manager'] as const)('is for a %s', async (role) =>
    expect((await world.ask('/api/network/H-A', role)).status).toBe(200),
  );
  it('is for nobody who is not signed in', async () =>
    expect((await world.ask('/api/network/H-A', null)).status).toBe(401));
});

describe('bound of the water lost', () => {
  it('is the longest time times the most that runs out', async () => {
    const body = {
      hydrantId: 'H-C',
      struckAt: '2026-03-04T02:00:00Z',
      struckAtBasis: 'witnessed' as const,
      arrivedAt: '2026-03-04T02:30:00Z',
      waterShutAt: '2026-03-04T02:45:00Z',
    };
    const sent = await world.submit('crew', fact('strike', 90, onStrike(90), body));
    expect(sent.status, JSON.stringify(sent.body)).toBe(201);
    const { lost, bound } = await ofHydrant('H-C', `?strike=${uuid(90)}`);
    expect(lost).toMatchObject({ minutes: 45, held: false, problems: [] });
    expect(lost!.boundGal! / bound.flowGpm).toBeCloseTo(45, 6);
    const other = await world.ask(`/api/network/H-B?strike=${uuid(90)}`, 'crew');
    expect([other.status, codes(other.body)]).toEqual([422, ['strike strike-of-another-hydrant']]);
  });
});

describe('slow, broken and busy', () => {
  const appWith = (over: Partial<Parameters<typeof createNetworkApp>[0]>) =>
    createNetworkApp({ ...world.deps, ...over });
  const get = async (app: ReturnType<typeof appWith>) =>
    app.request('/api/network/H-A', {
      headers: { authorization: `Bearer ${await world.issuer.tokenFor('crew')}` },
    });

  it('a model that never ends is stopped at the limit, and others are answered meanwhile', async () => {
    const program = new URL('data:text/javascript,for(;;);');
    const app = appWith({ solve: (inp, question) => solveNetwork(inp, question, { program, limitMs: 600 }) });
    let done = false;
    const slow = get(app).finally(() => (done = true));
    const other = await world.ask('/api/utility', null);
    expect([other.status, done]).toEqual([200, false]);
    const answer = await slow;
    expect(answer.status).toBe(422);
    expect(codes((await answer.json()) as never)).toEqual(['model network-too-slow']);
  });

  it('a stored file that was changed is a fault of ours, not "no model"', async () => {
    const objects = memoryObjects();
    const models = objectModels(objects);
    await load(streetInp, models);
    const [key = ''] = await objects.list('files/');
    await objects.put(key, Buffer.from('x'), { contentType: 'x' });
    const answer = await get(appWith({ models: objectModels(objects) }));
    expect(answer.status).toBe(500);
  });

  it('a second edition is asked from then on, without a restart', async () => {
    await load(streetInp.replace('R 215', 'R 230'));
    const { model, available } = await ofHydrant('H-A');
    const bare = await barePressures(streetInp.replace('R 215', 'R 230'), ['A']);
    expect(model.edition).toBe(2);
    expect(available.staticPsi).toBeCloseTo(bare['A']!, 2);
  });

  it('two at a time, the rest in turn, and beyond the queue "come again"', async () => {
    const turn = inTurns(2, 2);
    const gates: (() => void)[] = [];
    let most = 0;
    let running = 0;
    const run = () =>
      turn(async () => {
        most = Math.max(most, (running += 1));
        await new Promise<void>((open) => gates.push(open));
        running -= 1;
      });
    const four = [run(), run(), run(), run()];
    await expect(run()).rejects.toBeInstanceOf(StoreUnavailable);
    while (gates.length > 0 || running > 0) {
      gates.shift()?.();
      await new Promise((next) => setImmediate(next));
    }
    await Promise.all(four);
    expect(most).toBe(2);
    await expect(turn(async () => 1)).resolves.toBe(1);
  });
});
