import { beforeAll, describe, expect, it } from 'vitest';
import { solveNetwork } from '../../functions/network/solve.ts';
import { availableFlowGpm } from '../../shared/hydraulics/availableFlow.ts';
import { evaluateFlowTest } from '../../shared/hydraulics/evaluateFlowTest.ts';
import type { AvailableFlowAnswer } from '../../shared/network/answer.ts';
import { networkQuestion } from '../../shared/network/question.ts';
import { loadEpanet, type Project } from '../support/epanet.ts';
import { townInp } from '../support/networks.ts';
import { seeded } from '../support/seeded.ts';

/**
 * The 20 psi relation against an engine that nobody here wrote: EPANET (US EPA, by the package epanet-js). For one source
 * they meet; in a pumped, looped network a small drop leads the relation far astray, which is why it is warned of.
 */

const PSI_PER_FT = 0.4333;

interface Case {
  readonly reservoirFt: number;
  readonly hydrantFt: number;
  readonly lengthFt: number;
  readonly diameterIn: number;
  readonly roughness: number;
  /** Flow of the test as a share of the flow at 20 psi. */
  readonly share: number;
}

/** Two hundred single-source tests over mains of 6 to 12 in, drops from a hundredth of static to nearly all of it. */
function twoHundred(): Case[] {
  const random = seeded(20);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  return Array.from({ length: 200 }, () => ({
    reservoirFt: 180 + 160 * random(),
    hydrantFt: 10 + 50 * random(),
    lengthFt: 500 + 4500 * random(),
    diameterIn: pick([6, 8, 10, 12]),
    roughness: pick([80, 100, 120, 130, 140]),
    share: 0.15 + 0.95 * random(),
  }));
}

describe('200 hydrants on one source', () => {
  let project: () => Project;
  beforeAll(async () => {
    project = await loadEpanet();
  });

  function solved(
    one: Case,
    end: { readonly demandGpm: number } | { readonly psi: number },
  ): { psi: number; gpm: number } {
    const network = project();
    network.setOption(1, 1e-7);
    network.setNodeValue(network.addNode('R', 1), 0, one.reservoirFt);
    const held = 'psi' in end;
    const hydrant = network.addNode('H', held ? 1 : 0);
    if (held) network.setNodeValue(hydrant, 0, one.hydrantFt + end.psi / PSI_PER_FT);
    else network.setJunctionData(hydrant, one.hydrantFt, end.demandGpm, '');
    const main = network.addLink('P', 1, 'R', 'H');
    network.setPipeData(main, one.lengthFt, one.diameterIn, one.roughness, 0);
    network.openH();
    network.initH(0);
    network.runH();
    const found = { psi: network.getNodeValue(hydrant, 11), gpm: network.getLinkValue(main, 8) };
    network.closeH();
    network.close();
    return found;
  }

  it('the relation meets EPANET within 0.1 %, and the engine of tests where it rates', () => {
    let rated = 0;
    let worst = 0;
    for (const one of twoHundred()) {
      const at20 = solved(one, { psi: 20 }).gpm;
      const flowGpm = at20 * one.share;
      const staticPsi = solved(one, { demandGpm: 0 }).psi;
      const residualPsi = solved(one, { demandGpm: flowGpm }).psi;
      const relation = availableFlowGpm({ staticPsi, residualPsi, flowGpm, targetResidualPsi: 20 });
      worst = Math.max(worst, Math.abs(relation / at20 - 1));
      const { availableFlowGpm: engine } = evaluateFlowTest({
        staticPsi,
        residualPsi,
        outlets: [{ kind: 'meter', flowGpm: Math.min(flowGpm, 20_000) }],
      });
      if (engine === null) continue;
      rated++;
      expect(Math.abs(engine / at20 - 1)).toBeLessThan(1e-3);
    }
    // Measured: 0.015 % at worst, 163 rated; the exponents explain it, 0.54 against 1/1.852 over a ratio of drops of up to 30.
    expect(worst).toBeLessThan(1e-3);
    expect(rated).toBeGreaterThan(100);
  });
});

describe('a pumped, looped network', () => {
  /** Error of the relation from a test at a share of the true flow, and the drop of that test as a share of static. */
  async function errorAt(inp: string, nodeId: string, shares: readonly number[]) {
    const ask = async (testFlowGpm?: number): Promise<AvailableFlowAnswer> => {
      const reply = await solveNetwork(
        inp,
        networkQuestion.parse({ ask: 'available-flow', at: { nodeId }, testFlowGpm }),
      );
      if (!reply.ok || reply.answer.ask !== 'available-flow') throw new Error(JSON.stringify(reply));
      return reply.answer;
    };
    const { flowGpm, staticPsi } = await ask();
    return Promise.all(
      shares.map(async (share) => {
        const testGpm = flowGpm * share;
        const residualPsi = (await ask(testGpm)).atTestFlowPsi!;
        const relation = availableFlowGpm({
          staticPsi,
          residualPsi,
          flowGpm: testGpm,
          targetResidualPsi: 20,
        });
        return { drop: (staticPsi - residualPsi) / staticPsi, error: relation / flowGpm - 1 };
      }),
    );
  }

  it('with a tank: a drop of 2 to 4 % is off by more than a tenth or a third, half of static by 1 %', async () => {
    const inp = townInp({ rows: 8, columns: 8, seed: 2, demandGpm: 25 });
    const [small, large] = await errorAt(inp, 'J5-0', [0.1, 0.85]);
    expect(small!.drop).toBeLessThan(0.1);
    // Measured: −37 % from a drop of 2.3 %; −0.2 % from one of 52 %.
    expect(small!.error).toBeLessThan(-0.3);
    expect(large!.drop).toBeGreaterThan(0.4);
    expect(Math.abs(large!.error)).toBeLessThan(0.01);
  });

  it('with a pump alone: half too low from 4.5 %, and still a quarter too low from 19 %', async () => {
    const inp = townInp({ rows: 6, columns: 6, seed: 1, tank: false });
    const [small, enough, large] = await errorAt(inp, 'J3-3', [0.1, 0.35, 0.85]);
    expect(small!.drop).toBeLessThan(0.1);
    expect(small!.error).toBeLessThan(-0.5);
    // A drop that is enough by the rule, and the relation is on the low side all the same: a pump's pressure falls with
    // its flow, and the customers were drawing before the test began.
    expect(enough!.drop).toBeGreaterThan(0.1);
    expect(enough!.error).toBeLessThan(-0.2);
    expect(Math.abs(large!.error)).toBeLessThan(0.05);
  });
});
