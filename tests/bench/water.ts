import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import * as epanetModule from 'epanet-js';
import { solveNetwork } from '../../functions/network/solve.ts';
import { evaluateFlowTest } from '../../shared/hydraulics/evaluateFlowTest.ts';
import type { FlowTestInput } from '../../shared/hydraulics/flowTestInput.ts';
import { networkQuestion } from '../../shared/network/question.ts';
import { townInp } from '../support/networks.ts';
import { seeded } from '../support/seeded.ts';
import type { BenchRow } from './row.ts';

const TESTS = 100_000;
const ROUNDS = 5;

interface Reading {
  readonly staticPsi: number;
  readonly residualPsi: number;
  readonly outlets: readonly {
    readonly diameterIn: number;
    readonly coefficient: number;
    readonly pitotPsi: number;
  }[];
}

function readings(): Reading[] {
  const random = seeded(291);
  return Array.from({ length: TESTS }, () => {
    const staticPsi = 45 + 60 * random();
    return {
      staticPsi,
      residualPsi: staticPsi * (0.4 + 0.5 * random()),
      outlets: Array.from({ length: random() < 0.5 ? 1 : 2 }, () => ({
        diameterIn: 2.5,
        coefficient: 0.9,
        pitotPsi: 10 + 20 * random(),
      })),
    };
  });
}

/** Seconds of the fastest round, so that what else the machine does counts least. */
function fastestS(work: () => void): number {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round++) {
    const started = performance.now();
    work();
    best = Math.min(best, (performance.now() - started) / 1000);
  }
  return best;
}

function flowTests(): BenchRow {
  const tests = readings();
  let guard = 0;
  const whole = fastestS(() => {
    for (const test of tests) guard += evaluateFlowTest(test satisfies FlowTestInput).interval?.lowGpm ?? 0;
  });
  // The same flow and capacity and nothing else: no checks, no interval, no class, no doubts.
  const plain = fastestS(() => {
    for (const { staticPsi, residualPsi, outlets } of tests) {
      let flow = 0;
      for (const { diameterIn, coefficient, pitotPsi } of outlets)
        flow += 29.84 * coefficient * diameterIn * diameterIn * Math.sqrt(pitotPsi);
      guard += flow * ((staticPsi - 20) / (staticPsi - residualPsi)) ** 0.54;
    }
  });
  if (!Number.isFinite(guard)) throw new Error('a flow test gave no number');
  return {
    name: '100,000 flow tests with interval and class',
    value: whole,
    unit: 's (limit 2)',
    beside: { name: 'plain loop of the two formulas', value: plain },
  };
}

interface Bare {
  readonly Workspace: new () => { loadModule(): Promise<void>; writeFile(name: string, text: string): void };
  readonly Project: new (workspace: unknown) => {
    open(input: string, report: string, binary: string): void;
    solveH(): void;
    close(): void;
    getCount(kind: number): number;
    getNodeId(index: number): string;
  };
}
const { Workspace, Project } = epanetModule as unknown as Bare;

/** A file of one's own by `NETWORK_INP`, or an invented town of about a thousand nodes. */
async function network(): Promise<{ readonly name: string; readonly inp: string }> {
  const file = process.env['NETWORK_INP'];
  if (file !== undefined) {
    const inp = await readFile(file, 'latin1').catch(() => null);
    if (inp !== null) return { name: basename(file), inp };
    process.stderr.write(
      `NETWORK_INP names no file that can be read (${file}); an invented town is solved instead\n`,
    );
  }
  return {
    name: 'invented town',
    inp: townInp({ rows: 31, columns: 31, seed: 4, demandGpm: 2, diameterIn: 12 }),
  };
}

async function hydrantOnNetwork(): Promise<BenchRow> {
  const { name, inp } = await network();
  const workspace = new Workspace();
  await workspace.loadModule();
  workspace.writeFile('n.inp', inp);
  const bareS: number[] = [];
  let nodes = 0;
  let nodeId = '';
  for (let round = 0; round < ROUNDS; round++) {
    const started = performance.now();
    const project = new Project(workspace);
    project.open('n.inp', 'n.rpt', 'n.out');
    project.solveH();
    bareS.push((performance.now() - started) / 1000);
    nodes = project.getCount(0);
    nodeId = project.getNodeId(Math.ceil(nodes / 2));
    project.close();
  }
  const wholeS: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const started = performance.now();
    const reply = await solveNetwork(inp, networkQuestion.parse({ ask: 'available-flow', at: { nodeId } }));
    wholeS.push((performance.now() - started) / 1000);
    if (!reply.ok) throw new Error(JSON.stringify(reply.problems));
  }
  return {
    name: `hydrant on a network of ${nodes} nodes (${name})`,
    value: Math.min(...wholeS),
    unit: 's (limit 2)',
    beside: { name: 'the library reading and solving it bare', value: Math.min(...bareS) },
  };
}

/** Flow tests and one hydrant of a network, each beside the plain way. */
export async function bench(): Promise<readonly BenchRow[]> {
  return [flowTests(), await hydrantOnNetwork()];
}
