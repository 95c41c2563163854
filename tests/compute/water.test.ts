import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { compute } from '../../shared/compute/compute.ts';
import { cards } from '../../shared/hydraulics/cards.ts';
import { smallInp } from '../support/networks.ts';

const root = join(import.meta.dirname, '..', '..');

/** The real command in its own process, as npm starts it. */
function run(
  words: readonly string[],
  input: unknown,
): Promise<{ code: number | null; out: any; err: string }> {
  return new Promise((resolve, reject) => {
    const pinned = join(root, 'node_modules/.bin/node');
    const child = spawn(
      existsSync(pinned) ? pinned : process.execPath,
      [join(root, 'infra/local/commands/compute.ts'), ...words],
      { cwd: root },
    );
    let out = '';
    let err = '';
    child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString('utf8')));
    child.stderr.on('data', (chunk: Buffer) => (err += chunk.toString('utf8')));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out: out === '' ? null : JSON.parse(out), err }));
    child.stdin.end(JSON.stringify(input));
  });
}

let folder: string;
let modelFile: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'compute-water-'));
  modelFile = join(folder, 'model.inp');
  await writeFile(modelFile, smallInp);
});
afterAll(() => rm(folder, { recursive: true }));

describe('either system of units', () => {
  const outlet = { diameterIn: 2.5, coefficient: 0.8, pitotPsi: 28 };
  it('metric in and metric out, and the same figures', async () => {
    const [us, metric] = await Promise.all([
      run(['flow-test'], { staticPsi: 86, residualPsi: 42, outlets: [outlet] }),
      run(['flow-test', '--units', 'metric', '--locale', 'es'], {
        staticKpa: 86 * 6.894757293168361,
        residualKpa: 42 * 6.894757293168361,
        outlets: [{ diameterMm: 63.5, coefficient: 0.8, pitotBar: (28 * 6.894757293168361) / 100 }],
      }),
    ]);
    expect(metric.err).toBe('');
    expect(metric.out.measuredFlowLPerMin / us.out.measuredFlowGpm).toBeCloseTo(3.785411784, 9);
    expect(metric.out.rating.capacityLPerMin / us.out.rating.capacityGpm).toBeCloseTo(3.785411784, 9);
    expect(us.out.answer).toBe('B, 983 gpm, 910 to 1,070 at 95%, class B 66% sure');
    expect(metric.out.answer).toBe(
      'B, 3,720 L/min, de 3,440 a 4,020 al 95 %, clase B con un 66 % de seguridad',
    );
  });

  it('a problem comes back as it was typed', async () => {
    const { code, err } = await run(['flow-test'], {
      staticKpa: 9000,
      residualKpa: 300,
      residualPsi: 40,
      outlets: [outlet],
    });
    expect(code).toBe(2);
    expect(err).toContain('residualKpa: This is given in another unit as well (residualPsi). Give it once.');
    expect(err).toContain('staticKpa: This must be 2068.43 or less.');
  });

  it('a rule of one’s own', () =>
    expect(
      compute('flow-test', {
        staticPsi: 86,
        residualPsi: 42,
        measuredFlowGpm: 789,
        rules: {
          classBands: [
            { hydrantClass: 'A', fromGpm: 900, color: 'white' },
            { hydrantClass: 'C', fromGpm: 0, color: 'red' },
          ],
        },
      }),
    ).toMatchObject({ ok: true, output: { hydrantClass: 'A' } }));

  it.each<[string, object, string]>([
    [
      'bands that rise',
      {
        classBands: [
          { hydrantClass: 'A', fromGpm: 0, color: 'red' },
          { hydrantClass: 'B', fromGpm: 500, color: 'red' },
        ],
      },
      'rules.classBands.1.fromGpm bands-not-falling',
    ],
    [
      'bands that stop above 0',
      { classBands: [{ hydrantClass: 'A', fromGpm: 500, color: 'red' }] },
      'rules.classBands.0.fromGpm bands-end-above-zero',
    ],
    [
      'a range upside down',
      { pitot: { hose: { minimumPsi: 30, maximumPsi: 10 }, pumper: { minimumPsi: 5, maximumPsi: 10 } } },
      'rules.pitot.hose.maximumPsi range-upside-down',
    ],
  ])('%s: refused', (_, rules, expected) => {
    const computed = compute('flow-test', { staticPsi: 86, residualPsi: 42, measuredFlowGpm: 789, rules });
    expect(computed.ok ? [] : computed.problems.map(({ path, code }) => `${path} ${code}`)).toContain(
      expected,
    );
  });
});

