import { describe, expect, it } from 'vitest';
import { solveNetwork, type SolveOptions } from '../../functions/network/solve.ts';
import { hazenWilliamsLossFt } from '../../shared/hydraulics/hazenWilliams.ts';
import type { NetworkAnswer } from '../../shared/network/answer.ts';
import { networkQuestion } from '../../shared/network/question.ts';
import { sayNetwork } from '../../shared/network/say.ts';
import { sayQuantityProblem } from '../../shared/water/say.ts';
import { smallInp, smallMetricInp, townInp } from '../support/networks.ts';

const town = townInp({ rows: 5, columns: 5, seed: 7 });

async function ask(inp: string, question: unknown, options?: SolveOptions): Promise<any> {
  const reply = await solveNetwork(inp, networkQuestion.parse(question), options);
  if (!reply.ok) throw new Error(JSON.stringify(reply.problems));
  return reply.answer;
}
async function refused(inp: string, question: unknown, options?: SolveOptions): Promise<string[]> {
  const reply = await solveNetwork(inp, networkQuestion.parse(question), options);
  if (reply.ok) throw new Error('it was answered');
  for (const found of reply.problems)
    for (const locale of ['en', 'es'] as const)
      expect(sayQuantityProblem(found, { system: 'us', locale })).toMatch(/^[A-ZL].*\.$/s);
  return reply.problems.map(({ path, code }) => `${path} ${code}`);
}
const at = (nodeId: string): object => ({ ask: 'available-flow', at: { nodeId } });

describe('available flow by the model', () => {
  it('is what the pipes lose, by hand', async () => {
    const { flowGpm, staticPsi } = await ask(smallInp, at('H'));
    // Static: 230 − 50 ft less the loss of 60 gpm (half of 120, by the demand multiplier), EPANET's 0.4333 psi a foot.
    const loss = (gpm: number): number =>
      hazenWilliamsLossFt({ flowGpm: gpm, diameterIn: 10, roughness: 120, lengthFt: 1500 }) +
      hazenWilliamsLossFt({ flowGpm: gpm, diameterIn: 8, roughness: 120, lengthFt: 1500 });
    expect(staticPsi).toBeCloseTo((180 - loss(60)) * 0.4333, 2);
    // At 20 psi the main loses all but 46.2 ft; the published forms of Hazen-Williams differ by up to 3.5 %.
    expect(Math.abs(loss(Number(flowGpm) + 60) / (180 - 20 / 0.4333) - 1)).toBeLessThan(0.035);
  });

  it('taken as a demand leaves that residual again, whatever the demand multiplier', async () => {
    const { flowGpm } = await ask(smallInp, at('H'));
    const { atTestFlowPsi } = await ask(smallInp, { ...at('H'), testFlowGpm: flowGpm });
    expect(atTestFlowPsi).toBeCloseTo(20, 2);
    const looped = await ask(town, at('J2-2'));
    const again = await ask(town, { ...at('J2-2'), testFlowGpm: looped.flowGpm });
    expect(again.atTestFlowPsi).toBeCloseTo(20, 1);
  });

  it('is the same from a metric file', async () => {
    const [us, metric] = await Promise.all([smallInp, smallMetricInp].map((inp) => ask(inp, at('H'))));
    expect(metric.flowGpm / us.flowGpm).toBeCloseTo(1, 4);
    expect(metric.staticPsi).toBeCloseTo(us.staticPsi, 3);
  });

  it('is nothing where the static is not above the residual', async () => {
    const answer = await ask(smallInp, { ...at('H'), residualPsi: 90 });
    expect(answer).toMatchObject({ flowGpm: 0, residualPsi: 90 });
    expect(sayNetwork(answer, { system: 'us', locale: 'en' })[0]).toContain('nothing flows at that residual');
  });

  it('watches other hydrants, and the lowest customer', async () => {
    const answer = await ask(town, {
      ...at('J4-0'),
      watch: [{ nodeId: 'J3-0' }, { nodeId: 'J0-4', hydrantId: 'H-9' }],
    });
    const [near, far] = answer.watched;
    expect(near.beforePsi - near.afterPsi).toBeGreaterThan(far.beforePsi - far.afterPsi);
    expect(far).toMatchObject({ hydrantId: 'H-9', nodeId: 'J0-4' });
    expect(answer.lowest.psi).toBeLessThanOrEqual(20.01);
  });

  it('looks at the hour that was asked for', async () => {
    const [first, later] = await Promise.all([0, 6].map((hour) => ask(town, { ...at('J2-2'), hour })));
    expect(first.hour).toBe(0);
    expect(later.hour).toBe(6);
    // By then the tank stands higher or lower than at first.
    expect(later.staticPsi).not.toBeCloseTo(first.staticPsi, 3);
    // A run that ends before the hour says where it ended.
    expect((await ask(smallInp, { ...at('H'), hour: 12 })).hour).toBe(0);
  });
});

describe('closing', () => {
  it('the only main cuts off what hangs on it, and says so', async () => {
    const answer: NetworkAnswer = await ask(smallInp, {
      ask: 'closing',
      links: ['P2'],
      watch: [{ nodeId: 'M' }, { nodeId: 'H' }, { nodeId: 'D' }],
    });
    expect(answer).toMatchObject({
      closed: ['P2'],
      cutOffNodes: 2,
      watched: [{ nodeId: 'M' }, { nodeId: 'H', afterPsi: null }, { nodeId: 'D', afterPsi: null }],
    });
    // That the rest of the model is cut off and without pressure is what was asked, and no doubt of the solver's.
    expect(sayNetwork(answer, { system: 'us', locale: 'en' }).at(-1)).toMatch(/2 customer nodes are cut off/);
    expect(answer.warnings).toEqual([]);
  });

  it('one street of a grid costs pressure and cuts nobody off', async () => {
    const answer = await ask(town, {
      ask: 'closing',
      links: ['P:J0-0:J0-1', 'P:J1-0:J1-1'],
      watch: [{ nodeId: 'J0-1' }, { nodeId: 'J1-0' }],
    });
    expect(answer.cutOffNodes).toBe(0);
    expect(answer.watched[0].afterPsi).toBeLessThan(answer.watched[0].beforePsi);
  });

  it('a link that the model’s controls open again is refused by name', async () => {
    const controlled = townInp({
      rows: 3,
      columns: 3,
      seed: 7,
      controls: 'LINK PU OPEN IF NODE T BELOW 100',
    });
    expect(await refused(controlled, { ask: 'closing', links: ['PU'], watch: [{ nodeId: 'J0-0' }] })).toEqual(
      ['links.0 link-opens-again'],
    );
  });
});

describe('bound of the water lost', () => {
  it('is the flow into the open air, less through a lateral', async () => {
    const bound = { ask: 'water-bound', at: { nodeId: 'H' } };
    const [open, at20, throughLateral] = await Promise.all([
      ask(smallInp, bound),
      ask(smallInp, at('H')),
      ask(smallInp, { ...bound, lateral: { diameterIn: 6, lengthFt: 20, roughness: 120, minorLossK: 6 } }),
    ]);
    expect(open.flowGpm).toBeGreaterThan(at20.flowGpm);
    expect(throughLateral.flowGpm).toBeLessThan(open.flowGpm);
  });
});

describe('what is not in the model: every problem at once', () => {
  it.each<[string, unknown, string[]]>([
    [
      'nodes and links',
      { ask: 'closing', links: ['P1', 'X', 'Y'], watch: [{ nodeId: 'H' }] },
      ['links.1 no-such-link', 'links.2 no-such-link'],
    ],
    [
      'watched places',
      { ...at('H'), watch: [{ nodeId: 'X' }, { nodeId: 'R' }, { hydrantId: 'H-1' }] },
      [
        'watch.0.nodeId no-such-node',
        'watch.1.nodeId node-is-a-source',
        'watch.2.hydrantId hydrant-not-in-model',
      ],
    ],
  ])('%s', async (_, question, expected) => expect(await refused(smallInp, question)).toEqual(expected));
});

describe('broken and slow files', () => {
  it.each<[string, string, string]>([
    ['nothing', '', 'inp network-empty'],
    ['another kind of file', '%PDF-1.7\n%âãÏÓ\n1 0 obj\n', 'inp network-empty'],
    ['a pipe to nowhere', smallInp.replace('P3 H D', 'P3 H NOWHERE'), 'inp network-broken'],
    ['a number that is none', smallInp.replace('1500 8', '15oo 8'), 'inp network-broken'],
    [
      'no source',
      smallInp.replace('R 230', '').replace('P1 R M 1500 10 120 0 Open', ''),
      'inp network-no-source',
    ],
    ['a file cut in the middle', smallInp.slice(0, 90), 'inp network-broken'],
    ['a negative diameter', smallInp.replace('1500 8', '1500 -8'), 'inp network-broken'],
  ])('%s: %s', async (_, inp, expected) => expect(await refused(inp, at('H'))).toEqual([expected]));

  it('says which line is wrong', async () => {
    const reply = await solveNetwork(
      smallInp.replace('P3 H D', 'P3 H NOWHERE'),
      networkQuestion.parse(at('H')),
    );
    expect(reply).toMatchObject({
      ok: false,
      problems: [{ params: { detail: expect.stringContaining('P3 H NOWHERE') } }],
    });
  });

  it('a run of a billion steps is stopped at the limit, and the next question is answered', async () => {
    const slow = town
      .replace('DURATION 24:00', 'DURATION 8000:00')
      .replace('HYDRAULIC TIMESTEP 1:00', 'HYDRAULIC TIMESTEP 0:00:01');
    const began = performance.now();
    expect(await refused(slow, { ...at('J2-2'), hour: 7999 }, { limitMs: 700 })).toEqual([
      'inp network-too-slow',
    ]);
    expect(performance.now() - began).toBeLessThan(5000);
    expect((await ask(smallInp, at('H'))).flowGpm).toBeGreaterThan(0);
  });

  it('a loop that never ends inside the thread is killed too', async () => {
    const program = new URL('data:text/javascript,for(;;);');
    expect(await refused(smallInp, at('H'), { program, limitMs: 300 })).toEqual(['inp network-too-slow']);
  });

  it('too large a file is not even read', async () =>
    expect(await refused(' '.repeat(20_000_001), at('H'))).toEqual(['inp network-too-large']));

  it('a thread that ends by itself is a fault of ours, not an answer', async () => {
    const program = new URL('data:text/javascript,0');
    await expect(solveNetwork(smallInp, networkQuestion.parse(at('H')), { program })).rejects.toThrow(
      /ended with/,
    );
  });

  it('a killed thread is gone: nothing spins on', async () => {
    const program = new URL('data:text/javascript,for(;;);');
    await refused(smallInp, at('H'), { program, limitMs: 200 });
    const before = process.cpuUsage();
    await new Promise((resolve) => setTimeout(resolve, 400));
    const { user, system } = process.cpuUsage(before);
    // Microseconds of this process with all its threads; a loop would have used most of the 400 ms.
    expect(user + system).toBeLessThan(200_000);
  });
});