describe('formula', () => {
  it.each(cards.map((card) => [card.id, card] as const))('%s by its name', (id, { example }) => {
    const computed = compute('formula', { formula: id, given: example.given });
    if (!computed.ok) throw new Error(JSON.stringify(computed.problems));
    const [result] = Object.entries(computed.output as object).filter(([name]) => name.startsWith('result'));
    expect(Math.abs(result![1] - example.expected)).toBeLessThanOrEqual(example.tolerance);
    expect(computed.output).toMatchObject({ title: expect.stringMatching(/^[^[]+$/) });
  });

  it('names what is missing and what it does not have', () =>
    expect(compute('formula', { formula: 'hole-flow', given: { diameterIn: 1, color: 2 } })).toEqual({
      ok: false,
      problems: [
        { code: 'required', path: 'given.coefficient', params: { expected: 'number' } },
        { code: 'required', path: 'given.pressurePsi', params: { expected: 'number' } },
        { code: 'unknown-field', path: 'given.color', params: { field: 'color' } },
      ],
    }));

  it('refuses what is out of range under the name that was typed', () =>
    expect(
      compute('formula', {
        formula: 'hole-flow',
        given: { diameterMm: 1, coefficient: 0.62, pressureKpa: 400 },
      }),
    ).toMatchObject({
      ok: false,
      problems: [{ code: 'below-minimum', path: 'given.diameterMm', params: { minimum: 1.5875 } }],
    }));
});

describe('network on the command line', () => {
  it('the model beside a field test', async () => {
    const { code, out } = await run(['network-available-flow'], {
      modelFile,
      at: { hydrantId: 'H-12', nodeId: 'H' },
      fieldTest: { staticPsi: 77, residualPsi: 50, measuredFlowGpm: 900 },
    });
    expect(code).toBe(0);
    expect(out).toMatchObject({
      at: { nodeId: 'H', hydrantId: 'H-12' },
      field: { verdict: expect.any(String) },
    });
    expect(out.said).toHaveLength(4);
  });

  it('closings, in metric and Spanish', async () => {
    const { out } = await run(['network-closing', '--units', 'metric', '--locale', 'es'], {
      modelFile,
      links: ['P3'],
      watch: [{ nodeId: 'D' }],
    });
    expect(out.said[1]).toMatch(/^nodo D: \d{3} kPa antes, sin fuente alguna después\.$/);
    expect(out.watched[0]).toMatchObject({ nodeId: 'D', afterKpa: null });
  });

  it.each<[string, () => object, string[]]>([
    [
      'no file',
      () => ({ modelFile: join(folder, 'none.inp'), at: { nodeId: 'H' } }),
      ['modelFile: Cannot read', 'there is no such file'],
    ],
    ['no place', () => ({ modelFile, at: {} }), ['at.nodeId: Say where']],
    ['no such node', () => ({ modelFile, at: { nodeId: 'X' } }), ['at.nodeId: The model has no node X.']],
  ])('%s: exit 2 with a sentence', async (_, input, sentences) => {
    const { code, out, err } = await run(['network-water-bound'], input());
    expect({ code, out }).toEqual({ code: 2, out: null });
    for (const sentence of sentences) expect(err).toContain(sentence);
  });
});
